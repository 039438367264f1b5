import { say } from '../../words/say.ts';
import type { Landmark } from './landmark.ts';
import type { PictureView } from './placedPoint.ts';

/** One of the four views: how the picture is taken, and what is placed on it in which order. */
export interface LandmarkView {
  readonly view: PictureView;
  readonly title: string;
  /** How to stand and hold the camera: two or three sentences. */
  readonly how: string;
  /** In the order in which they are placed. */
  readonly landmarks: readonly Landmark[];
}

const practice = 'common practice, no source';

function one(code: string, title: string, where: string, depth_mm: number, source = practice): Landmark {
  return { code, title, where, optional: false, least: 1, many: false, depth_mm, source };
}

function several(code: string, title: string, where: string, depth_mm: number, source = practice): Landmark {
  return { code, title, where, optional: true, least: 2, many: true, depth_mm, source };
}

function optional(landmark: Landmark): Landmark {
  return { ...landmark, optional: true };
}

function inside(landmark: Landmark): Landmark {
  return { ...landmark, side: 'medial' };
}

function outside(landmark: Landmark): Landmark {
  return { ...landmark, side: 'lateral' };
}

const ground = several(
  'ground',
  say`The ground`,
  say`Two or more points on the ground in the plane of the foot, one well to the left of it and one well to the right.`,
  5,
);

const axis = several(
  'limb_axis',
  say`The middle line of the limb`,
  say`Two or more points half way between the two outlines of the limb, from the cannon down to the pastern.`,
  30,
);

const hairline = say`where the horn ends and the hair begins`;

/** The four views with their landmarks. */
export const landmarkViews: readonly LandmarkView[] = [
  {
    view: 'side',
    title: say`From the side`,
    how: 'Hard level ground, the horse standing square on it with the cannon upright. Camera at the height of the foot, square to its side, so that the near heel hides the far one; step back and zoom in. Brush the hair up off the hairline.',
    landmarks: [
      ground,
      one(
        'toe_ground',
        say`Toe at the ground`,
        say`The foremost point of the front wall at the ground; in a shod foot, of the shoe.`,
        3,
        'feif-toe-length',
      ),
      one(
        'toe_hairline',
        say`Toe at the hairline`,
        say`The upper end of the front wall at mid-toe, ${hairline}.`,
        3,
        'feif-toe-length',
      ),
      several(
        'toe_wall',
        say`Along the front wall`,
        say`Two or more points along the straight part of the front wall: where the wall is bulged or dished, along its upper third.`,
        3,
      ),
      one(
        'heel_ground',
        say`Heel at the ground`,
        say`The rearmost point of the near heel that bears on the ground; in a shod foot, straight below on the ground side of the shoe.`,
        4,
        'turner-tape',
      ),
      one(
        'heel_hairline',
        say`Heel at the hairline`,
        say`The upper end of the horn tubules of the near heel, ${hairline}, not the outline of the bulb.`,
        4,
        'turner-tape',
      ),
      several(
        'heel_tubules',
        say`Along the heel’s horn tubules`,
        say`Two or more points along one horn tubule of the near heel.`,
        4,
      ),
      several(
        'pastern_front',
        say`The front line of the pastern`,
        say`Two or more points along the front outline of the pastern, from above the hairline to below the fetlock.`,
        5,
        'adams-stashak',
      ),
      optional(
        one(
          'pastern_centre',
          say`Middle of the pastern`,
          say`Half way between the front and the rear outline of the pastern, just above the foot.`,
          5,
        ),
      ),
      optional(
        one(
          'fetlock_centre',
          say`Middle of the fetlock`,
          say`The middle of the fetlock joint, half way between its front and its rear outline.`,
          5,
        ),
      ),
      {
        ...optional(
          one(
            'shoulder_top',
            say`Top of the shoulder blade`,
            say`The upper end of the ridge of the shoulder blade, at the withers.`,
            20,
          ),
        ),
        frontOnly: true,
      },
      {
        ...optional(one('shoulder_point', say`Point of the shoulder`, say`The foremost point of the shoulder.`, 20)),
        frontOnly: true,
      },
    ],
  },
  {
    view: 'front',
    title: say`From the front`,
    how: 'Hard level ground, the horse standing square on it. Camera at the height of the foot, straight before the toe, so that as much of the inside is seen as of the outside; step back and zoom in. Brush the hair up off the hairline.',
    landmarks: [
      ground,
      inside(
        one(
          'medial_hairline',
          say`Inside hairline`,
          say`The outline of the inside wall at its widest part, ${hairline}.`,
          5,
          'lesniak-2017',
        ),
      ),
      inside(
        one(
          'medial_ground',
          say`Inside wall at the ground`,
          say`The lower end of the same outline, at the ground; in a shod foot, of the shoe.`,
          5,
          'lesniak-2017',
        ),
      ),
      outside(
        one(
          'lateral_hairline',
          say`Outside hairline`,
          say`The outline of the outside wall at its widest part, ${hairline}.`,
          5,
          'lesniak-2017',
        ),
      ),
      outside(
        one(
          'lateral_ground',
          say`Outside wall at the ground`,
          say`The lower end of the same outline, at the ground; in a shod foot, of the shoe.`,
          5,
          'lesniak-2017',
        ),
      ),
      axis,
    ],
  },
  {
    view: 'rear',
    title: say`From behind`,
    how: 'Hard level ground, the horse standing square on it and held by someone at its head. Camera at the height of the foot, straight behind the heels; step back and zoom in. Lift the feathers off the heels.',
    landmarks: [
      ground,
      inside(
        one(
          'medial_heel_hairline',
          say`Inside heel at the hairline`,
          say`The inside heel, ${hairline}.`,
          5,
          'ogrady-sheared',
        ),
      ),
      inside(
        one(
          'medial_heel_ground',
          say`Inside heel at the ground`,
          say`The ground below the inside heel; in a shod foot, the ground side of the shoe.`,
          5,
          'ogrady-sheared',
        ),
      ),
      outside(
        one(
          'lateral_heel_hairline',
          say`Outside heel at the hairline`,
          say`The outside heel, ${hairline}.`,
          5,
          'ogrady-sheared',
        ),
      ),
      outside(
        one(
          'lateral_heel_ground',
          say`Outside heel at the ground`,
          say`The ground below the outside heel; in a shod foot, the ground side of the shoe.`,
          5,
          'ogrady-sheared',
        ),
      ),
      inside(
        optional(
          one(
            'medial_bulb',
            say`Inside heel bulb`,
            say`The rearmost point of the inside bulb: the middle of its roundness.`,
            8,
          ),
        ),
      ),
      outside(
        optional(
          one(
            'lateral_bulb',
            say`Outside heel bulb`,
            say`The rearmost point of the outside bulb: the middle of its roundness.`,
            8,
          ),
        ),
      ),
      axis,
    ],
  },
  {
    view: 'below',
    title: say`From below`,
    how: 'The foot picked up, clean and hanging freely, someone at the horse’s head. Camera square over the sole, above the point just behind the tip of the frog; never kneel or sit beside the foot.',
    landmarks: [
      one(
        'toe',
        say`Middle of the toe`,
        say`The foremost point of the bearing edge of the wall, at mid-toe.`,
        3,
        'measuring-walkthrough',
      ),
      inside(
        one(
          'medial_heel',
          say`Inside heel buttress`,
          say`The rear outer corner of the wall at the inside heel, where it turns in to the bar.`,
          3,
          'measuring-walkthrough',
        ),
      ),
      outside(
        one(
          'lateral_heel',
          say`Outside heel buttress`,
          say`The rear outer corner of the wall at the outside heel, where it turns in to the bar.`,
          3,
          'measuring-walkthrough',
        ),
      ),
      inside(
        one(
          'medial_widest',
          say`Widest point inside`,
          say`The outer edge of the inside wall where the foot is widest.`,
          3,
          'measuring-walkthrough',
        ),
      ),
      outside(
        one(
          'lateral_widest',
          say`Widest point outside`,
          say`The outer edge of the outside wall where the foot is widest.`,
          3,
          'measuring-walkthrough',
        ),
      ),
      one(
        'frog_tip',
        say`Tip of the frog`,
        say`The foremost point of the frog; find the true tip with a finger.`,
        3,
        'turner-tape',
      ),
      inside(
        one(
          'medial_frog',
          say`Inside corner of the frog`,
          say`The inside edge of the frog at its base, where it is widest.`,
          3,
          'turner-tape',
        ),
      ),
      outside(
        one(
          'lateral_frog',
          say`Outside corner of the frog`,
          say`The outside edge of the frog at its base, where it is widest.`,
          3,
          'turner-tape',
        ),
      ),
      several(
        'centre_line',
        say`The middle line`,
        say`Two or more points along the middle line of the foot: the furrow of the frog and mid-toe.`,
        3,
      ),
      {
        ...several(
          'outline',
          say`The outline`,
          say`Ten or more points round the outer edge of the wall, from one heel buttress by the toe to the other.`,
          3,
        ),
        least: 10,
      },
    ],
  },
];

