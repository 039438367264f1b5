import { describe, expect, it } from 'vitest';
import { hoofScene } from '../../../lib/hoof/landmarks/hoofScene.ts';
import { measuresFromPoints } from '../../../lib/hoof/landmarks/measuresFromPoints.ts';
import { parametricHoof } from '../../../lib/hoof/landmarks/parametricHoof.ts';
import type { PlacedPoint } from '../../../lib/hoof/landmarks/placedPoint.ts';
import { limbs } from '../../../lib/hoof/limbs.ts';
import { bar, board, flatPoints, valuesOf, views } from './pictures.ts';

const askew = { turned: 7, raised: -5, rolled: 3, distance_mm: 900 };
const without = (points: readonly PlacedPoint[], ...codes: string[]) =>
  points.filter(({ point }) => !codes.includes(point));
/** By how much an outline of 25 points, rounded between them, may miss the whole. */
const tolerance: Readonly<Record<string, number>> = {
  outline_area_mm2: 15,
  outline_perimeter_mm: 0.2,
  outline_roundness: 1e-3,
  ellipse_ratio: 3e-3,
};

describe('a foot in the plane of a board', () => {
  it.each(views)('from the %s is measured as it is, however the camera stood', (view) => {
    for (const limb of limbs) {
      const { truth } = parametricHoof(limb);
      const { measures, refusals } = measuresFromPoints(view, flatPoints(view, limb, askew, board), board, limb, {
        depth: false,
      });
      expect(refusals).toEqual([]);
      expect(measures.length).toBeGreaterThanOrEqual(4);
      for (const { name, value } of measures)
        expect(Math.abs(value - truth[name]), `${limb} ${name}`).toBeLessThan(tolerance[name] ?? 1e-6);
    }
  });
  it('has its angles measured against the ground of the picture and not against its edge', () => {
    const level = measuresFromPoints('side', flatPoints('side', 'LF'), undefined, 'LF');
    const rolled = measuresFromPoints('side', flatPoints('side', 'LF', { rolled: 25 }), undefined, 'LF');
    for (const [name, value] of Object.entries(valuesOf(level))) expect(valuesOf(rolled)[name]).toBeCloseTo(value, 6);
  });
  it('is measured from the bearing points where no ground was placed', () => {
    const points = flatPoints('side', 'RH', askew, board);
    const { measures } = measuresFromPoints('side', without(points, 'ground'), board, 'RH');
    expect(measures.find(({ name }) => name === 'toe_angle_deg')!.value).toBeCloseTo(52, 6);
  });
  it('square on with a bar is measured as well', () => {
    for (const view of views) {
      const found = measuresFromPoints(view, flatPoints(view, 'RF', {}, bar), bar, 'RF');
      expect(found.squareness).toBeUndefined();
      for (const { name, value } of found.measures)
        expect(Math.abs(value - parametricHoof('RF').truth[name]), name).toBeLessThan(tolerance[name] ?? 1e-6);
    }
  });
});

describe('lines', () => {
  const points = flatPoints('side', 'LF');
  const bulged = (point: string): PlacedPoint[] =>
    points.map((row) => (row.point === point ? { ...row, x_px: row.x_px + 40 } : row));
  it('follow the points along the wall where there are such, and not its ends', () => {
    expect(valuesOf(measuresFromPoints('side', bulged('toe_hairline'), undefined, 'LF')).toe_angle_deg).toBeCloseTo(
      52,
      6,
    );
    const ends = without(bulged('toe_hairline'), 'toe_wall');
    expect(valuesOf(measuresFromPoints('side', ends, undefined, 'LF')).toe_angle_deg).toBeLessThan(50.5);
  });
  it('of the pastern are taken through its middle where its front was not placed', () => {
    const { measures } = measuresFromPoints('side', without(points, 'pastern_front'), undefined, 'LF');
    const pastern = measures.find(({ name }) => name === 'pastern_angle_deg')!;
    expect(pastern.value).toBeCloseTo(54, 6);
    expect(pastern.from).toEqual(expect.arrayContaining(['pastern_centre', 'fetlock_centre', 'ground']));
    expect(pastern.from).not.toContain('pastern_front');
  });
  it('through one point twice are none, and nothing is measured from them', () => {
    const [toe] = points.filter(({ point }) => point === 'toe_ground');
    const one = [...without(points, 'toe_hairline', 'toe_wall'), { ...toe, point: 'toe_hairline' }];
    expect(valuesOf(measuresFromPoints('side', one, undefined, 'LF')).toe_angle_deg).toBeUndefined();
  });
});

