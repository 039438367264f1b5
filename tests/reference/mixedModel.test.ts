import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Data } from '../../lib/stats/mixed/design.ts';
import type { FittedModel } from '../../lib/stats/mixed/fittedModel.ts';
import { contrast, kenwardRogerEffects, type MixedModelSpec, mixedModel } from '../../lib/stats/mixed/mixedModel.ts';
import { ModelSums } from '../../lib/stats/mixed/modelSums.ts';
import { type ProfileInterval, profileIntervals } from '../../lib/stats/mixed/profile.ts';
import { conditionalModes, fittedValues } from '../../lib/stats/mixed/solution.ts';

// R 4.2.2 with lme4 1.1-31, lmerTest 3.1-3 and pbkrtest 0.5-2; see tests/reference/stats/README.md for data and licences.
const folder = new URL('./stats/', import.meta.url);
const subject = { by: ['Subject'] };
const herd = {
  response: 'y',
  fixed: ['interval_within', 'interval_mean', 'limb'],
  random: [{ by: ['horse', 'limb'] }, { by: ['horse'] }],
};
const cases: Record<string, { csv: string; text: string[] } & MixedModelSpec> = {
  'sleepstudy-intercept': {
    csv: 'sleepstudy',
    text: ['Subject'],
    response: 'Reaction',
    fixed: ['Days'],
    random: [subject],
  },
  'sleepstudy-slope': {
    csv: 'sleepstudy',
    text: ['Subject'],
    response: 'Reaction',
    fixed: ['Days'],
    random: [{ ...subject, slopes: ['Days'] }],
  },
  'sleepstudy-uncorrelated': {
    csv: 'sleepstudy',
    text: ['Subject'],
    response: 'Reaction',
    fixed: ['Days'],
    random: [{ ...subject, slopes: ['Days'], correlated: false }],
  },
  'sleepstudy-unbalanced': {
    csv: 'sleepstudy-unbalanced',
    text: ['Subject'],
    response: 'Reaction',
    fixed: ['Days'],
    random: [{ ...subject, slopes: ['Days'] }],
  },
  'orthodont-intercept': {
    csv: 'orthodont',
    text: ['Subject', 'Sex'],
    response: 'distance',
    fixed: ['age', 'Sex', 'age:Sex'],
    random: [subject],
  },
  'orthodont-slope': {
    csv: 'orthodont',
    text: ['Subject', 'Sex'],
    response: 'distance',
    fixed: ['age', 'Sex', 'age:Sex'],
    random: [{ ...subject, slopes: ['age'] }],
  },
  'pastes-nested': {
    csv: 'pastes',
    text: ['batch', 'cask'],
    response: 'strength',
    fixed: [],
    random: [{ by: ['batch', 'cask'] }, { by: ['batch'] }],
  },
  'penicillin-crossed': {
    csv: 'penicillin',
    text: ['plate', 'sample'],
    response: 'diameter',
    fixed: [],
    random: [{ by: ['plate'] }, { by: ['sample'] }],
  },
  'herd-small': { csv: 'herd-small', text: ['horse', 'limb'], ...herd },
  'herd-small-boundary': { csv: 'herd-small-boundary', text: ['horse', 'limb'], ...herd },
};

interface ReferenceRow {
  term: string;
  estimate: number;
  se: number;
  df_satterthwaite: number;
  df: number;
  t: number;
  p: number;
  low: number;
  high: number;
}

function columnsOf(name: string, text: string[]): Record<string, Float64Array | string[]> {
  const [head, ...rows] = readFileSync(new URL(`${name}.csv`, folder), 'utf8')
    .trim()
    .split('\n')
    .map((line) => line.split(','));
  return Object.fromEntries(
    head.map((column, i) => {
      const cells = rows.map((row) => row[i]);
      return [column, text.includes(column) ? cells : Float64Array.from(cells, Number)];
    }),
  );
}

