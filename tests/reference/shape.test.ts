import { describe, expect, it } from 'vitest';
import { convexHull } from '../../lib/geometry/convexHull.ts';
import type { Ellipse } from '../../lib/geometry/ellipse.ts';
import { type Circle, fitCircle, fitCircleAlgebraic } from '../../lib/geometry/fitCircle.ts';
import { fitEllipse } from '../../lib/geometry/fitEllipse.ts';
import { fitEllipseGeometric } from '../../lib/geometry/fitEllipseGeometric.ts';
import { type GeneralProcrustes, generalProcrustes } from '../../lib/geometry/generalProcrustes.ts';
import type { Point } from '../../lib/geometry/points.ts';
import { polygonArea, signedArea } from '../../lib/geometry/polygonArea.ts';
import { polygonCentroid } from '../../lib/geometry/polygonCentroid.ts';
import { polygonPerimeter } from '../../lib/geometry/polygonPerimeter.ts';
import { type Procrustes, procrustes } from '../../lib/geometry/procrustes.ts';
import { secondMoments } from '../../lib/geometry/secondMoments.ts';
import { closeTo, readCase, readData } from './stats/read.ts';

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** The points of a case, one after the other. */
function outline(name: string): Point[] {
  const { x, y } = readData(name).numbers;
  return x.map((value, row) => [value, y[row]]);
}

function sameCircle(found: Circle, expected: ReturnType<typeof readCase>, tolerance: number): void {
  closeTo([found.x, found.y, found.radius], [expected.x, expected.y, expected.radius], tolerance);
  if (expected.residual_norm) closeTo(found.residualSd * Math.sqrt(found.n - 3), expected.residual_norm, tolerance);
}

function sameEllipse(found: Ellipse, expected: ReturnType<typeof readCase>, tolerance: number): void {
  closeTo([found.x, found.y], [expected.x, expected.y], tolerance);
  closeTo([found.semiMajor, found.semiMinor], [expected.semi_major, expected.semi_minor], tolerance);
  closeTo(radians(found.turn), expected.angle_rad, tolerance);
  if (expected.residual_norm) closeTo(found.residualSd * Math.sqrt(found.n - 5), expected.residual_norm, tolerance);
}

describe('circles and ellipses of Gander, Golub & Strebel 1994', () => {
  const circle = readCase('circle-six');
  const ellipse = readCase('ellipse-eight');
  it('the circle through six points', () => {
    sameCircle(fitCircle(outline('circle-six')) as Circle, circle.geometric, 1e-6);
    sameCircle(fitCircleAlgebraic(outline('circle-six')) as Circle, circle.algebraic, 1e-9);
    const { x, y, radius } = circle.published.geometric;
    const found = fitCircle(outline('circle-six')) as Circle;
    closeTo([found.x, found.y, found.radius], [x, y, radius], 0, 0.5e-4);
  });
  it('the direct ellipse through eight points', () => {
    sameEllipse(fitEllipse(outline('ellipse-eight')) as Ellipse, ellipse.direct, 1e-9);
  });
  it('the ellipse nearest to the same points is another', () => {
    const found = fitEllipseGeometric(outline('ellipse-eight')) as Ellipse;
    sameEllipse(found, ellipse.geometric, 1e-6);
    const printed = ellipse.published.geometric;
    closeTo([found.x, found.y, found.semiMajor], [printed.x, printed.y, printed.semi_major], 0, 0.5e-4);
  });
});

describe('24 shaken points on most of an ellipse', () => {
  const expected = readCase('ellipse-arc');
  it('direct and geometric ellipse', () => {
    sameEllipse(fitEllipse(outline('ellipse-arc')) as Ellipse, expected.direct, 1e-9);
    sameEllipse(fitEllipseGeometric(outline('ellipse-arc')) as Ellipse, expected.geometric, 1e-6);
  });
  it('algebraic and geometric circle', () => {
    sameCircle(fitCircleAlgebraic(outline('ellipse-arc')) as Circle, expected.circle.algebraic, 1e-9);
    sameCircle(fitCircle(outline('ellipse-arc')) as Circle, expected.circle.geometric, 1e-6);
  });
});

