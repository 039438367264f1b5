import {
  endOf,
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
  measuresFromPoints,
  type PictureAnswer,
  type PictureLandmark,
  type PictureReading,
  type PictureScale,
  type PictureView,
  type PictureWork,
  type PlacedPoint,
  pointsFromCsv,
  pointsToCsv,
  scaleLandmarks,
  sideOf,
} from '../../lib/index.ts';
import { pictureFrame } from './pictureFrame.ts';
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
  shelf: {
    list: () => keptPictures<KeptReading>(),
    picture: keptPicture,
    keep: keepPicture,
    forget: forgetPicture,
  },
  toCsv: pointsToCsv,
  fromCsv: (text) => pointsFromCsv(text).map((picture) => ({ ...picture, invented: false })),
};

const limbIn = (limb: string): Limb => (isLimb(limb) ? limb : 'LF');

function asked({ code, title, where, optional, many, least }: Landmark, of: PictureLandmark['of']): PictureLandmark {
  return { code, title, where, optional, many, least, of };
}

/** Facing the horse, its left foot is on the right and its inside to the left; from behind it is the other way round. */
function insideOf(view: PictureView, limb: Limb): 'left' | 'right' | undefined {
  if (view !== 'front' && view !== 'rear') return undefined;
  return (sideOf(limb) === 'left') === (view === 'front') ? 'left' : 'right';
}

function answerTo(reading: PictureReading): PictureAnswer {
  const { subject, size, points, width, height } = reading;
  const view = subject.view as PictureView;
  const limb = limbIn(subject.limb);
  const placed = [...points]
    .sort(([a], [b]) => numberOf(a) - numberOf(b))
    .map(([slot, [x_px, y_px]]): PlacedPoint => ({ photo: '', view, point: slot.split(' ')[0], x_px, y_px }));
  const told = measuresFromPoints(view, placed, scaleOf(size), limb);
  const { squareness } = told;
  const hasScale = size.kind !== 'none' && scaleLandmarks[size.kind].every(({ code }) => points.has(code));
  void [width, height];
  return {
    ...(squareness
      ? {
          squareness: {
            state: !squareness.usable ? 'oblique' : squareness.off_deg > SQUARE_DEG ? 'usable' : 'square',
            words: squareness.words,
          },
        }
      : hasScale && {
          squareness: {
            state: 'unknown',
            words: 'A bar gives the size and doesn’t tell how square the camera stood; a board tells both',
          },
        }),
    measures: [
      ...told.measures.filter(({ column }) => column),
      ...told.refusals.map(({ measure, title, reason, remedy }) => ({
        ...{ name: measure, title, unit: '1', value: Number.NaN, error: Number.NaN, from: [] },
        refused: { reason, remedy },
      })),
    ],
    marks: told.drawing,
    assumptions: told.assumptions,
    frame: pictureFrame(reading),
    ...doubtOf(reading, limb, view),
  };
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
    doubt: `In this view the inside of this foot is to the ${inside}, and the inside points lie on the other side. Is it the right foot, or has the picture been mirrored?`,
  };
}