function nameInR({ kind, by = '', term }: ProfileInterval): string {
  const group = by.split(':').reverse().join(':');
  if (kind === 'sd') return `sd_${term}|${group}`;
  if (kind === 'correlation') return `cor_${term.split(' with ').reverse().join('.')}|${group}`;
  return kind === 'residual sd' ? 'sigma' : term;
}

function near(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected) + 1e-12);
}

function agreesWithR(
  way: string,
  // biome-ignore lint/suspicious/noExplicitAny: as the JSON files are
  reference: any,
  fitted: (spec: MixedModelSpec) => FittedModel,
  spec: MixedModelSpec,
): void {
  describe(`from ${way}`, () => {
    for (const method of ['REML', 'ML'] as const) {
      const expected = method === 'REML' ? reference.reml : reference.ml;
      const model = fitted({ ...spec, method });

      it(`${method}: criterion, residual deviation and whether it is singular`, () => {
        expect(Math.abs(model.criterion - (method === 'REML' ? expected.criterion : expected.deviance))).toBeLessThan(
          1e-6,
        );
        near(model.residualSd, expected.sigma, 1e-5);
        expect(model.singular).toBe(expected.singular);
        expect(model.n).toBe(reference.n);
        if (method === 'ML') {
          expect(Math.abs(model.aic - expected.aic)).toBeLessThan(1e-6);
          expect(Math.abs(model.bic - expected.bic)).toBeLessThan(1e-6);
        }
      });

      it(`${method}: fixed effects with their standard errors`, () => {
        const rows = expected.fixed as ReferenceRow[];
        expect(model.fixed.map(({ term }) => term)).toEqual(rows.map(({ term }) => term));
        for (const [i, row] of rows.entries()) {
          near(model.fixed[i].estimate, row.estimate, 1e-6);
          near(model.fixed[i].se, row.se, 1e-6);
          near(model.fixed[i].t, row.t, 1e-6);
        }
      });

      it(`${method}: standard deviations and correlations of the random effects`, () => {
        const rows = (
          expected.random as { group: string; term1: string | null; term2: string | null; sd_or_correlation: number }[]
        ).filter(({ group }) => group !== 'Residual');
        const ours = [...model.random.map(({ sd }) => sd), ...model.correlations.map(({ correlation }) => correlation)];
        const theirs = [...rows.filter(({ term2 }) => term2 === null), ...rows.filter(({ term2 }) => term2 !== null)];
        expect(ours).toHaveLength(theirs.length);
        for (const [i, row] of theirs.entries()) {
          expect(Math.abs(ours[i] - row.sd_or_correlation)).toBeLessThanOrEqual(
            1e-5 * Math.abs(row.sd_or_correlation) + 1e-6,
          );
        }
      });
    }

    const model = fitted(spec);
    it('Satterthwaite degrees of freedom, p and intervals', () => {
      for (const [i, row] of (reference.reml.fixed as ReferenceRow[]).entries()) {
        near(model.fixed[i].df, row.df_satterthwaite, 1e-4);
        near(model.fixed[i].p, row.p, 1e-4);
        near(model.fixed[i].lower, row.low, 1e-5);
        near(model.fixed[i].upper, row.high, 1e-5);
      }
    });

    if (reference.reml.kenward_roger) {
      it('Kenward–Roger standard errors and degrees of freedom', () => {
        const ours = kenwardRogerEffects(model);
        for (const [i, row] of (reference.reml.kenward_roger as ReferenceRow[]).entries()) {
          near(ours[i].se, row.se, 1e-6);
          near(ours[i].df, row.df, 1e-4);
          near(ours[i].p, row.p, 1e-4);
        }
      });
    }

    if (reference.reml.contrasts) {
      it('contrasts of fixed effects', () => {
        for (const row of reference.reml.contrasts as (ReferenceRow & { weights: number[] })[]) {
          const ours = contrast(model, row.weights);
          near(ours.estimate, row.estimate, 1e-6);
          near(ours.se, row.se, 1e-6);
          near(ours.df, row.df, 1e-4);
          near(ours.p, row.p, 1e-4);
        }
      });
    }

    it('conditional modes with their deviations', () => {
      const ours = conditionalModes(model.fit);
      for (const [group, rows] of Object.entries(
        reference.reml.conditional_modes_first5 as Record<
          string,
          { levels: string[]; terms: string[]; modes: number[][]; sds: number[][] }
        >,
      )) {
        const by = group.split(':').reverse().join(':');
        const parts = ours.filter((each) => each.by === by);
        for (const [i, level] of rows.levels.entries()) {
          const at = parts[0].levels.indexOf(level.split(':').reverse().join(':'));
          const modes = parts.flatMap((each) => [...each.modes[at]]);
          const sds = parts.flatMap((each) => [...each.sds[at]]);
          for (const [k] of rows.terms.entries()) {
            expect(Math.abs(modes[k] - rows.modes[i][k])).toBeLessThanOrEqual(1e-5 * Math.abs(rows.modes[i][k]) + 1e-6);
            expect(Math.abs(sds[k] - rows.sds[i][k])).toBeLessThanOrEqual(1e-5 * rows.sds[i][k] + 1e-6);
          }
        }
      }
    });
  });
}

