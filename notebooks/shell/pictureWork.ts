import {
  endOf,
  fixed,
  forgetPicture,
  isLimb,
  type KeptReading,
  type KnownSize,
  keepPicture,
  keptPicture,
  keptPictures,
  type Landmark,
  type Limb,
  landmarkView,
  landmarkViews,
  layOver,
  measuresFromPoints,
  type PictureAnswer,
  type PictureLandmark,
  type PictureMeasures,
  type PictureReading,
  type PictureScale,
  type PictureView,
  type PictureWork,
  type PlacedPoint,
  pictureSide,
  placingError,
  pointsFromCsv,
  pointsToCsv,
  type Spot,
  say,
  scaleLandmarks,
} from '../../lib/index.ts';

type Squareness = NonNullable<PictureAnswer['squareness']>;

import { trialPictures } from './trialPictures.ts';

/** What the page of pictures works with: landmarks, measures, drawn feet to try on, and what the device keeps. */
export const pictureWork: PictureWork = {
  views: landmarkViews.map(({ view, title, how }) => ({ name: view, title, stand: how })),
  landmarks(view, limb, size) {
    const ofScale = size === 'none' ? [] : scaleLandmarks[size];
    const ofFoot = landmarkView(view as PictureView).landmarks.filter(
      ({ frontOnly }) => !frontOnly || endOf(limbIn(limb)) === 'front',
    );
    return [...ofScale.map((one) => asked(one, 'scale')), ...ofFoot.map((one) => asked(one, 'foot'))];
  },
  inside: (view, limb) => insideOf(view as PictureView, limbIn(limb)),
  answer: answerTo,
  trials: trialPictures,
  layOver(under, over) {
    const laid = layOver(under.subject.view as PictureView, toLay(under), toLay(over));
    if (!('matrix' in laid)) return { failure: laid.failure };
    const [[a, c, e], [b, d, f]] = laid.matrix;
    return { map: [a, b, c, d, e, f] };
  },
  shelf: {
    list: async () => (await keptPictures<Stored>()).map((stored) => ({ ...stored, points: new Map(stored.points) })),
    picture: keptPicture,
    keep: (reading, picture) => keepPicture({ ...reading, points: [...reading.points] } satisfies Stored, picture),
    forget: forgetPicture,
  },
  toCsv: pointsToCsv,
  fromCsv: (text) => pointsFromCsv(text).map((picture) => ({ ...picture, invented: false })),
};

/** As it is kept: whoever copies it into a file can write it as JSON. */
type Stored = Omit<KeptReading, 'points'> & { readonly points: readonly (readonly [slot: string, spot: Spot])[] };

const limbIn = (limb: string): Limb => (isLimb(limb) ? limb : 'LF');

function asked({ code, title, where, optional, many, least }: Landmark, of: PictureLandmark['of']): PictureLandmark {
  return { code, title, where, optional, many, least, of };
}

/** On which side the inside lies, where inside and outside are seen upright. */
function insideOf(view: PictureView, limb: Limb): 'left' | 'right' | undefined {
  return view === 'front' || view === 'rear' ? pictureSide(view, limb, 'medial') : undefined;
}

/** The points as rows, the many of one landmark in their order. */
function rowsOf({ subject, points }: PictureReading, photo = ''): readonly PlacedPoint[] {
  const view = subject.view as PictureView;
  return [...points]
    .sort(([a], [b]) => numberOf(a) - numberOf(b))
    .map(([slot, [x_px, y_px]]) => ({ photo, view, point: slot.split(' ')[0], x_px, y_px }));
}

const toLay = (reading: PictureReading) => ({ points: rowsOf(reading), scale: scaleOf(reading.size) });

/** How closely this hand places points, from the pictures whose points it placed more than once. */
function handOf(all: readonly KeptReading[]): { placing_px?: number } {
  const repeated = new Set(all.flatMap(({ again }) => again ?? []));
  const rounds = all.filter(({ photo, again }) => repeated.has(again ?? photo));
  const { value_px, enough } = placingError(rounds.map((round) => rowsOf(round, round.again ?? round.photo)));
  return enough ? { placing_px: value_px } : {};
}

function handWords({ placing_px }: { placing_px?: number }): readonly string[] {
  return placing_px === undefined
    ? []
    : [say`Points are placed to within ${fixed(placing_px, 1)} pixels, one standard deviation, by your own repeats`];
}

function answerTo(reading: PictureReading, all: readonly KeptReading[]): PictureAnswer {
  const { subject, size, points } = reading;
  const view = subject.view as PictureView;
  const limb = limbIn(subject.limb);
  const hand = handOf(all);
  const told = measuresFromPoints(view, rowsOf(reading), scaleOf(size), limb, hand);
  const hasScale = size.kind !== 'none' && scaleLandmarks[size.kind].every(({ code }) => points.has(code));
  return {
    ...(hasScale && { squareness: squarenessOf(told) }),
    measures: [
      ...told.measures.filter(({ column }) => column),
      ...told.refusals.map(({ measure, title, reason, remedy }) => ({
        ...{ name: measure, title, unit: '1', value: Number.NaN, error: Number.NaN, from: [] },
        refused: { reason, remedy },
      })),
    ],
    marks: told.drawing,
    assumptions: [...handWords(hand), ...told.assumptions],
    ...doubtOf(reading, limb, view),
  };
}

function squarenessOf({ squareness }: PictureMeasures): Squareness {
  if (!squareness)
    return {
      state: 'unknown',
      words: 'A bar gives the size and doesn’t tell how square the camera stood; a board tells both',
    };
  const { usable, off_deg, words } = squareness;
  return { state: !usable ? 'oblique' : off_deg > SQUARE_DEG ? 'usable' : 'square', words };
}

/** Up to here a camera counts as square, in degrees. Common practice, no source. */
const SQUARE_DEG = 5;

function scaleOf(size: KnownSize): PictureScale | undefined {
  switch (size.kind) {
    case 'bar':
      return { kind: 'bar', length_mm: size.length };
    case 'board':
      return { kind: 'board', width_mm: size.width, height_mm: size.height };
    case 'none':
      return undefined;
  }
}

const numberOf = (slot: string) => Number(slot.split(' ')[1] ?? 1);

/** Whether the inside points lie on the side where this foot has its outside: another foot, or a mirrored picture. */
function doubtOf({ points }: PictureReading, limb: Limb, view: PictureView): { doubt?: string } {
  const inside = insideOf(view, limb);
  if (!inside) return {};
  const { landmarks } = landmarkView(view);
  const across = (side: Landmark['side']) =>
    landmarks.filter((one) => one.side === side).flatMap(({ code }) => points.get(code)?.[0] ?? []);
  const [medial, lateral] = [across('medial'), across('lateral')];
  if (medial.length === 0 || lateral.length === 0) return {};
  const mean = (list: readonly number[]) => list.reduce((sum, x) => sum + x, 0) / list.length;
  if (mean(medial) < mean(lateral) === (inside === 'left')) return {};
  return {
    doubt: say`In this view the inside of this foot is to the ${inside === 'left' ? say`left` : say`right`}, and the inside points lie on the other side. Is it the right foot, or has the picture been mirrored?`,
  };
}