describe('the shoulder', () => {
  const row = (point: string, x_px: number, y_px: number): PlacedPoint => ({
    photo: 'a',
    view: 'side',
    point,
    x_px,
    y_px,
  });
  const points = [
    row('ground', 0, 1000),
    row('ground', 1000, 1000),
    row('shoulder_point', 200, 700),
    row('shoulder_top', 500, 400),
  ];
  it('is read against the ground without a foot in the picture, on either side of the horse', () => {
    expect(valuesOf(measuresFromPoints('side', points, undefined, 'LF'))).toEqual({
      shoulder_angle_deg: expect.closeTo(45),
    });
    const mirrored = points.map((point) => ({ ...point, x_px: 1000 - point.x_px }));
    expect(valuesOf(measuresFromPoints('side', mirrored, undefined, 'RF')).shoulder_angle_deg).toBeCloseTo(45);
  });
  it('is not read for a hind foot', () => {
    expect(measuresFromPoints('side', points, undefined, 'LH')).toMatchObject({ measures: [], refusals: [] });
  });
});

describe('from below', () => {
  const all = flatPoints('below', 'LF', askew, board);
  it('the traced outline alone gives width, length and heels', () => {
    const traced = all.filter(({ point }) => point === 'outline' || point.startsWith('board'));
    const values = valuesOf(measuresFromPoints('below', traced, board, 'LF'));
    const { truth } = parametricHoof('LF');
    for (const name of ['foot_width_mm', 'foot_length_mm', 'heel_width_mm'])
      expect(Math.abs(values[name] - truth[name]), name).toBeLessThan(0.3);
    expect(values.frog_width_mm).toBeUndefined();
  });
  it('nine points are no outline', () => {
    const few = all.filter(({ point }) => point === 'outline').slice(0, 9);
    expect(measuresFromPoints('below', few, undefined, 'LF')).toMatchObject({
      measures: [],
      refusals: [],
      drawing: [],
    });
  });
  it('an uneven outline has an asymmetry, an even one none', () => {
    const values = valuesOf(measuresFromPoints('below', all, board, 'LF'));
    expect(values.outline_asymmetry_mm).toBeLessThan(1e-6);
    const quarter = all.filter(({ point }) => point === 'outline').slice(4, 9);
    const dented = all.map((row) => (quarter.includes(row) ? { ...row, x_px: row.x_px + 40 } : row));
    expect(valuesOf(measuresFromPoints('below', dented, board, 'LF')).outline_asymmetry_mm).toBeGreaterThan(0.5);
  });
});

describe('what is refused', () => {
  it('lengths without a known size, each with the way out; angles stand', () => {
    const { measures, refusals } = measuresFromPoints('side', flatPoints('side', 'LF'), undefined, 'LF');
    expect(measures.every(({ unit }) => unit === 'deg')).toBe(true);
    expect(refusals.map(({ measure }) => measure)).toEqual(['toe_length_mm', 'heel_length_mm']);
    expect(refusals[0].reason).toBe('Nothing in the picture has a known size');
    expect(refusals[0].remedy).toContain('Put a bar of known length');
  });
  it('lengths where a corner of the board is not placed, and which corner', () => {
    const points = without(flatPoints('side', 'LF', {}, board), 'board_upper_left');
    const { refusals, squareness } = measuresFromPoints('side', points, board, 'LF');
    expect(refusals[0].reason).toBe('Upper left corner of the board is not placed');
    expect(squareness).toBeUndefined();
  });
  it('lengths where the corners lie on one line', () => {
    const points = flatPoints('side', 'LF', {}, board).map((row) =>
      row.point.startsWith('board') ? { ...row, y_px: 9 } : row,
    );
    const { refusals } = measuresFromPoints('side', points, board, 'LF');
    expect(refusals[0].reason).toContain("The board can't be used: The points settle no projective map");
  });
  it('everything where the camera was too far off square, and which way to step', () => {
    const points = flatPoints('front', 'LF', { turned: 24 }, board);
    const { measures, refusals, squareness } = measuresFromPoints('front', points, board, 'LF');
    expect(measures).toEqual([]);
    expect(squareness?.usable).toBe(false);
    expect(refusals.length).toBeGreaterThan(4);
    expect(refusals[0].reason).toMatch(/^The camera was 2[345]\.\d° off square, more than 15°$/);
    expect(refusals[0].remedy).toContain('Step to the right');
  });
  it('inside and outside where they lie the wrong way round for the limb', () => {
    for (const view of ['front', 'rear'] as const) {
      const { refusals } = measuresFromPoints(view, flatPoints(view, 'LF', {}, board), board, 'RF');
      expect(refusals.length).toBeGreaterThanOrEqual(2);
      for (const { reason } of refusals)
        expect(reason).toBe('Inside and outside lie the wrong way round for the right fore');
    }
  });
  it('a measure whose error is larger than what it should show, for its largest cause', () => {
    const points = flatPoints('side', 'LF', {}, board);
    const { refusals } = measuresFromPoints('side', points, board, 'LF', { placing_px: 40, scalePlacing_px: 1 });
    const toe = refusals.find(({ measure }) => measure === 'toe_angle_deg')!;
    expect(toe.reason).toMatch(/^Its error, \d.*°, is larger than the 1\.5° that it should show$/);
    expect(toe.remedy).toContain('brush or clip the hair');
    const small = { ...board, error_mm: 30 };
    const sized = measuresFromPoints('side', points, small, 'LF', { placing_px: 1 }).refusals;
    expect(sized.find(({ measure }) => measure === 'toe_length_mm')!.remedy).toContain('larger board');
  });
});

