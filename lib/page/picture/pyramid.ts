import type { Sight, Size } from './sight.ts';

/** A picture at its own size, half of it, a quarter and so on, so that a frame costs what the screen shows. */
export interface Pyramid extends Size {
  readonly levels: readonly ImageBitmap[];
}

/** How many px of the device a px of the screen is drawn with: more than two cost frames and show nothing in a photograph. */
export const density = () => Math.min(devicePixelRatio, 2);

/** Below this a smaller level would save nothing, in px. */
const LEAST = 600;

/** Makes the levels of a picture. It takes the bitmap over; `closePyramid` gives all of them up. */
export async function pyramidOf(bitmap: ImageBitmap): Promise<Pyramid> {
  const levels = [bitmap];
  for (let last = bitmap; Math.max(last.width, last.height) > 2 * LEAST; ) {
    last = await createImageBitmap(last, {
      resizeWidth: Math.ceil(last.width / 2),
      resizeHeight: Math.ceil(last.height / 2),
      resizeQuality: 'medium',
    });
    levels.push(last);
  }
  return { levels, width: bitmap.width, height: bitmap.height };
}

export function closePyramid({ levels }: Pyramid): void {
  for (const level of levels) level.close();
}

/**
 * Which level a sight is drawn from: the smallest that still has a px for each of the screen.
 * @param scale  px of the screen to one of the picture
 * @example levelFor(0.3, 4) // 1
 */
export function levelFor(scale: number, count: number): number {
  return Math.min(Math.max(Math.floor(-Math.log2(scale)), 0), count - 1);
}

/** Draws what is seen of a picture. `dense` is the px of the device to one of the screen. */
export function drawSight(
  context: CanvasRenderingContext2D,
  { levels, width, height }: Pyramid,
  { scale, x, y }: Sight,
  room: Size,
  dense: number,
): void {
  context.setTransform(dense, 0, 0, dense, 0, 0);
  context.clearRect(0, 0, room.width, room.height);
  const level = levels[levelFor(scale * dense, levels.length)];
  // Only what is seen is handed over: the rest would cost its time unseen.
  const [left, top] = [Math.max(0, -x / scale), Math.max(0, -y / scale)];
  const right = Math.min(width, (room.width - x) / scale);
  const bottom = Math.min(height, (room.height - y) / scale);
  if (right <= left || bottom <= top) return;
  const [across, down] = [level.width / width, level.height / height];
  context.imageSmoothingEnabled = scale < 4;
  context.drawImage(
    level,
    left * across,
    top * down,
    (right - left) * across,
    (bottom - top) * down,
    left * scale + x,
    top * scale + y,
    (right - left) * scale,
    (bottom - top) * scale,
  );
}