/** Landmarks that lie before or behind the plane of the scale together, such as those of the near heel. */
export interface SharedDepth {
  readonly view: PictureView;
  readonly codes: readonly string[];
  /** One standard deviation in mm. An assumption, no source. */
  readonly depth_mm: number;
}

/** What commonly lies off the plane of the scale as one. The scale itself is `planeDepth_mm` off. */
export const sharedDepths: readonly SharedDepth[] = [
  // The near heel stands half the width of the heels before the middle of the foot.
  { view: 'side', codes: ['heel_ground', 'heel_hairline', 'heel_tubules'], depth_mm: 30 },
  // The foot is an oblique cone: its hairline lies further back than its bearing edge.
  { view: 'front', codes: ['medial_hairline', 'lateral_hairline'], depth_mm: 30 },
  { view: 'rear', codes: ['medial_heel_hairline', 'lateral_heel_hairline'], depth_mm: 25 },
];

/** How far the scale commonly stands before or behind the plane of the foot, one standard deviation. An assumption. */
export const planeDepth_mm = 5;

/** The landmarks of a scale, placed before those of the foot: a bar's two ends, or a board's four corners. */
export const scaleLandmarks: Readonly<Record<'bar' | 'board', readonly Landmark[]>> = {
  bar: [
    one(
      'bar_start',
      say`One end of the bar`,
      say`The end of the known length that is further to the left in the picture.`,
      0,
    ),
    one(
      'bar_end',
      say`Other end of the bar`,
      say`The end of the known length that is further to the right in the picture.`,
      0,
    ),
  ],
  board: [
    one(
      'board_lower_left',
      say`Lower left corner`,
      say`The corner of the board that is lowest on the left in the picture.`,
      0,
    ),
    one(
      'board_lower_right',
      say`Lower right corner`,
      say`The corner of the board that is lowest on the right in the picture.`,
      0,
    ),
    one(
      'board_upper_right',
      say`Upper right corner`,
      say`The corner of the board that is highest on the right in the picture.`,
      0,
    ),
    one(
      'board_upper_left',
      say`Upper left corner`,
      say`The corner of the board that is highest on the left in the picture.`,
      0,
    ),
  ],
};

/**
 * The view with its landmarks.
 * @example landmarkView('front').title // 'From the front'
 */
export function landmarkView(view: PictureView): LandmarkView {
  return landmarkViews.find((one) => one.view === view) as LandmarkView;
}
