import { type DuckDBConnection, DuckDBInstance } from '@duckdb/node-api';
import polars from 'nodejs-polars';
import type { Work } from './interleaved.ts';

/** The work of one peer, each on its own copy of the feet within its own engine. */
export interface Peer {
  readonly eight: Work;
  readonly means: Work;
  readonly quantiles: Work;
}

const summarised = ['toe', 'width', 'toeLength'] as const;
const shares = [0.25, 0.5, 0.75];

/** Polars on all the threads there are; horses and limbs as categories. */
export function byPolars(
  columns: Readonly<Record<string, Float64Array>>,
  horse: readonly string[],
  limb: readonly string[],
): Peer {
  const { col, when, lit, Categorical } = polars;
  const feet = polars
    .DataFrame({ ...columns, horse, limb })
    .withColumns(col('horse').cast(Categorical), col('limb').cast(Categorical));
  const less = (a: string, b: string) => col(a).sub(col(b));
  const ratio = (a: string, b: string) => col(a).div(col(b));
  const groups = feet.groupBy('horse', 'limb');
  return {
    eight: () =>
      feet.select(
        less('toe', 'heel').alias('a'),
        less('toe', 'pastern').alias('b'),
        ratio('frogWidth', 'frogLength').alias('c'),
        ratio('width', 'length').alias('d'),
        less('medial', 'lateral').alias('e'),
        less('medial', 'lateral')
          .div(col('medial').add(col('lateral')).div(lit(2)))
          .alias('f'),
        less('medial', 'lateral')
          .div(col('width'))
          .arctan()
          .mul(lit(180 / Math.PI))
          .alias('g'),
        when(less('toe', 'heel').gt(lit(5)))
          .then(ratio('toeLength', 'heelLength'))
          .otherwise(ratio('width', 'length'))
          .alias('h'),
      ),
    means: () => groups.agg(...summarised.map((name) => col(name).mean())),
    quantiles: () =>
      groups.agg(
        ...summarised.flatMap((name) => shares.map((share) => col(name).quantile(share).alias(`${name}${share}`))),
      ),
  };
}

/** DuckDB on all the threads there are, over random readings of its own: as many, as wide, as often missing. */
export async function byDuckdb(rows: number): Promise<Peer> {
  const duckdb: DuckDBConnection = await (await DuckDBInstance.create(':memory:')).connect();
  const names = ['toe', 'heel', 'pastern', 'frogWidth', 'frogLength', 'width', 'length', 'medial', '"lateral"'];
  const readings = [...names, 'toeLength', 'heelLength']
    .map((name) => `CASE WHEN random() > 0.02 THEN 40 + 20 * random() END AS ${name}`)
    .join(', ');
  await duckdb.run(
    `CREATE TABLE feet AS SELECT 'horse ' || (i // 4) % 500 AS horse, ['LF', 'RF', 'LH', 'RH'][i % 4 + 1] AS limb,
     ${readings} FROM range(${rows}) AS t(i)`,
  );
  const table = (select: string) => () => duckdb.run(`CREATE OR REPLACE TEMP TABLE found AS SELECT ${select}`);
  const grouped = (columns: readonly string[]) => table(`${columns.join(', ')} FROM feet GROUP BY horse, limb`);
  return {
    eight: table(
      `toe - heel AS a, toe - pastern AS b, frogWidth / NULLIF(frogLength, 0) AS c, width / NULLIF(length, 0) AS d,
       medial - "lateral" AS e, (medial - "lateral") / NULLIF((medial + "lateral") / 2, 0) AS f,
       degrees(atan((medial - "lateral") / NULLIF(width, 0))) AS g,
       CASE WHEN toe - heel > 5 THEN toeLength / heelLength WHEN toe - heel <= 5 THEN width / length END AS h FROM feet`,
    ),
    means: grouped(summarised.map((name) => `avg(${name}) AS ${name}`)),
    quantiles: grouped(
      summarised.flatMap((name) => shares.map((share) => `quantile_cont(${name}, ${share}) AS ${name}${share * 100}`)),
    ),
  };
}