function superimposed(target: Point[], moving: Point[], expected: ReturnType<typeof readCase>): void {
  const found = procrustes(target, moving) as Procrustes;
  closeTo(found.scale, expected.scale, 1e-9);
  closeTo(radians(found.turn), expected.angle_rad_counterclockwise, 1e-9);
  closeTo(found.rotation.flat(), expected.rotation.flat(), 1e-9);
  closeTo(found.moved.flat(), expected.moved.flat(), 1e-9, 1e-9);
  closeTo(found.sumOfSquares, expected.sum_of_squares, 1e-9);
  closeTo(found.rmsd, expected.rmsd, 1e-9);
  closeTo(Math.sqrt(found.disparity), expected.full_procrustes_distance, 1e-9);
  closeTo(found.distance, expected.riemannian_distance, 1e-9);
  const kept = procrustes(target, moving, { scale: false }) as Procrustes;
  closeTo(kept.sumOfSquares, expected.sum_of_squares_without_scaling, 1e-9);
  closeTo(kept.distance, expected.riemannian_distance, 1e-9);
}

it('six invented points, as R’s vegan lays them over each other', () => {
  const expected = readCase('procrustes');
  superimposed(expected.target, expected.moving, expected.without_reflection);
  const found = procrustes(expected.target, expected.moving, { reflect: true }) as Procrustes;
  closeTo(found.translation, expected.translation, 1e-9);
  closeTo(found.sumOfSquares, expected.sum_of_squares, 1e-9);
  closeTo(found.moved.flat(), expected.fitted.flat(), 1e-9, 1e-9);
});

describe('six gorilla skulls, O’Higgins & Dryden 1993', () => {
  const expected = readCase('procrustes-gorilla');
  const { skull, x, y } = readData('procrustes-gorilla').numbers;
  const skulls = [1, 2, 3, 4, 5, 6].map((label) =>
    x.map((value, row): Point => [value, y[row]]).filter((_, row) => skull[row] === label),
  );
  it('one laid over another, as R’s shapes and vegan do', () => {
    superimposed(skulls[0], skulls[1], expected.superimpose);
    closeTo((procrustes(skulls[0], skulls[1]) as Procrustes).sumOfSquares, expected.shapes_procOPA.OSS, 1e-9);
  });
  it('all distances between them', () => {
    const distances = skulls.map((a) => skulls.map((b) => (procrustes(a, b) as Procrustes).distance));
    distances.forEach((row, i) => {
      closeTo(row, expected.riemannian_distances[i], 1e-9, 1e-7);
    });
  });
  it('their mean shape', () => {
    const found = generalProcrustes(skulls) as GeneralProcrustes;
    const { generalised } = expected;
    closeTo((procrustes(generalised.mean_shape, found.mean) as Procrustes).distance, 0, 0, 1e-6);
    closeTo(found.rms, generalised.rms_riemannian, 1e-6);
    closeTo(found.distances, generalised.mean_shape_riemannian_to_each, 1e-6);
    closeTo(found.centroidSizes, generalised.centroid_sizes, 1e-9);
  });
});

describe('polygons, as R’s pracma and sp measure them', () => {
  const { note: _, ...cases } = readCase('polygons');
  it.each(Object.entries<ReturnType<typeof readCase>>(cases))('%s', (_, expected) => {
    closeTo(signedArea(expected.points), expected.signed_area, 1e-12);
    closeTo(polygonArea(expected.points), expected.area_pracma, 1e-12);
    closeTo(polygonArea(expected.points.flat()), expected.area_sp, 1e-12);
    closeTo(polygonPerimeter(expected.points), expected.perimeter, 1e-12);
    closeTo(polygonCentroid(expected.points), expected.centroid, 1e-12);
    closeTo(polygonArea(convexHull(expected.points)), expected.hull_area, 1e-12);
    const { xx, yy, xy } = secondMoments(expected.points);
    const moments = expected.second_moments_about_centroid;
    closeTo([xx, yy, xy], [moments.xx, moments.yy, moments.xy], 1e-9, 1e-9);
    expect(polygonArea([...expected.points].reverse())).toBeCloseTo(expected.area_sp, 9);
  });
});
