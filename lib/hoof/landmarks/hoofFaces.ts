import type { Place } from '../../geometry/pinhole.ts';
import { type Limb, sideOf } from '../limbs.ts';
import { bulbOf, frogCorners, tracedOutline } from './hoofLandmarks.ts';
import type { Face, HoofEdges, HoofSize, Tissue } from './hoofModel.ts';
import { limbRings, onRing } from './limbRings.ts';

/** How many pieces each side of the horn has. */
const steps = 14;

/** The surface of an invented foot in flat pieces. */
export function hoofFaces(limb: Limb, size: HoofSize, edges: HoofEdges): Face[] {
  const outer = sideOf(limb) === 'left' ? 1 : -1;
  const bearing = tracedOutline(edges, steps);
  const hairline = bearing.map((_, i) => {
    const t = (2 * (i - steps)) / steps;
    return edges.hairline(Math.abs(t), t < 0 ? 'medial' : 'lateral');
  });
  const rings = limbRings(size);
  // The hairline goes two thirds round the limb; what is left behind are the heels.
  const angles = hairline.map((_, i) => (outer * 140 * (i - steps)) / steps);
  const loops = [hairline, ...rings.map((ring) => angles.map((angle) => onRing(ring, angle)))];
  const behind = [outer * 140, outer * 180, outer * 220];
  const backs = rings.map((ring) => behind.map((angle) => onRing(ring, angle)));
  const heelEnds = [hairline[hairline.length - 1], hairline[0]];
  return [
    ...strip('horn', bearing, hairline),
    ...loops.slice(1).flatMap((loop, i) => strip(i === 0 ? 'hair' : 'skin', loops[i], loop)),
    ...backs.slice(1).flatMap((back, i) => strip('skin', backs[i], back)),
    ...strip('skin', [heelEnds[0], mid(heelEnds[0], heelEnds[1]), heelEnds[1]], backs[0]),
    ...(['lateral', 'medial'] as const).flatMap((side) => bulb(edges, side)),
    ...under(size, edges, bearing, outer),
  ];
}

function strip(tissue: Tissue, low: readonly Place[], high: readonly Place[]): Face[] {
  return low.slice(1).map((corner, i) => ({ tissue, corners: [low[i], corner, high[i + 1], high[i]] }));
}

function mid(a: Place, b: Place): Place {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
}

/** A heel bulb, round; what of it is within the horn stays hidden. */
function bulb(edges: HoofEdges, side: 'medial' | 'lateral'): Face[] {
  const { centre, axes } = bulbOf(edges, side);
  const meridian = (turn: number) =>
    Array.from({ length: 9 }, (_, i): Place => {
      const rise = (Math.PI * (i - 4)) / 8;
      const [across, back] = [Math.cos(rise) * Math.cos(turn), Math.cos(rise) * Math.sin(turn)];
      return [centre[0] + axes[0] * across, centre[1] + axes[1] * Math.sin(rise), centre[2] - axes[2] * back];
    });
  const meridians = Array.from({ length: 17 }, (_, i) => meridian((Math.PI * i) / 8));
  return meridians.slice(1).flatMap((next, i) => strip('skin', meridians[i], next));
}

/** What is seen from below: the wall's bearing edge, the sole within, the bars and the frog with its furrow. */
function under(size: HoofSize, edges: HoofEdges, bearing: readonly Place[], outer: number): Face[] {
  const centre = -size.foot_length_mm * 0.52;
  const inner = bearing.map(([x, , z]): Place => [0.87 * x, 0, centre + 0.87 * (z - centre)]);
  const { tip, corner } = frogCorners(size);
  const bars = (['medial', 'lateral'] as const).map((side): Face => {
    const sign = side === 'lateral' ? outer : -outer;
    const heel = edges.bearing(2, side);
    const inside: Place = [0.86 * heel[0], 0, heel[2] + 10];
    const end: Place = [sign * size.frog_width_mm * 0.36, 0, heel[2] + 0.42 * size.foot_length_mm];
    return {
      tissue: 'bar',
      corners: [heel, inside, end, [end[0] - sign * 2, 0, end[2] - 8], [0.8 * heel[0], 0, heel[2]]],
    };
  });
  const [a, b, base] = [corner(1), corner(-1), corner(0)];
  return [
    { tissue: 'sole', corners: inner },
    ...strip('wall', bearing, inner),
    ...bars,
    {
      tissue: 'frog',
      corners: [tip, [0.5 * a[0], 0, (tip[2] + a[2]) / 2 + 4], a, base, b, [0.5 * b[0], 0, (tip[2] + b[2]) / 2 + 4]],
    },
    {
      tissue: 'furrow',
      corners: [
        [0, 0, base[2] + 0.62 * size.frog_length_mm],
        [4, 0, base[2]],
        [-4, 0, base[2]],
      ],
    },
  ];
}
