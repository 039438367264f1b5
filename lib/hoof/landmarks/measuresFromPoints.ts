import { isFitFailure } from '../../geometry/fitFailure.ts';
import type { Point } from '../../geometry/points.ts';
import { transformPoint } from '../../geometry/transformPoints.ts';
import { formatQuantity } from '../../sheet/display.ts';
import { endOf, type Limb, limbName } from '../limbs.ts';
import { measured } from '../measured.ts';
import { drawFigure, drawGround } from './drawFigure.ts';
import {
  defaultPlacing_px,
  errorPartsIn,
  middleOf,
  type Situation,
  unknownSquareness_deg,
  wholeError,
} from './errorParts.ts';
import { figureValue } from './figure.ts';
import { groundLine } from './groundLine.ts';
import { isThere, type Located, located } from './located.ts';
import type {
  PictureMark,
  PictureMeasure,
  PictureMeasures,
  PictureOptions,
  PictureScale,
  Refusal,
  Squareness,
} from './pictureMeasures.ts';
import { picturePlane, scaleCodes } from './picturePlane.ts';
import type { PictureView, PlacedPoint } from './placedPoint.ts';
import type { Reading } from './reading.ts';
import { readings } from './readings.ts';
import { remedyFor } from './remedy.ts';
import { sidesSwapped } from './sidesSwapped.ts';
import { defaultDistance_mm, sightOf } from './sight.ts';
import { mostOff_deg, remedyOf, squareness } from './squareness.ts';
import { landmarkView, scaleLandmarks } from './views.ts';

const columns: ReadonlySet<string> = new Set(measured.map(({ name }) => name));

/**
 * What the points placed on one picture say of the foot: in the plane of the scale, against the ground line of the same
 * picture, each with its error.
 * @param view     from where the foot is seen
 * @param points   rows of one picture; those of another view, with an unknown code or without a number in a coordinate
 *   are left out
 * @param scale    what in the picture has a known size; without one only angles are measured
 * @param limb     tells inside from outside
 * @returns measures with one standard error each, what was refused, why and what to do about it, and what to draw. A
 *   measure whose points were not placed is in neither list
 * @example measuresFromPoints('side', points, { kind: 'bar', length_mm: 100 }, 'LF').measures[0].name // 'toe_angle_deg'
 */
export function measuresFromPoints(
  view: PictureView,
  points: readonly PlacedPoint[],
  scale: PictureScale | undefined,
  limb: Limb,
  options: PictureOptions = {},
): PictureMeasures {
  const { situation, fault } = settled(view, points, scale, options);
  const { codes, plane, sight, pixels } = situation;
  const square = sight && squareness(sight, view);
  const inPlane = pixels.map((pixel) => transformPoint(plane.toPlane, pixel));
  const at = byCode(codes, inPlane);
  const swapped = sidesSwapped(view, at, limb);
  const partsOf = errorPartsIn(situation);
  const measures: PictureMeasure[] = [];
  const refusals: Refusal[] = [];
  const drawing: PictureMark[] = [];
  for (const reading of readings) {
    if (reading.view !== view || (reading.frontOnly && endOf(limb) !== 'front')) continue;
    const { name, title, unit } = reading;
    const here = byCode(codes, inPlane);
    const figure = reading.figure(here, limb);
    const value = figureValue(figure);
    if (Number.isNaN(value)) continue;
    const used = codes.map((_, i) => i).filter((i) => here.asked.has(codes[i]));
    const parts = partsOf((moved) => figureValue(reading.figure(byCode(codes, moved), limb)), used);
    const error = wholeError(parts);
    const refused =
      refusalByPicture(reading, limb, { fault, sized: plane.known !== 'nothing', square, swapped }) ??
      refusalByError(reading, error, remedyFor(parts, square, view), options);
    const label = refused ? '' : formatQuantity(value, unit, options.units ?? { length: 'mm', mass: 'kg' }, { error });
    drawing.push(drawFigure(figure, plane.toPicture, name, label));
    if (refused) refusals.push({ measure: name, title, ...refused });
    else {
      const from = [...new Set([...used.map((i) => codes[i]), ...scaleCodes(fault === undefined ? scale : undefined)])];
      measures.push({ name, column: columns.has(name), title, unit, value, error, parts, from });
    }
  }
  const ground = groundLine(at, view);
  if (isThere(ground.direction)) drawing.unshift(drawGround(ground, inPlane, plane.toPicture));
  return { measures, squareness: square, refusals, drawing, assumptions: assumptionsOf(situation, options) };
}

function byCode(codes: readonly string[], points: readonly Point[]): Located {
  const lists = new Map<string, Point[]>();
  codes.forEach((code, i) => {
    const list = lists.get(code);
    if (list) list.push(points[i]);
    else lists.set(code, [points[i]]);
  });
  return located(lists);
}

