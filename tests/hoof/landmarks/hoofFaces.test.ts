import { describe, expect, it } from 'vitest';
import type { Place } from '../../../lib/geometry/pinhole.ts';
import type { Face, Tissue } from '../../../lib/hoof/landmarks/hoofModel.ts';
import { parametricHoof } from '../../../lib/hoof/landmarks/parametricHoof.ts';
import { inFrame, viewFrame } from '../../../lib/hoof/landmarks/viewFrame.ts';
import { limbs } from '../../../lib/hoof/limbs.ts';
import { views } from './pictures.ts';

const mirrored = ([x, y, z]: Place): Place => [-x, y, z];
const written = (place: Place) => place.map((value) => (Math.round(value * 1e6) / 1e6 + 0).toString()).join(' ');
const sorted = (places: readonly Place[]) => places.map(written).sort();
const of = (faces: readonly Face[], ...tissues: readonly Tissue[]) =>
  faces.filter(({ tissue }) => tissues.includes(tissue));

describe('an invented foot', () => {
  it('is on the right what it is on the left, in a mirror', () => {
    for (const [left, right] of [
      ['LF', 'RF'],
      ['LH', 'RH'],
    ] as const) {
      const [a, b] = [parametricHoof(left), parametricHoof(right)];
      const pieces = (faces: readonly Face[], seen: (place: Place) => Place) =>
        faces.map(({ tissue, corners }) => [tissue, ...sorted(corners.map(seen))].join('|')).sort();
      expect(pieces(a.faces, mirrored)).toEqual(pieces(b.faces, (place) => place));
      for (const view of views)
        for (const [code, places] of a.landmarks(view))
          expect(sorted(places.map(mirrored)), code).toEqual(sorted(b.landmarks(view).get(code)!));
    }
  });

  it('has its ground marked from the left of the picture to its right', () => {
    for (const limb of limbs)
      for (const view of ['side', 'front', 'rear'] as const) {
        const [from, to] = parametricHoof(limb).landmarks(view).get('ground')!;
        expect(inFrame(viewFrame(view, limb), from, 320, 0).map(Math.round)).toEqual(to.map(Math.round));
      }
  });

  it('has one surface above the ground: every edge joins two pieces, but round the ground, the top and the heels', () => {
    const { faces, edges } = parametricHoof('LF');
    const bulbs = 2 * 16 * 8;
    const skin = of(faces, 'skin');
    const upper = [...of(faces, 'horn', 'hair'), ...skin.slice(0, skin.length - bulbs)];
    const pieces = new Map<string, number>();
    for (const { corners } of upper)
      corners.forEach((corner, i) => {
        const edge = sorted([corner, corners[(i + 1) % corners.length]]).join('|');
        pieces.set(edge, (pieces.get(edge) ?? 0) + 1);
      });
    const places = (edge: string) => edge.split('|').map((place) => place.split(' ').map(Number));
    const open = [...pieces].filter(([, count]) => count === 1).map(([edge]) => places(edge));
    expect(Math.max(...pieces.values())).toBe(2);
    const heights = upper.flatMap(({ corners }) => corners.map(([, y]) => y));
    const top = Math.max(...heights);
    const [, , behind] = edges.hairline(2, 'lateral');
    const rim = open.filter((ends) => !ends.every(([, y]) => y === 0) && !ends.every(([, y]) => y > top - 1));
    for (const ends of rim)
      for (const [, y, z] of ends) {
        expect(z).toBeLessThan(behind + 45);
        expect(y).toBeLessThan(top / 4);
      }
    expect(open.filter((ends) => ends.every(([, y]) => y === 0))).toHaveLength(28);
    expect(open.filter((ends) => ends.every(([, y]) => y > top - 1))).toHaveLength(30);
    expect(rim).toHaveLength(4);
  });

  it('has round heel bulbs as wide apart as they are said to be, and behind the horn', () => {
    const { faces, edges, truth, landmarks } = parametricHoof('LF');
    const skin = of(faces, 'skin');
    const bulbs = skin.slice(skin.length - 2 * 16 * 8);
    const rearmost = [bulbs.slice(0, 128), bulbs.slice(128)].map((bulb) =>
      bulb.flatMap(({ corners }) => corners).reduce((last, place) => (place[2] < last[2] ? place : last)),
    );
    expect(Math.hypot(rearmost[0][0] - rearmost[1][0], rearmost[0][1] - rearmost[1][1])).toBeCloseTo(
      truth.bulb_width_mm,
      9,
    );
    for (const [i, side] of (['lateral', 'medial'] as const).entries()) {
      const [x, y, z] = edges.hairline(2, side);
      const corners = [bulbs.slice(0, 128), bulbs.slice(128)][i].flatMap((face) => face.corners);
      expect(written(rearmost[i])).toBe(written(landmarks('rear').get(`${side}_bulb`)![0]));
      expect(Math.sign(rearmost[i][0])).toBe(Math.sign(x));
      expect(rearmost[i][2]).toBeLessThan(z);
      const heights = corners.map((place) => place[1]);
      expect(Math.min(...heights)).toBeCloseTo(0, 9);
      expect(Math.max(...heights)).toBeGreaterThan(y);
      expect(Math.max(...heights)).toBeLessThan(1.1 * y);
      for (const place of corners) expect(Math.abs(place[0])).toBeLessThan(1.1 * Math.abs(x));
    }
  });

  it('has wall, sole, bars and frog on the ground within its bearing edge', () => {
    const { faces, size } = parametricHoof('RF');
    const under = of(faces, 'sole', 'wall', 'bar', 'frog', 'furrow');
    const [length, width] = [size.foot_length_mm, size.foot_width_mm];
    for (const { tissue, corners } of under)
      for (const [x, y, z] of corners) {
        expect(y).toBe(0);
        expect(Math.abs(x), tissue).toBeLessThanOrEqual(width / 2 + 1e-9);
        expect(z, tissue).toBeLessThanOrEqual(1e-9);
        expect(z, tissue).toBeGreaterThanOrEqual(-length - 1e-9);
      }
    expect(of(faces, 'wall')).toHaveLength(28);
    const span = (some: readonly Face[], c: number) => {
      const values = some.flatMap(({ corners }) => corners.map((place) => place[c]));
      return Math.max(...values) - Math.min(...values);
    };
    const [sole, frog, furrow] = (['sole', 'frog', 'furrow'] as const).map((tissue) => of(faces, tissue));
    expect(span(sole, 0)).toBeCloseTo(0.87 * width, 0);
    expect(span(sole, 2)).toBeCloseTo(0.87 * length, 0);
    expect(span(frog, 0)).toBeCloseTo(size.frog_width_mm, 9);
    expect(span(frog, 2)).toBeCloseTo(size.frog_length_mm, 9);
    const [tip, right, a, base, b, left] = frog[0].corners;
    expect(Math.abs(right[0])).toBeLessThan(Math.abs(a[0]));
    for (const [edge, corner] of [
      [right, a],
      [left, b],
    ]) {
      expect(edge[2]).toBeLessThan(tip[2]);
      expect(edge[2]).toBeGreaterThan(corner[2]);
      // Hollowed: further in than the straight line from the tip to the corner.
      expect(Math.abs(edge[0])).toBeCloseTo(Math.abs(corner[0]) / 2, 9);
      expect(edge[2]).toBeCloseTo((tip[2] + corner[2]) / 2 + 4, 9);
    }
    expect(furrow[0].corners[0][2]).toBeGreaterThan(base[2]);
    expect(span(furrow, 0)).toBe(8);
    expect(span(furrow, 2)).toBeLessThan(size.frog_length_mm);
  });

  it('has its bars beside the frog, from the heel buttresses forward', () => {
    const { faces, edges, size } = parametricHoof('RF');
    const bars = of(faces, 'bar');
    for (const [i, side] of (['medial', 'lateral'] as const).entries()) {
      const heel = edges.bearing(2, side);
      const { corners } = bars[i];
      expect(corners[0]).toEqual(heel);
      for (const [x, , z] of corners) {
        expect(Math.sign(x)).toBe(Math.sign(heel[0]));
        expect(Math.abs(x)).toBeLessThanOrEqual(Math.abs(heel[0]));
        expect(Math.abs(x)).toBeGreaterThan(size.frog_width_mm / 4);
        expect(z).toBeGreaterThanOrEqual(heel[2]);
        expect(z).toBeLessThan(heel[2] + size.foot_length_mm / 2);
      }
      // Narrower in front than at the heel.
      const [, inside, end, blunt, behind] = corners;
      expect(Math.abs(end[0])).toBeLessThan(Math.abs(inside[0]));
      expect([Math.abs(end[0]) - Math.abs(blunt[0]), end[2] - blunt[2]].map(Math.round)).toEqual([2, 8]);
      expect(behind[2]).toBe(heel[2]);
    }
  });
});
