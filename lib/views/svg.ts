/** A drawing as data, so that the browser, a report and a test read the same one. Attributes only, never `style`. */
export interface SvgNode {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (SvgNode | string)[];
}

/** `svg('circle', { r: 3 })`; numbers are rounded to a hundredth when written. */
export function svg(
  tag: string,
  attributes: SvgNode['attributes'] = {},
  ...children: readonly (SvgNode | string)[]
): SvgNode {
  return { tag, attributes, children };
}
