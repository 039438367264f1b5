import {
  type Block,
  citation,
  footPartsBelow,
  footUnderWeight,
  type HerdPage,
  type Measured,
  measureDrawing,
  measured,
  midSentence,
  type Photographing,
  photographBelow,
  photographRear,
  say,
} from '../lib/index.ts';

/** What is taken from each side of the foot, in the order of a round. */
const round = [
  {
    id: 'side',
    title: say`From the side`,
    names: ['toe_angle_deg', 'heel_angle_deg', 'pastern_angle_deg', 'toe_length_mm', 'heel_length_mm'],
    text: say`Bend down beside the leg, never kneel or squat, the gauge or the camera at the height of the foot. Angles are between the wall and the ground the foot stands on, open to the back: a steeper wall has the larger angle. In a shod foot the ground is the ground side of the shoe, so the shoe is in every length. Write down in “method” how you measured, and stay with it.`,
  },
  {
    id: 'front',
    title: say`From the front`,
    names: ['medial_wall_mm', 'lateral_wall_mm'],
    text: say`Stand square in front of the foot, not of the horse. Hold the rule upright beside the wall at the widest place, inside and outside, from the ground to the hairline. Part the hair; if it hides the hairline, note “hair over the hairline”, and the error is taken as twice as large. Inside is the side towards the other foot.`,
  },
  {
    id: 'rear',
    title: say`From behind`,
    names: ['medial_heel_mm', 'lateral_heel_mm'],
    text: say`From behind, at the side of the leg and never straight behind a horse that might kick: the height of each heel from the ground to the hairline. If the leg has to be held up for it, sight along the heels instead and leave the heights empty: an empty cell does no harm, a guess does.`,
  },
  {
    id: 'below',
    title: say`From below`,
    names: ['foot_width_mm', 'foot_length_mm', 'frog_width_mm', 'frog_length_mm', 'heel_width_mm'],
    text: say`With the foot picked out and held up by the person at the horse’s head or by a third: width at the widest place, length from the toe to a line across the heel buttresses, the frog’s width and length, and the width across the heels. Brush the sole clean first. This is also the moment to see a nail, a crack or a smell: stop there and call for help.`,
  },
  {
    id: 'horse',
    title: say`The whole horse`,
    names: ['girth_cm', 'length_cm'],
    text: say`Only where a body weight is wanted and there is no weighbridge: the weight worked out from these two is off by 5 to 10 percent.`,
  },
] as const;

const glossary = [
  [
    say`Axis`,
    say`the line down the front of the pastern and on down the front of the hoof. Broken back: the hoof is flatter than the pastern; broken forward: steeper.`,
  ],
  [
    say`Before, after, between`,
    say`the moment of a measurement: before the farrier’s work of that day, after it, or on a day without work.`,
  ],
  [say`Breakover`, say`the moment, and the place at the toe, at which the foot rolls off the ground.`],
  [
    say`Error of measuring`,
    say`by how much one reading of the same foot differs from the next, as one standard error. About 95 of 100 readings lie within 1.96 of it.`,
  ],
  [say`Hairline`, say`where horn begins and hair ends; the trade also says coronary band.`],
  [say`Heel buttress`, say`the corner at the back where the wall turns in and becomes the bar.`],
  [
    say`Inside and outside`,
    say`medial and lateral: towards the horse’s other foot, and away from it. Differences are inside minus outside.`,
  ],
  [say`Interval`, say`the days from one visit’s work to the next.`],
  [say`Level`, say`inside and outside of one foot equally high.`],
  [
    say`LF, RF, LH, RH`,
    say`left fore, right fore, left hind, right hind; left is the horse’s own left, the near side, and right the off side.`,
  ],
  [
    say`95% interval`,
    say`the values that these records leave open: of a hundred such intervals from other records about 95 hold the true one.`,
  ],
  [
    say`p-value`,
    say`how often chance alone would show a difference at least so large, if there were none. It doesn’t say how large or how likely the difference is.`,
  ],
  [say`Range`, say`from where to where a value is usually held to be normal, with its source; a convention.`],
  [say`Repeat`, say`a second reading of the same foot at the same moment, without looking at the first.`],
  [say`Therapeutic`, say`set so on purpose by vet and farrier. Such a foot is drawn and listed, never ranked.`],
  [say`Underrun`, say`heels that slope forward under the foot much more than the toe does.`],
] as const;