/** The picture with its plane; where the scale can't be used, as if there were none, and why. */
function settled(
  view: PictureView,
  points: readonly PlacedPoint[],
  scale: PictureScale | undefined,
  options: PictureOptions,
): { readonly situation: Situation; readonly fault?: string } {
  const known = new Set(landmarkView(view).landmarks.map(({ code }) => code));
  const own = points.filter((row) => row.view === view && Number.isFinite(row.x_px) && Number.isFinite(row.y_px));
  const foot = own.filter(({ point }) => known.has(point));
  const pixels = foot.map(({ x_px, y_px }): Point => [x_px, y_px]);
  const corners = scaleCodes(scale).map((code): Point => {
    const row = own.find(({ point }) => point === code);
    return row ? [row.x_px, row.y_px] : [Number.NaN, Number.NaN];
  });
  const missing = corners.findIndex((corner) => !isThere(corner));
  const found = missing < 0 ? picturePlane(scale, corners) : undefined;
  const fault =
    scale === undefined
      ? undefined
      : found === undefined
        ? `${scaleLandmarks[scale.kind][missing].title} of the ${scale.kind} is not placed`
        : isFitFailure(found)
          ? `The ${scale.kind} can't be used. ${found.failure}`
          : undefined;
  const usable = found !== undefined && !isFitFailure(found);
  const plane = usable ? found : (picturePlane(undefined, []) as Extract<typeof found, { known: string }>);
  const middle = middleOf(pixels.map((pixel) => transformPoint(plane.toPlane, pixel)));
  const sight = plane.known === 'shape' ? sightOf(plane.toPicture, middle, options) : undefined;
  const situation: Situation = {
    view,
    codes: foot.map(({ point }) => point),
    pixels,
    scale: usable ? scale : undefined,
    corners: usable ? corners : [],
    plane,
    sight,
    distance_mm: sight?.distance_mm ?? options.distance_mm ?? defaultDistance_mm,
    placing_px: options.placing_px ?? defaultPlacing_px,
    depth: options.depth ?? true,
  };
  return { situation, fault };
}

interface PictureState {
  readonly fault: string | undefined;
  readonly sized: boolean;
  readonly square: Squareness | undefined;
  readonly swapped: boolean;
}

type Why = Pick<Refusal, 'reason' | 'remedy'>;

/** Why the picture as a whole doesn't give this measure, if so. */
function refusalByPicture(
  { unit, sided, view }: Reading,
  limb: Limb,
  { fault, sized, square, swapped }: PictureState,
): Why | undefined {
  const angle = unit === 'deg' || unit === '1';
  if (!sized && !angle)
    return {
      reason: fault ?? 'Nothing in the picture has a known size',
      remedy: 'Put a bar of known length or a board with four corners in the plane of the foot, and place its points',
    };
  if (square && !square.usable)
    return {
      reason: `The camera was ${square.off_deg.toFixed(0)}° off square, more than ${mostOff_deg}°`,
      remedy: remedyOf(square, view),
    };
  if (sided && swapped)
    return {
      reason: `Inside and outside lie the wrong way round for the ${limbName(limb)}`,
      remedy: 'Check which foot this is and that the picture is not mirrored, or place the inside points on the inside',
    };
  return undefined;
}

/** Why its error forbids this measure, if so. */
function refusalByError(
  { unit, shows }: Reading,
  error: number,
  remedy: string,
  { units = { length: 'mm', mass: 'kg' } }: PictureOptions,
): Why | undefined {
  if (error <= shows.value) return undefined;
  const words = (value: number) => formatQuantity(value, unit, units);
  const reason = Number.isNaN(error)
    ? 'Its error could not be worked out'
    : `Its error, ${words(error)}, is larger than the ${words(shows.value)} that it should show`;
  return { reason, remedy };
}

function assumptionsOf(
  { plane, depth, sight }: Situation,
  { placing_px, camera, distance_mm }: PictureOptions,
): string[] {
  const sized = plane.known !== 'nothing';
  return [
    placing_px === undefined
      ? `Points are placed to within ${defaultPlacing_px} pixels, one standard deviation. Place the same points twice to know your own`
      : '',
    sight === undefined
      ? `The camera was turned and raised by about ${unknownSquareness_deg}° off square, one standard deviation: without a board the picture doesn't tell`
      : '',
    sized && camera === undefined && distance_mm === undefined ? 'The camera was about a metre off' : '',
    sized && depth
      ? 'The scale stands within 5 mm of the plane of the foot, and landmarks lie off that plane by 3 to 30 mm, one standard deviation'
      : '',
  ].filter((sentence) => sentence !== '');
}
