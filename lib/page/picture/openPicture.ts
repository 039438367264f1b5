import { say } from '../../words/say.ts';
/**
 * A picture out of a file, turned as its orientation tag says.
 * @param name  of the file, for the words of a failure
 * @throws Error in words for the reader where the browser can't show the file
 */
export async function openPicture(file: Blob, name: string): Promise<ImageBitmap> {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    throw new Error(
      say`${name} can’t be shown by this browser. A photograph as JPEG, PNG or WebP was expected; save it as one of them and choose it again`,
    );
  }
}

/** How much of a photograph's fineness is kept, of 1. */
const QUALITY = 0.92;

/**
 * The picture as a file of its own: what is seen and nothing else. Place, camera, owner and time, which a photograph's
 * file carries beside it, are not in it.
 * @returns a JPEG, upright
 */
export async function bareJpeg(bitmap: ImageBitmap): Promise<Blob> {
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext('2d');
  if (!context) throw new Error(say`The picture is too large for this browser. Take it with a lower resolution`);
  context.drawImage(bitmap, 0, 0);
  return canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
}

/**
 * A name unlike those that are taken: phones call every photograph the same.
 * @example ownName('image.jpg', ['image']) // 'image 2'
 */
export function ownName(file: string, taken: readonly string[]): string {
  const stem = file.replace(/\.\w{2,5}$/, '').trim() || 'picture';
  for (let count = 1; ; count++) {
    const name = count === 1 ? stem : `${stem} ${count}`;
    if (!taken.includes(name)) return name;
  }
}
