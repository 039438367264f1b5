import { type Blocks, blocks, type RowBlocks, withResponse } from './blocks.ts';
import { type Data, type Design, design, type ModelSpec, type Shape } from './design.ts';
import { type Optimum, optimise } from './optimise.ts';

/** A fitted model in the engine's own terms: what every later question is put to. */
export interface Fit extends Optimum {
  readonly design: Shape;
  readonly blocks: Blocks;
  readonly method: 'REML' | 'ML';
  /** Of the residuals. */
  readonly variance: number;
}

/** A fit to rows, which are still there. */
export interface RowFit extends Fit {
  readonly design: Design;
  readonly blocks: RowBlocks;
}

/** Rows to matrices, matrices to blocks, blocks to the best theta: each step can be called by itself. */
export function fitRows(data: Readonly<Record<string, Data>>, spec: ModelSpec, method: 'REML' | 'ML'): RowFit {
  const rows = design(data, spec);
  checkRows(rows);
  return solve(rows, blocks(rows), method);
}

/** @throws TypeError where there are more terms than rows tell apart */
export function checkRows({ n, terms: { length: columns } }: Shape): void {
  if (n <= columns) {
    throw new TypeError(
      `The model has ${columns} fixed terms and only ${n} complete rows; it needs more rows than terms`,
    );
  }
}

/** The same model for another response of the same rows. */
export function refit(first: RowFit, response: Float64Array, method = first.method): RowFit {
  return solve({ ...first.design, y: response }, withResponse(first.blocks, response), method, first.moments);
}

/** The best theta of some blocks, however they were filled. */
export function solve<S extends Shape, B extends Blocks>(
  shape: S,
  model: B,
  method: 'REML' | 'ML',
  moments?: Float64Array,
): Fit & { readonly design: S; readonly blocks: B } {
  const best = optimise(model, method, moments);
  const degrees = method === 'REML' ? model.n - model.p : model.n;
  return { ...best, design: shape, blocks: model, method, variance: best.factored.residualSquares / degrees };
}
