import { chosen, type HerdPage, limbName, limbs, say } from '../lib/index.ts';

export const page: HerdPage = {
  name: 'measure-from-picture',
  title: say`Measure from a picture`,
  short: say`From a picture`,
  question: say`What does a photograph of a foot say, and how surely?`,
  blocks: ({ herd, controls }) => [
    {
      kind: 'prose',
      tone: 'caution',
      text: say`**Photograph only a horse that stands quietly on hard, level ground, with someone at its head.** Never kneel or sit beside a foot to take a picture: step back, hold the camera low and zoom in. Sudden lameness, heat in a foot, a strong pulse or a nail in the sole: the vet now, and no pictures first.`,
    },
    {
      kind: 'prose',
      text: say`Place a few points on a photograph, in order; the lines, angles and lengths between them appear as you go, each with how far it may be off. A picture from too far to the side, or hair over the hairline, spoils a measure: it is then refused, with what to do about it.`,
    },
    {
      kind: 'picture',
      name: 'picture',
      title: say`The picture`,
      table: 'feet',
      sheet: herd.feet,
      photo: chosen(controls, 'photo', ''),
      horses: horsesOf(herd.feet),
      limbs: limbs.map((value) => ({ value, label: capital(limbName(value)) })),
      moments: [
        { value: 'between', label: say`between visits` },
        { value: 'before', label: say`before the farrier’s work` },
        { value: 'after', label: say`after the farrier’s work` },
      ],
      inAFile: say`Points are placed in the notebook, on the device that has the picture. What was measured there stands in the record.`,
      work: async () => (await import('./shell/pictureWork.ts')).pictureWork,
    },
    {
      kind: 'prose',
      tone: 'aside',
      text: say`Where each point lies follows the columns of the [record](record.html); what a column means stands under [Columns](columns.html). How far a measure may be off is worked out from how far a hand misses a point, how well the size is known, how square the camera stood and how far the points lie before or behind the plane of the scale; the last is an assumption without a source.`,
    },
  ],
};

function horsesOf(feet: { readonly names: readonly string[]; column(name: string): { values: ArrayLike<unknown> } }) {
  const names = feet.names.includes('horse_id') ? Array.from(feet.column('horse_id').values, String) : [];
  return [...new Set(names)].filter((name) => name !== '').sort((a, b) => a.localeCompare(b));
}

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
