export { mad } from './mad.ts';
export { mean } from './mean.ts';
export { median } from './median.ts';
export { isMissing, type Numbers, present, presentRows } from './numbers.ts';
export { type QuantileType, quantile, quantileSorted } from './quantile.ts';
export { sd, variance } from './sd.ts';
export { sum } from './sum.ts';
