import { say } from '../../words/say.ts';
import type { ErrorParts, Squareness } from './pictureMeasures.ts';
import type { PictureView } from './placedPoint.ts';
import { remedyOf } from './squareness.ts';

/** What to do about an error that is too large: about its largest part. */
export function remedyFor(parts: ErrorParts, square: Squareness | undefined, view: PictureView): string {
  const largest = (Object.keys(parts) as (keyof ErrorParts)[]).reduce((a, b) => (parts[b] > parts[a] ? b : a));
  switch (largest) {
    case 'placing':
      return view === 'below'
        ? say`Let the foot fill the picture, clean the sole, and place the points again under the magnifier`
        : say`Let the foot fill the picture, brush or clip the hair off the hairline, and place the points again under the magnifier`;
    case 'scale':
      return say`Use a larger board or a longer bar, flat in the plane of the foot, and place its points under the magnifier`;
    case 'squareness':
      return say`Put a board with four corners in the plane of the foot instead, or hold the camera square at the height of the foot`;
    case 'depth':
      if (square !== undefined && square.off_deg > 3) return remedyOf(square, view);
      return view === 'below'
        ? say`Lay the board on the sole, and take the picture from further off`
        : say`Place points on the ground in the plane of the board, have the foot square under the horse, and take the picture from further off`;
  }
}
