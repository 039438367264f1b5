/** A place on a foot, or on what is photographed beside it, that is found again on every picture of one view. */
export interface Landmark {
  /** As it stands in the `point` column. */
  readonly code: string;
  readonly title: string;
  /** One sentence: where it lies. */
  readonly where: string;
  /** Left out: nothing is missed but the measures that rest on it. */
  readonly optional: boolean;
  /** Where more than one may be placed, in order: how many are the least that are of use. 1 where there is just one. */
  readonly least: number;
  readonly many: boolean;
  /** Which side of the foot it lies on, where it has a side. */
  readonly side?: 'medial' | 'lateral';
  /** Front feet only. */
  readonly frontOnly?: boolean;
  /**
   * How far it commonly lies before or behind the plane in which the scale stands, in mm, one standard deviation. An
   * assumption, no source.
   */
  readonly depth_mm: number;
  /** A key of the bibliography, or the words `common practice, no source`. */
  readonly source: string;
}
