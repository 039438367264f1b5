import type { DuckDBConnection } from '@duckdb/node-api';

/** Feet of one horse: four limbs before and after the work at ten visits. */
const feetOfAHorse = 80;

/**
 * Writes an invented table of feet to Parquet, horse after horse, with one reading in fifty missing in every column.
 * No horse in it is real. The same seed makes the same table with the same release of DuckDB.
 * @param rows  a multiple of 80 makes whole horses
 */
export async function writeLargeFeet(duckdb: DuckDBConnection, path: string, rows: number, seed = 2026): Promise<void> {
  let nth = 0;
  // The sum of three even draws lies about like an error of measuring.
  const draw = (of: string) => `((hash(${of}, ${seed}, ${nth++}) % 1000003) / 1000003.0)`;
  const normal = (of: string) => `(2 * (${draw(of)} + ${draw(of)} + ${draw(of)} - 1.5))`;
  const read = (value: string, sd: number) =>
    `CASE WHEN ${draw('foot')} >= 0.02 THEN ROUND(2 * (${value} + ${sd} * ${normal('foot')})) / 2 END`;
  await duckdb.run(`COPY (
    WITH numbered AS (SELECT range AS foot, range // ${feetOfAHorse} AS horse, range // 8 AS visit FROM range(${rows})),
    grown AS (SELECT *, (foot // 4) % 2 = 0 AS grown, foot % 4 < 2 AS fore FROM numbered),
    own AS (SELECT *, CASE WHEN fore THEN 50 ELSE 52 END + 1.6 * ${normal('horse')} - CASE WHEN grown THEN 1 ELSE 0 END AS toe_angle,
      83 + 6 * ${normal('horse')} + CASE WHEN grown THEN 9 ELSE 0 END AS toe, 128 + 8 * ${normal('horse')} AS width FROM grown)
    SELECT 'H' || LPAD(CAST(horse AS VARCHAR), 7, '0') AS horse_id,
      DATE '2024-01-01' + CAST(horse % 28 + 45 * (visit % 10) AS INTEGER) AS date,
      ['LF', 'RF', 'LH', 'RH'][1 + foot % 4] AS limb, CASE WHEN grown THEN 'before' ELSE 'after' END AS moment, 1::DOUBLE AS repeat,
      ${read('toe_angle', 0.9)} AS toe_angle_deg, ${read('toe_angle - 2.5', 0.9)} AS heel_angle_deg,
      ${read('toe_angle + 0.5', 0.9)} AS pastern_angle_deg, ${read('toe', 1)} AS toe_length_mm,
      ${read('toe * 0.46', 1)} AS heel_length_mm, ${read('toe * 0.65', 1)} AS medial_wall_mm,
      ${read('toe * 0.65', 1)} AS lateral_wall_mm, ${read('toe * 0.35', 1)} AS medial_heel_mm,
      ${read('toe * 0.35', 1)} AS lateral_heel_mm, ${read('width', 0.7)} AS foot_width_mm,
      ${read('width / 0.95', 0.7)} AS foot_length_mm, ${read('width * 0.43', 0.7)} AS frog_width_mm,
      ${read('width * 0.65', 0.7)} AS frog_length_mm, ${read('width * 0.6', 0.7)} AS heel_width_mm,
      horse % 3 <> 2 AS shod, ['M. Alder', 'J. Birch'][1 + horse % 2] AS farrier,
      CASE WHEN horse % 3 <> 2 THEN 'shoe' ELSE 'trim' END AS work,
      ['pony', 'riding', 'heavy', 'gaited'][1 + horse % 4] AS build,
      ROUND([290, 510, 720, 450][1 + horse % 4] * (1 + 0.08 * ${normal('horse')})) AS weight_kg
    FROM own ORDER BY foot) TO '${path}' (FORMAT parquet)`);
}
