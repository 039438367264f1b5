/** From where a foot is seen in a picture. */
export type PictureView = 'side' | 'front' | 'rear' | 'below';

/** A point placed on a picture by hand: one row of the `points` table. */
export interface PlacedPoint {
  readonly photo: string;
  readonly view: PictureView;
  /** The code of a landmark, such as `toe_ground`. Where a landmark may be many, each is a row of its own, in order. */
  readonly point: string;
  /** Pixels right and down from the upper left corner of the picture as it is looked at, its orientation tag obeyed. */
  readonly x_px: number;
  readonly y_px: number;
}
