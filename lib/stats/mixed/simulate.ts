import { lambdaOf } from './factor.ts';
import type { MixedModel } from './mixedModel.ts';
import { fittedValues } from './solution.ts';

/** New responses for the rows of a model, drawn from the model itself: fresh group effects and residuals each time. */
export function simulator(model: MixedModel, normal: () => number): () => Float64Array {
  const { design, blocks, theta } = model.fit;
  const { population } = fittedValues(model.fit);
  const factors = design.random.map(({ coefficients }, k) => lambdaOf(blocks, theta, k, coefficients.length));
  return () => {
    const y = population.slice();
    for (let row = 0; row < y.length; row++) y[row] += model.residualSd * normal();
    for (const [k, { codes, levels, coefficients }] of design.random.entries()) {
      const width = coefficients.length;
      const effects = coefficients.map(() => new Float64Array(levels.length));
      const u = new Float64Array(width);
      for (let level = 0; level < levels.length; level++) {
        for (let b = 0; b < width; b++) u[b] = model.residualSd * normal();
        for (let a = 0; a < width; a++) {
          for (let b = 0; b <= a; b++) effects[a][level] += factors[k][a * width + b] * u[b];
        }
      }
      for (const [a, { values }] of coefficients.entries()) {
        const effect = effects[a];
        if (values) for (let row = 0; row < y.length; row++) y[row] += effect[codes[row]] * values[row];
        else for (let row = 0; row < y.length; row++) y[row] += effect[codes[row]];
      }
    }
    return y;
  };
}
