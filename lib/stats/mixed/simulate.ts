import { lambdaOf } from './factor.ts';
import type { MixedModel } from './mixedModel.ts';
import { fittedValues } from './solution.ts';

/** New responses for the rows of a model, drawn from the model itself: fresh group effects and residuals each time. */
export function simulator(model: MixedModel, normal: () => number): () => Float64Array {
  const { design, blocks, theta } = model.fit;
  const { population } = fittedValues(model.fit);
  const factors = design.random.map(({ coefficients }, k) => lambdaOf(blocks, theta, k, coefficients.length));
  return () => {
    const y = population.map((value) => value + model.residualSd * normal());
    for (const [k, { codes, levels, coefficients }] of design.random.entries()) {
      const width = coefficients.length;
      const effects = new Float64Array(levels.length * width);
      for (let level = 0; level < levels.length; level++) {
        const u = coefficients.map(() => model.residualSd * normal());
        for (let a = 0; a < width; a++) {
          for (let b = 0; b <= a; b++) effects[level * width + a] += factors[k][a * width + b] * u[b];
        }
      }
      for (let row = 0; row < y.length; row++) {
        for (let a = 0; a < width; a++) {
          y[row] += effects[codes[row] * width + a] * (coefficients[a].values?.[row] ?? 1);
        }
      }
    }
    return y;
  };
}
