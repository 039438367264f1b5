import { transformPoints } from '../../geometry/transformPoints.ts';
import { formatQuantity } from '../../sheet/display.ts';
import { say } from '../../words/say.ts';
import { endOf, type Limb } from '../limbs.ts';
import { measured } from '../measured.ts';
import { drawFigure, drawGround } from './drawFigure.ts';
import { errorPartsIn, wholeError } from './errorParts.ts';
import { figureValue } from './figure.ts';
import { groundLine } from './groundLine.ts';
import { isThere, located } from './located.ts';
import type {
  PictureMark,
  PictureMeasure,
  PictureMeasures,
  PictureOptions,
  PictureScale,
  Refusal,
} from './pictureMeasures.ts';
import { scaleCodes } from './picturePlane.ts';
import { type PlacedPicture, placedPicture } from './placedPicture.ts';
import type { PictureView, PlacedPoint } from './placedPoint.ts';
import { readings } from './readings.ts';
import { refusalByError, refusalByPicture } from './refusals.ts';
import { remedyFor } from './remedy.ts';
import { sidesSwapped } from './sidesSwapped.ts';
import { defaultDistance_mm, sightOf } from './sight.ts';
import {
  defaultPlacing_px,
  defaultScalePlacing_px,
  middleOf,
  type Situation,
  unknownSquareness_deg,
} from './situation.ts';
import { squareness } from './squareness.ts';

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
  const situation = situationOf(placedPicture(view, points, scale), options);
  const { codes, inPlane, plane, sight, fault } = situation;
  const square = sight && squareness(sight, view);
  const at = located(codes, inPlane);
  const swapped = sidesSwapped(view, at, limb);
  const partsOf = errorPartsIn(situation, (places) => located(codes, places));
  const measures: PictureMeasure[] = [];
  const refusals: Refusal[] = [];
  const drawing: PictureMark[] = [];
  for (const reading of readings) {
    if (reading.view !== view || (reading.frontOnly && endOf(limb) !== 'front')) continue;
    const { name, title, unit } = reading;
    const here = located(codes, inPlane);
    const figure = reading.figure(here, limb);
    const value = figureValue(figure);
    if (Number.isNaN(value)) continue;
    const used = codes.map((_, i) => i).filter((i) => here.asked.has(codes[i]));
    const parts = partsOf((moved) => figureValue(reading.figure(moved, limb)), used);
    const error = wholeError(parts);
    const refused =
      refusalByPicture(reading, limb, { fault, sized: plane.known !== 'nothing', square, swapped }) ??
      refusalByError(reading, error, remedyFor(parts, square, view), options);
    const label = refused ? '' : formatQuantity(value, unit, options.units ?? { length: 'mm', mass: 'kg' }, { error });
    drawing.push(drawFigure(figure, plane.toPicture, name, label));
    if (refused) refusals.push({ measure: name, title, ...refused });
    else {
      const from = [...new Set([...used.map((i) => codes[i]), ...scaleCodes(situation.scale)])];
      measures.push({ name, column: columns.has(name), title, unit, value, error, parts, from });
    }
  }
  const ground = groundLine(at, view);
  if (isThere(ground.direction)) drawing.unshift(drawGround(ground, inPlane, plane.toPicture));
  return { measures, squareness: square, refusals, drawing, assumptions: assumptionsOf(situation, options) };
}

function situationOf(picture: PlacedPicture, options: PictureOptions): Situation {
  const { plane, inPlane, corners } = picture;
  // Until the foot is placed, the board itself is what was looked at.
  const middle = middleOf(inPlane.length > 0 ? inPlane : transformPoints(plane.toPlane, corners));
  const sight = plane.known === 'shape' ? sightOf(plane.toPicture, middle, options) : undefined;
  return {
    ...picture,
    sight,
    distance_mm: sight?.distance_mm ?? options.distance_mm ?? defaultDistance_mm,
    placing_px: options.placing_px ?? defaultPlacing_px,
    scalePlacing_px: options.scalePlacing_px ?? options.placing_px ?? defaultScalePlacing_px,
    depth: options.depth ?? true,
    camera: options.camera,
  };
}

function assumptionsOf(
  { plane, depth, sight }: Situation,
  { placing_px, camera, distance_mm }: PictureOptions,
): string[] {
  const sized = plane.known !== 'nothing';
  return [
    placing_px === undefined
      ? say`Points are placed to within ${defaultPlacing_px} pixels, those of the scale to within ${defaultScalePlacing_px}, one standard deviation. Place the same points twice to know your own`
      : '',
    sight === undefined
      ? say`The camera was turned and raised by about ${unknownSquareness_deg}° off square, one standard deviation: without a board the picture doesn't tell`
      : '',
    sized && camera === undefined && distance_mm === undefined ? say`The camera was about a metre off` : '',
    sized && depth
      ? say`The scale stands within 5 mm of the plane of the foot, and landmarks lie off that plane by 3 to 30 mm, one standard deviation`
      : '',
  ].filter((sentence) => sentence !== '');
}
