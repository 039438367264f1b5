import type { HerdPage } from '../lib/index.ts';
import { say } from '../lib/index.ts';

export const page: HerdPage = {
  name: 'cautions',
  title: say`Cautions`,
  question: say`What must come before measuring, and what can these numbers not tell?`,
  blocks: () => [
    { kind: 'heading', level: 2, text: say`Call the vet first`, id: 'vet' },
    {
      kind: 'prose',
      tone: 'caution',
      text: say`**A nail or any puncture in the sole or the frog** is an emergency: call the vet at once. If the vet can come soon, leave the nail where it is and don’t walk the horse. If it stands out so far that every step drives it deeper, mark where it went in and how deep before it comes out. Ask whether the horse’s tetanus cover holds.

**Signs of laminitis**: hot feet, a strong pulse at the fetlock or pastern, no wish to move or turn, weight shifting from foot to foot, leaning back on the heels. Call the vet at once, and don’t move such a horse for measurements or photographs.

**Sudden severe lameness, swelling or discharge**: call the vet. Measuring can wait.`,
    },
    {
      kind: 'prose',
      tone: 'aside',
      text: say`Sources: University of Florida Large Animal Hospital, 2012, and Horse Illustrated, on punctures; EQUUS, April 2017, and The Veterinary Care of the Horse, p. 255, on laminitis; thelaminitissite.org, on not moving a laminitic horse for photographs. The last of the three: common practice, no source.`,
    },
    { kind: 'heading', level: 2, text: say`You and the horse`, id: 'safety' },
    {
      kind: 'prose',
      text: say`Measure only a horse that stands quietly, on hard, level, swept ground, with someone at its head who stands on the same side as you. Let the horse see and hear the gauge or the camera first.

Bend down beside the shoulder or the hip, close to the horse. Never kneel, sit or squat beside a foot: you can’t get away. If the horse is unsettled, stop; a missing number does no harm.`,
    },
    {
      kind: 'prose',
      tone: 'aside',
      text: say`Sources: Cowgirl Magazine, on safe handling; Oklahoma State University extension sheet E-960 treats the same. The way of standing the horse: agreement of several guides to photographing feet; common practice.`,
    },
    { kind: 'heading', level: 2, text: say`Whose work it is`, id: 'farrier' },
    {
      kind: 'prose',
      text: say`Changes to the shape of a foot are for a qualified farrier together with the vet. Nothing here says how to cut or shoe one. A broken axis, an upright foot or an uneven pair may have been left so on purpose, and in a grown horse crookedness will not be trimmed straight. Mark such feet as therapeutic: they are drawn and listed, never ranked.

A foal is urgent the other way: its shape sets within months, so ask early.

The pages never judge a farrier. Most measures differ between farriers, and between two trims by the same hand (Kummer and others, 2009: six farriers, six or seven horses each). Numbers taken at home, with another gauge and another hand, can’t settle whose work was better. They can open a conversation about a foot and a date.`,
    },
    {
      kind: 'prose',
      tone: 'aside',
      text: say`Sources: Kummer and others 2009, The Veterinary Journal 179(3), 401–406, abstract and press account; Curtis, on foals; American Farriers Journal, on home measures.`,
    },
    { kind: 'heading', level: 2, text: say`What a range can’t tell`, id: 'ranges' },
    {
      kind: 'prose',
      text: say`The ranges are conventions with thin evidence. In published herds most horses break one: long toes in 52 of 58 horses (Dau 2015), narrow frogs in 85 of 97 (Canto 2004). So a value outside a range is no diagnosis, and a foot inside every range is no clean bill of health. What is worth raising is what is unusual for this horse and this herd and has changed by more than the error of measuring.

Left and right differ in sound horses: the left fore was the larger in 70 percent of 40 Warmbloods (Kummer 2006), and among 40 other horses no pair matched perfectly.`,
    },
    {
      kind: 'prose',
      tone: 'aside',
      text: say`Sources: Dau 2015; Canto 2004; Kummer and others 2006, The Veterinary Journal, doi:10.1016/j.tvjl.2005.03.008. The page Columns gives for every range its source and how many published feet lie outside it.`,
    },
    { kind: 'heading', level: 2, text: say`What a number can’t tell`, id: 'error' },
    {
      kind: 'prose',
      text: say`Every value has an error, and angles more than lengths: over sixteen fore feet measured by six methods, lengths agreed and no angle did. Where the error is unknown the pages say so, and where a difference is smaller than its error they say “can’t tell” and how many repeats would tell. Measure every foot at least twice in a sitting, with the same tool and the same hand, and write down who and how.

A photograph taken from the side or from above bends the angles: turned by 20 degrees, a toe of 50 degrees reads 51.7 (worked out for a distant camera). Seen from the front, a wall gets taller as it stands up, even where horn was taken off; so heights from a picture and lengths along the wall are kept in separate columns.

Weight from girth and length is an estimate, off by 5 to 10 percent, and fails outside the horses it was made on.`,
    },
    {
      kind: 'prose',
      tone: 'aside',
      text: say`Sources: Journal of Equine Veterinary Science 121, doi:10.1016/j.jevs.2022.104195, six methods; Lesniak and others 2017, Animals 7(4), 29, walls before and after a visit; Carroll and Huntington 1988, Equine Veterinary Journal 20(1), 41–45, weight.`,
    },
    { kind: 'heading', level: 2, text: say`Your data`, id: 'data' },
    {
      kind: 'prose',
      text: say`What you open stays on this device, in this browser. Nothing is sent anywhere. Clearing the browser’s data for this site clears it too, so keep your own files.`,
    },
  ],
};
