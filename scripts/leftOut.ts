const refusing = (words: string) => `() => { throw new TypeError(${JSON.stringify(words)}); }`;
const policy = "Give the page the policy 'generated' to use";

const projections = [
  ...['geoAlbers', 'geoAlbersUsa', 'geoAzimuthalEqualArea', 'geoAzimuthalEquidistant', 'geoClipRectangle'],
  ...['geoConicConformal', 'geoConicEqualArea', 'geoConicEquidistant', 'geoEqualEarth', 'geoEquirectangular'],
  ...['geoGnomonic', 'geoMercator', 'geoOrthographic', 'geoPath', 'geoStereographic', 'geoStream'],
  ...['geoTransverseMercator', 'geoGraticule10', 'geoCentroid'],
];

/** A package that strict pages would fetch and could never use, as one kind of file imports it, and what stands there instead. */
interface LeftOut {
  readonly name: string;
  readonly importer: RegExp;
  readonly instead: string;
}

export const leftOut: readonly LeftOut[] = [
  {
    // Its verbs are generated code, which the policy stops.
    name: 'arquero',
    importer: /\/lib\/sheet\/arquero\.ts$/,
    instead: `const refuse = ${refusing(`Arquero is not part of this page. ${policy} its verbs`)};
export const ColumnTable = class { constructor() { refuse(); } };`,
  },
  {
    // Plot brings every map projection, and a foot needs no map. Vega keeps its own, in what is fetched later.
    name: 'd3-geo',
    importer: /\/node_modules\/d3\//,
    instead: `const refuse = ${refusing(`Maps are not part of this page. ${policy} them`)};
export { ${projections.map((name) => `refuse as ${name}`).join(', ')} };
export const geoTransform = () => ({});`,
  },
];
