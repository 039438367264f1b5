import {
  type HoofCamera,
  hoofPicture,
  hoofScene,
  type Limb,
  type PictureScale,
  type PictureView,
  parametricHoof,
  say,
  type TrialPicture,
} from '../../lib/index.ts';

export interface Trial {
  readonly title: string;
  readonly limb: Limb;
  readonly view: PictureView;
  readonly camera: HoofCamera;
  readonly foot?: Parameters<typeof parametricHoof>[1];
}

const BOARD = { kind: 'board', width_mm: 120, height_mm: 80 } as const satisfies PictureScale;

export const trials: readonly Trial[] = [
  { title: say`left fore from the side`, limb: 'LF', view: 'side', camera: { turned: 2, raised: 3, rolled: 1 } },
  {
    title: say`the same foot from the side, seven weeks on`,
    limb: 'LF',
    view: 'side',
    camera: { turned: -3, raised: 2, rolled: -2, field_mm: 460 },
    foot: { toe_length_mm: 92, toe_angle_deg: 49.5, heel_length_mm: 41, heel_angle_deg: 43 },
  },
  {
    title: say`left fore from the side, from too far behind`,
    limb: 'LF',
    view: 'side',
    camera: { turned: 24, raised: 4 },
  },
  { title: say`left fore from the front`, limb: 'LF', view: 'front', camera: { turned: 2, raised: 2 } },
  { title: say`right hind from behind`, limb: 'RH', view: 'rear', camera: { turned: -2, raised: 3 } },
  { title: say`left fore from below`, limb: 'LF', view: 'below', camera: { turned: 1, raised: -2, rolled: 3 } },
];

/** The picture as it is drawn, with where its points lie and what the foot measures. */
export function trialScene({ limb, view, camera, foot }: Trial) {
  const hoof = parametricHoof(limb, foot);
  return { ...hoofScene(hoof, view, camera, BOARD), truth: hoof.truth };
}

/** Drawn feet to try the page on; none of them exists. */
export const trialPictures: readonly TrialPicture[] = trials.map((trial) => ({
  title: trial.title,
  subject: { horse: say`Drawn foot`, limb: trial.limb, view: trial.view },
  size: { kind: 'board', width: BOARD.width_mm, height: BOARD.height_mm },
  draw: () => asJpeg(hoofPicture(trialScene(trial))),
}));

/** An SVG drawing as the photograph it stands for. */
async function asJpeg(drawing: string): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([drawing], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = new OffscreenCanvas(image.naturalWidth, image.naturalHeight);
    canvas.getContext('2d')!.drawImage(image, 0, 0);
    return await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.92 });
  } finally {
    URL.revokeObjectURL(address);
  }
}
