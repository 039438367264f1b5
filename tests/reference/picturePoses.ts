import type { Place } from '../../lib/geometry/pinhole.ts';
import type { ParametricHoof } from '../../lib/hoof/landmarks/hoofModel.ts';
import { hoofScene } from '../../lib/hoof/landmarks/hoofScene.ts';
import { measuresFromPoints } from '../../lib/hoof/landmarks/measuresFromPoints.ts';
import { parametricHoof } from '../../lib/hoof/landmarks/parametricHoof.ts';
import type { PictureScale } from '../../lib/hoof/landmarks/pictureMeasures.ts';
import type { PictureView } from '../../lib/hoof/landmarks/placedPoint.ts';
import { inFrame, viewFrame } from '../../lib/hoof/landmarks/viewFrame.ts';
import { landmarkView, planeDepth_mm, sharedDepths } from '../../lib/hoof/landmarks/views.ts';
import { limbs } from '../../lib/hoof/limbs.ts';
import { type Random, random } from '../../lib/stats/random.ts';

/** How a measure came out over many pictures of many invented feet. */
export interface PoseSummary {
  readonly name: string;
  readonly unit: string;
  readonly n: number;
  /** The root mean square error: in degrees for angles, as a share of the truth for all else. */
  readonly rms: number;
  /** How often the truth lay within 1.96 stated standard errors. */
  readonly covered: number;
}

export interface PoseOptions {
  /** Pixels of placing noise, one standard deviation. */
  readonly placing_px?: number;
  readonly scalePlacing_px?: number;
  /** Whether landmarks lie off the plane and the board's size is off, as the library assumes; else all is flat and true. */
  readonly depth?: boolean;
  /** Degrees off square, at most. */
  readonly off?: number;
  readonly scale?: 'board' | 'bar';
}

const views: readonly PictureView[] = ['side', 'front', 'rear', 'below'];

/** As many pictures of random feet from random places, the four views in turn, at 12 megapixels. */
export function picturePoses(count: number, seed: number, options: PoseOptions = {}): PoseSummary[] {
  const { placing_px = 1, scalePlacing_px = placing_px, depth = false, off = 10, scale: kind = 'board' } = options;
  const { uniform, normal } = random(seed);
  const between = (from: number, to: number) => from + (to - from) * uniform();
  const sums = new Map<string, { unit: string; n: number; squares: number; covered: number }>();
  for (let pose = 0; pose < count; pose++) {
    const view = views[pose % views.length];
    const hoof = randomHoof(pose, between);
    const errorOfSize = depth ? 0.5 : 0;
    // Uniform over the directions within so many degrees of square.
    const [far, way] = [off * Math.sqrt(uniform()), 2 * Math.PI * uniform()];
    const camera = {
      turned: far * Math.cos(way),
      raised: far * Math.sin(way),
      rolled: between(-5, 5),
      distance_mm: depth ? 1000 : between(600, 2500),
      field_mm: between(440, 600),
    };
    const real: PictureScale =
      kind === 'bar'
        ? { kind, length_mm: between(80, 120) }
        : { kind, width_mm: between(90, 130), height_mm: between(90, 130) };
    const scene = hoofScene(offPlane(hoof, view, depth ? normal : () => 0), view, camera, real);
    const points = scene.points.map((point) => {
      const noise_px = /^(board|bar)_/.test(point.point) ? scalePlacing_px : placing_px;
      return { ...point, x_px: point.x_px + noise_px * normal(), y_px: point.y_px + noise_px * normal() };
    });
    const given = { ...offSize(real, errorOfSize, normal), error_mm: errorOfSize };
    const { measures } = measuresFromPoints(view, points, given, hoof.limb, { placing_px, scalePlacing_px, depth });
    for (const { name, unit, value, error } of measures) {
      const truth = hoof.truth[name];
      // An invented foot is symmetric, and noise can't make a foot more so.
      if (truth === 0) continue;
      const miss = value - truth;
      const sum = sums.get(name) ?? { unit, n: 0, squares: 0, covered: 0 };
      sum.n++;
      sum.squares += (unit === 'deg' ? miss : miss / truth) ** 2;
      if (Math.abs(miss) <= 1.96 * error) sum.covered++;
      sums.set(name, sum);
    }
  }
  return [...sums].map(([name, { unit, n, squares, covered }]) => ({
    name,
    unit,
    n,
    rms: Math.sqrt(squares / n),
    covered: covered / n,
  }));
}

function offSize(scale: PictureScale, error: number, normal: Random['normal']): PictureScale {
  return scale.kind === 'bar'
    ? { ...scale, length_mm: scale.length_mm + error * normal() }
    : { ...scale, width_mm: scale.width_mm + error * normal(), height_mm: scale.height_mm + error * normal() };
}

function randomHoof(pose: number, between: (from: number, to: number) => number): ParametricHoof {
  return parametricHoof(limbs[(pose >> 2) % 4], {
    toe_angle_deg: between(45, 58),
    toe_length_mm: between(70, 100),
    heel_angle_deg: between(35, 55),
    heel_length_mm: between(30, 50),
    pastern_angle_deg: between(45, 60),
    medial_wall_mm: between(38, 60),
    lateral_wall_mm: between(38, 60),
    medial_wall_angle_deg: between(65, 95),
    lateral_wall_angle_deg: between(65, 95),
    medial_heel_mm: between(20, 40),
    foot_width_mm: between(110, 150),
    foot_length_mm: between(110, 150),
    heel_width_mm: between(65, 95),
    frog_width_mm: between(35, 60),
    frog_length_mm: between(60, 95),
  });
}

/** The foot with its landmarks laid into the plane of the view, or off it by as much as the library says is common. */
function offPlane(hoof: ParametricHoof, view: PictureView, normal: () => number): ParametricHoof {
  const frame = viewFrame(view, hoof.limb);
  const marks = hoof.landmarks(view);
  const deep = (place: Place) => place.reduce((sum, value, c) => sum + value * frame.viewer[c], 0);
  const plane = deep(view === 'below' ? [0, 0, 0] : marks.get('ground')![0]);
  const scaleOff = planeDepth_mm * normal();
  const shared = sharedDepths
    .filter((group) => group.view === view)
    .map(({ codes, depth_mm }) => ({ codes, by: depth_mm * normal() }));
  const { landmarks } = landmarkView(view);
  const laid = new Map(
    [...marks].map(([code, places]) => {
      const own = landmarks.find((landmark) => landmark.code === code)!.depth_mm;
      const common = shared.find(({ codes }) => codes.includes(code))?.by ?? 0;
      const moved = places.map((place) => {
        const by = plane - deep(place) + scaleOff + common + own * normal();
        return inFrame(frame, place, 0, 0, by);
      });
      return [code, moved] as const;
    }),
  );
  return { ...hoof, faces: [], landmarks: () => laid };
}