for (const [name, { csv, text, ...spec }] of Object.entries(cases)) {
  const reference = JSON.parse(readFileSync(new URL(`${name}.json`, folder), 'utf8'));
  describe(`${reference.call} agrees with lme4, lmerTest and pbkrtest (${name})`, () => {
    const columns = columnsOf(csv, text);
    const ways: Record<string, (spec: MixedModelSpec) => FittedModel> = {
      rows: (asked) => mixedModel(columns, asked),
      // Groups that cross can't be summed.
      ...(name !== 'penicillin-crossed' && { 'sums of parts': (asked) => sumsOfParts(columns, asked).fit() }),
    };
    const model = mixedModel(columns, spec);
    for (const [way, fitted] of Object.entries(ways)) agreesWithR(way, reference, fitted, spec);

    const limits = reference.ml.profile_ci_95_root_found as { term: string; low: number; high: number }[] | undefined;
    if (limits) {
      it('profile intervals by root finding', () => {
        const ours = profileIntervals(model);
        for (const { term, low, high } of limits) {
          const mine = ours.find((each) => term === nameInR(each))!;
          expect(Math.abs(mine.lower - low)).toBeLessThanOrEqual(1e-5 * Math.abs(low) + 1e-8);
          expect(Math.abs(mine.upper - high)).toBeLessThanOrEqual(1e-5 * Math.abs(high) + 1e-8);
        }
      });
    }

    it('fitted values and residuals', () => {
      const { fitted, residuals } = fittedValues(model.fit);
      for (let i = 0; i < 5; i++) {
        near(fitted[i], reference.reml.fitted_first5[i], 1e-6);
        expect(Math.abs(residuals[i] - reference.reml.residuals_first5[i])).toBeLessThan(1e-5);
      }
    });
  });
}

/** Sums of every third row, put together. */
function sumsOfParts(columns: Record<string, Data>, spec: MixedModelSpec): ModelSums {
  const parts = [0, 1, 2].map((turn) => {
    const every = (_: unknown, row: number) => row % 3 === turn;
    const part = Object.entries(columns).map(([name, values]) => [
      name,
      values instanceof Float64Array ? values.filter(every) : values.filter(every),
    ]);
    return new ModelSums(spec).add(Object.fromEntries(part));
  });
  return parts[2].merge(ModelSums.load(parts[1].save())).merge(parts[0]);
}

it('every case of the reference folder that is a mixed model is run here', () => {
  for (const name of Object.keys(cases)) expect(existsSync(new URL(`${name}.json`, folder))).toBe(true);
});
