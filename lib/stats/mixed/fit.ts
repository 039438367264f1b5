import { type Blocks, blocks, withResponse } from './blocks.ts';
import { type Data, type Design, design, type ModelSpec } from './design.ts';
import { type Optimum, optimise } from './optimise.ts';

/** A fitted model in the engine's own terms: what every later question is put to. */
export interface Fit extends Optimum {
  readonly design: Design;
  readonly blocks: Blocks;
  readonly method: 'REML' | 'ML';
  /** Of the residuals. */
  readonly variance: number;
}

/** Rows to matrices, matrices to blocks, blocks to the best theta: each step can be called by itself. */
export function fitRows(data: Readonly<Record<string, Data>>, spec: ModelSpec, method: 'REML' | 'ML'): Fit {
  const rows = design(data, spec);
  const columns = rows.terms.length;
  if (rows.n <= columns) {
    throw new TypeError(
      `The model has ${columns} fixed terms and only ${rows.n} complete rows; it needs more rows than terms`,
    );
  }
  return solve(rows, blocks(rows), method);
}

/** The same model for another response of the same rows. */
export function refit(first: Fit, response: Float64Array, method = first.method): Fit {
  return solve({ ...first.design, y: response }, withResponse(first.blocks, response), method, first.moments);
}

function solve(rows: Design, model: Blocks, method: 'REML' | 'ML', moments?: Float64Array): Fit {
  const best = optimise(model, method, moments);
  const degrees = method === 'REML' ? model.n - model.p : model.n;
  return { ...best, design: rows, blocks: model, method, variance: best.factored.residualSquares / degrees };
}