describe('what is handed back', () => {
  const points = flatPoints('front', 'LF', { turned: 2, raised: -2, rolled: 3 }, board);
  const found = measuresFromPoints('front', points, board, 'LF');
  it('tells measured columns from other measures, and from which points each came', () => {
    const byName = new Map(found.measures.map((measure) => [measure.name, measure]));
    expect(byName.get('medial_wall_mm')).toMatchObject({ column: true, unit: 'mm', title: 'Inside wall height' });
    expect(byName.get('limb_axis_front_deg')!.column).toBe(false);
    expect(byName.get('medial_wall_mm')!.from).toEqual([
      'ground',
      'medial_hairline',
      'medial_ground',
      'board_lower_left',
      'board_lower_right',
      'board_upper_right',
      'board_upper_left',
    ]);
  });
  it('draws every measure where its points lie in the picture, and the ground', () => {
    expect(found.drawing[0]).toMatchObject({ kind: 'line', of: 'ground' });
    const wall = found.drawing.find(({ of }) => of === 'medial_wall_mm')!;
    const hairline = points.find(({ point }) => point === 'medial_hairline')!;
    expect(wall.kind).toBe('length');
    if (wall.kind !== 'length') return;
    expect(wall.to[0]).toBeCloseTo(hairline.x_px, 6);
    expect(wall.to[1]).toBeCloseTo(hairline.y_px, 6);
    expect(wall.label).toMatch(/^48.* mm$/);
    const angle = found.drawing.find(({ of }) => of === 'lateral_wall_angle_deg')!;
    const foot = points.find(({ point }) => point === 'lateral_ground')!;
    expect(angle.kind === 'angle' && angle.corner[0]).toBeCloseTo(foot.x_px, 6);
  });
  it('labels in the units that were asked for', () => {
    const { drawing } = measuresFromPoints('front', points, board, 'LF', { units: { length: 'in', mass: 'kg' } });
    expect(drawing.find(({ of }) => of === 'medial_wall_mm')).toMatchObject({ label: expect.stringContaining('in') });
  });
  it('leaves out what it doesn’t know, what has no place, and what was never placed', () => {
    const odd = [
      { photo: 'a', view: 'front', point: '__proto__', x_px: 1, y_px: 1 },
      { photo: 'a', view: 'front', point: 'medial_ground', x_px: NaN, y_px: 1 },
      { photo: 'a', view: 'side', point: 'toe_ground', x_px: 1, y_px: 1 },
    ] as const;
    expect(measuresFromPoints('front', odd, undefined, 'LF')).toMatchObject({
      measures: [],
      refusals: [],
      drawing: [],
    });
    expect(valuesOf(measuresFromPoints('front', [...odd, ...points], board, 'LF'))).toEqual(valuesOf(found));
  });
  it('says what had to be assumed, and no more', () => {
    expect(found.assumptions).toHaveLength(3);
    const camera = { focal_px: 8000, width_px: 4000, height_px: 3000 };
    const told = measuresFromPoints('front', points, board, 'LF', { placing_px: 2, camera, depth: false });
    expect(told.assumptions).toEqual([]);
  });
});

describe('a whole foot', () => {
  it('whose heel stands before the board and whose hairline lies behind it is measured within its stated errors', () => {
    for (const limb of limbs)
      for (const view of views)
        for (const [turned, raised] of [
          [0, 0],
          [3, 2],
          [-3, 4],
        ]) {
          const hoof = parametricHoof(limb);
          const { points } = hoofScene(hoof, view, { turned, raised, rolled: 1 }, board);
          const { measures } = measuresFromPoints(view, points, board, limb);
          expect(measures.length, `${limb} ${view}`).toBeGreaterThanOrEqual(4);
          for (const { name, value, error } of measures)
            expect(Math.abs(value - hoof.truth[name]), `${limb} ${name}`).toBeLessThan(1.96 * error);
        }
  });
});

describe('the scale alone', () => {
  it('already tells how square the camera stood', () => {
    const all = flatPoints('side', 'LF', { turned: 7, distance_mm: 8000 }, board);
    const points = all.filter(({ point }) => point.startsWith('board'));
    const found = measuresFromPoints('side', points, board, 'LF');
    expect(Math.abs(found.squareness!.turn_deg - 7)).toBeLessThan(1.5);
    expect(found).toMatchObject({ measures: [], refusals: [], drawing: [] });
  });
});
