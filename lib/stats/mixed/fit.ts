import { type Blocks, blocks, withResponse } from './blocks.ts';
import { type Data, type Design, design, type ModelSpec } from './design.ts';
import type { Factored } from './factor.ts';
import { optimise } from './optimise.ts';

/** A fitted model in the engine's own terms: what every later question is put to. */
export interface Fit {
  readonly design: Design;
  readonly blocks: Blocks;
  readonly method: 'REML' | 'ML';
  readonly theta: Float64Array;
  readonly factored: Factored;
  readonly criterion: number;
  /** Of the residuals. */
  readonly variance: number;
  readonly converged: boolean;
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

/** The same model for another response of the same rows, started where the first one ended. */
export function refit(first: Fit, response: Float64Array, method = first.method): Fit {
  return solve({ ...first.design, y: response }, withResponse(first.blocks, response), method, first.theta);
}

function solve(rows: Design, model: Blocks, method: 'REML' | 'ML', start?: Float64Array): Fit {
  const startAt = start?.some((value) => value === 0) ? undefined : start;
  const { theta, factored, criterion, converged } = optimise(model, method, startAt);
  const degrees = method === 'REML' ? model.n - model.p : model.n;
  const variance = factored.residualSquares / degrees;
  return { design: rows, blocks: model, method, theta, factored, criterion, variance, converged };
}