export const page: HerdPage = {
  name: 'guide',
  title: say`Guide`,
  question: say`How is a foot measured so that the numbers can be trusted, and what do the pages make of them?`,
  blocks: () => [
    {
      kind: 'prose',
      tone: 'caution',
      text: say`A nail or puncture in the sole or the frog, sudden lameness, heat or a strong pulse: call the vet now, and don’t measure. Everything that must come first stands on the page [Cautions](cautions.html).`,
    },
    {
      kind: 'prose',
      text: say`You have numbers already, in a list of your own? [From your own list to the sheet for the visit](first-sheet.html) leads through it step by step.`,
    },
    ...paragraphs(say`Before you begin`, 'begin', [
      say`You need a second person, a rule in millimetres, a gauge or a protractor for angles, a hoof pick and brush, something to write on, and ten quiet minutes a horse. Nothing here needs a network.`,
      say`Choose a day on which the farrier comes: measure before the work and after it. What changes between visits is told from “after” to the next “before”, and without both ends it can only be guessed at. Write down the date, the foot and the moment first.`,
    ]),
    ...paragraphs(say`Standing the horse`, 'standing', [
      say`Hard, level, swept ground; the horse awake and quiet, someone at its head on your side. Legs upright under the horse, the two fronts beside each other and the two hinds beside each other, weight on all four, head straight and at its usual height. A foot that stands in front of or behind its place changes every angle (common practice, no source).`,
      say`Bend down beside the shoulder or the hip. Never kneel or sit beside a foot. When the horse moves, begin that foot again.`,
    ]),
    { kind: 'heading', level: 2, text: say`A round of one foot`, id: 'round' },
    {
      kind: 'prose',
      text: say`Left fore, right fore, left hind, right hind, each from the side, the front, behind and below. The page [Columns](columns.html) says for every column from where to where, and how far one reading is usually off.`,
    },
    ...round.flatMap(view),
    ...paragraphs(say`Twice`, 'twice', [
      say`Take every foot twice on the same day, the second time without looking at the first, and give the second row the number 2 in “repeat”. Two people are better still: put their names in “observer”. From these repeats the page [How good are my measurements?](measurements.html) works out your own error, and only what is larger than that is ever called a difference.`,
    ]),
    ...paragraphs(say`Photographs`, 'photographs', [
      say`Camera at the height of the foot and square to it: from the side at a right angle to the line from heel to toe, from the front straight at the middle of the toe. Two metres away with a little zoom is better than close by. Put a bar of known length, or a flat board with four marked corners, in the plane of the foot. Clean foot, clear hairline, no shadow on the ground line (common practice, no source).`,
      say`A camera off to the side spoils the comparison of inside and outside before it spoils anything else: the page [Measure from a picture](measure-from-picture.html) says so when it sees it.`,
    ]),
    ...photographed(say`Photographed from behind`, 'photograph-rear', photographRear(), [
      say`The foot stands, the horse square on hard, level ground, both feet of the pair loaded alike. **Never crouch straight behind a horse.** Put the camera on the ground, let its timer release it, and stand at the horse’s shoulder; or set both feet of the pair on blocks of the same height, so that the camera comes up with them. Let the horse hear it first.`,
      say`**Height**: the lens level with the heels, half way between the ground and the hairline, and not tilted. **Distance**: two metres with a little zoom, the same every time. **Square**: on the line that runs from the middle of the toe out between the heels; both heels are then seen equally, and the cleft between the bulbs stands in the middle. **Scale**: the board upright beside the foot, level with both heels and facing the camera, its lower edge on what the foot stands on.`,
      say`Brush the heels, lift the feathers off the hairline on both sides, and sweep the ground where the heels meet it: a heel that sinks into sand or straw has no height (common practice, no source).`,
    ]),
    ...photographed(say`Photographed from below`, 'photograph-below', photographBelow(), [
      say`Someone else holds the foot up by the fetlock, so that it hangs loose and no hand turns it; the horse stands on three legs, so be quick, and put it down when it asks. Pick out, brush and dry the sole. Don’t lean under the horse.`,
      say`**Height and distance**: a metre above the sole, as far as your arms and a little zoom allow. **Square**: the camera’s back parallel to the sole, above the place just behind the frog’s tip; the walls at both quarters then look equally high, and neither heel hides behind its bulb. **Scale**: the board or a rule held against the heels or the quarter with its face in the plane of the ground side of the wall; laid on the frog or the sole it lies deeper, and everything comes out too large. On a shod foot the plane is that of the shoe.`,
      say`**Light**: even shade. A flash makes a wet sole shine, and low sun fills the grooves beside the frog with shadow (common practice, no source).`,
    ]),
    { kind: 'heading', level: 3, text: say`What spoils a picture`, id: 'photograph-spoilt' },
    ...plain([
      say`**The scale before or behind the foot**: the size is wrong by as much as the scale is nearer. Five centimetres too near makes the foot two and a half percent too small from two metres, and ten percent from half a metre; that is why a camera stands back.`,
      say`**A camera off to the side or above**: a toe of 50 degrees reads 51.7 when the camera is turned 20 degrees to the side, and 49.6 when it looks down by 10 (worked out by geometry, for a camera far away). The board puts most of this right, a bar none of it.`,
      say`**The horse**: weight on the other leg, a foot in front of its place, a head turned. **What hides an edge**: hair, mud, grass, bedding, a shadow on the ground line, the light of a door behind the foot. **The picture**: blurred, too small in its frame, or without date, horse and foot written down.`,
    ]),
    { kind: 'heading', level: 2, text: say`The foot from below`, id: 'parts' },
    {
      kind: 'drawings',
      items: [{ title: say`A left fore from below, toe up; a schematic`, drawing: footPartsBelow() }],
    },
    ...plain([
      say`**Wall**: the horn all round, in front feet thickest at the toe. It is what one sees of a standing foot, and it grows down from the hairline. **White line**: the softer seam between wall and sole; where it is wide, crumbles or smells, ask. **Sole**: the vaulted plate inside it, which on hard ground is normally clear of it.`,
      say`**Bars**: at the heels the wall turns in at the **heel buttress** and runs forward beside the frog. **Frog**: the wedge of rubbery horn between the bars, with a groove beside it on each side and one in the middle; its **point** lies towards the toe. **Heel bulbs**: the two soft rounds behind, above the heels. **Quarters**: the sides of the wall between toe and heels.`,
      say`Names as the trade uses them; the parts and what they are after ${citation('lungwitz-adams')}, and ${citation('mcclure-foot')}. What to ask about is common practice, no source.`,
    ]),
    { kind: 'heading', level: 2, text: say`How the foot takes weight`, id: 'weight' },
    { kind: 'drawings', items: [{ title: say`A left fore from the side; a schematic`, drawing: footUnderWeight() }] },
    ...plain([
      say`Weight comes down the bones of the leg into the bone inside the hoof, and that bone hangs in the wall by leaves of horn and skin. So the wall carries, and with it the bars and the frog. Under the weight the bone sinks a little, the cushion above the frog is pressed outward, and the heels spread; when the weight is past, they come back. Then the foot rolls over at the toe.`,
      say`Sources: ${citation('minnesota-foot')}; ${citation('mcclure-foot')}; ${citation('lungwitz-adams')}. That the foot rolls over at the toe is from memory, no source at hand.`,
      say`This is why level matters: a side that meets the ground first is loaded first, at every step. And it is why a long toe matters: the further forward the place where the foot rolls over, the longer the lever. How much of either a horse can bear can’t be read off a number; that is for the farrier and the vet with the horse before them (from memory, no source at hand).`,
    ]),
    ...paragraphs(say`What a computed column means, and what not`, 'meaning', [
      say`Every computed column is a formula over measured ones, and [Columns](columns.html) gives the formula, what it is, what it isn’t and where it misleads, its source, and how many feet of published herds lie outside its range. Three degrees of firmness are told apart: “published”, “common practice, no source”, and “from memory”.`,
      say`A range is a convention. Most sound horses break one. [The herd](herd.html) therefore ranks what is unusual for this herd and for this foot and has changed by more than the error of measuring, and nothing else.`,
    ]),
    ...paragraphs(say`Reading the page on longer intervals`, 'intervals', [
      say`[Does a longer interval cost balance?](longer-intervals.html) compares each horse with itself: intervals that were longer than that horse’s usual ones against those that were shorter. The sentence under “The answer” gives the change for one week more and its 95% interval. If the interval holds zero, these records can’t tell.`,
      say`Look at the picture before the p-value, and at “What could explain it” after it. Horses that are seen more often because their feet are bad turn the comparison between horses round; that is why the effect within a horse stands alone. To be sure takes a trial: [Plan a trial](plan-a-trial.html).`,
    ]),
    { kind: 'heading', level: 2, text: say`Words`, id: 'words' },
    { kind: 'prose', text: glossary.map(([word, meaning]) => `**${word}**: ${meaning}`).join('\n\n') },
  ],
};

function photographed(text: string, id: string, { sees, stands }: Photographing, all: readonly string[]): Block[] {
  return [
    { kind: 'heading', level: 3, text, id },
    {
      kind: 'group',
      layout: 'side by side',
      blocks: [
        {
          kind: 'drawings',
          items: [
            { title: say`What the camera sees`, drawing: sees },
            { title: say`Where it is`, drawing: stands },
          ],
        },
        ...plain(all),
      ],
    },
  ];
}

function paragraphs(text: string, id: string, all: readonly string[]): Block[] {
  return [{ kind: 'heading', level: 2, text, id }, ...plain(all)];
}

function plain(all: readonly string[]): Block[] {
  return [{ kind: 'prose', text: all.join('\n\n') }];
}

/** From where to where each column of a view is measured, and how. */
function taken(from: Measured['view']): string[] {
  return measured
    .filter(({ view }) => view === from)
    .map(({ title, landmarks, how }) => `**${title}**: ${landmarks} ${how}`);
}

function view({ id, title, names, text }: (typeof round)[number]): Block[] {
  const drawing = measureDrawing(names);
  const rows = names.map((name) => midSentence(measured.find((row) => row.name === name)!.title));
  return [
    { kind: 'heading', level: 3, text: title, id: `from-${id}` },
    {
      kind: 'group',
      layout: 'side by side',
      blocks: [
        ...(drawing === undefined ? [] : [{ kind: 'drawings' as const, items: [{ title: rows.join(', '), drawing }] }]),
        ...plain([text, ...taken(id)]),
      ],
    },
  ];
}
