import { table as arquero, op } from 'arquero';
import { TextColumn } from '../../lib/sheet/column.ts';
import { functions } from '../../lib/sheet/formula/functions.ts';
import { parse } from '../../lib/sheet/formula/parse.ts';
import { resolve } from '../../lib/sheet/formula/resolve.ts';
import type { Summary } from '../../lib/sheet/formula/summaries.ts';
import { values } from '../../lib/sheet/formula/values.ts';
import { Grouped } from '../../lib/sheet/grouped.ts';
import { groupRows } from '../../lib/sheet/groups.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import { byDuckdb, byPolars } from './formulaPeers.ts';
import { against, type BenchRow, interleaved } from './interleaved.ts';

const rows = 1_000_000;

/** Readings spread evenly over a range, every fiftieth or so missing; the same at each run. */
function readings(seed: number, low: number, high: number): Float64Array {
  let state = seed;
  return Float64Array.from({ length: rows }, () => {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
    return state % 50 === 7 ? Number.NaN : low + ((high - low) * state) / 0x7fffffff;
  });
}

const toe = readings(1, 40, 60);
const heel = readings(2, 40, 60);
const pastern = readings(3, 40, 60);
const frogWidth = readings(4, 30, 60);
const frogLength = readings(5, 50, 80);
const width = readings(6, 100, 150);
const length = readings(7, 100, 150);
const medial = readings(8, 60, 90);
const lateral = readings(9, 60, 90);
const toeLength = readings(10, 70, 90);
const heelLength = readings(11, 30, 50);
const horseCodes = Int32Array.from({ length: rows }, (_, row) => Math.floor(row / 4) % 500);
const limbCodes = Int32Array.from({ length: rows }, (_, row) => row % 4);
const horses = Array.from({ length: 500 }, (_, horse) => `horse ${horse}`);
const limbs = ['LF', 'RF', 'LH', 'RH'];

const columns = {
  horse_id: new TextColumn(horseCodes, horses),
  limb: new TextColumn(limbCodes, limbs),
  toe_angle_deg: { unit: 'deg', values: toe },
  heel_angle_deg: { unit: 'deg', values: heel },
  pastern_angle_deg: { unit: 'deg', values: pastern },
  frog_width_mm: { unit: 'mm', values: frogWidth },
  frog_length_mm: { unit: 'mm', values: frogLength },
  foot_width_mm: { unit: 'mm', values: width },
  foot_length_mm: { unit: 'mm', values: length },
  medial_wall_mm: { unit: 'mm', values: medial },
  lateral_wall_mm: { unit: 'mm', values: lateral },
  toe_length_mm: { unit: 'mm', values: toeLength },
  heel_length_mm: { unit: 'mm', values: heelLength },
};

const formulas = [
  'toe_angle_deg - heel_angle_deg',
  'toe_angle_deg - pastern_angle_deg',
  'frog_width_mm / frog_length_mm',
  'foot_width_mm / foot_length_mm',
  'medial_wall_mm - lateral_wall_mm',
  '(medial_wall_mm - lateral_wall_mm) / ((medial_wall_mm + lateral_wall_mm) / 2)',
  'atan((medial_wall_mm - lateral_wall_mm) / foot_width_mm)',
  'toe_angle_deg - heel_angle_deg > 5 ? toe_length_mm / heel_length_mm : foot_width_mm / foot_length_mm',
];

/** A table anew, so that groups found before are not reused. */
function resolved(texts: readonly string[]) {
  const table = plainTable(columns);
  return { table, nodes: texts.map((text) => resolve(parse(text), table).node) };
}

function rowWise(): unknown {
  const { table, nodes } = resolved(formulas);
  return values(nodes, table);
}

/** As one would write it: a function a column, its arrays at hand as arguments. */
function difference(x: Float64Array, y: Float64Array): Float64Array {
  const out = new Float64Array(rows);
  for (let row = 0; row < rows; row++) out[row] = x[row] - y[row];
  return out;
}

function ratio(x: Float64Array, y: Float64Array): Float64Array {
  const out = new Float64Array(rows);
  for (let row = 0; row < rows; row++) out[row] = x[row] / y[row];
  return out;
}

function ofTheirMean(x: Float64Array, y: Float64Array): Float64Array {
  const out = new Float64Array(rows);
  for (let row = 0; row < rows; row++) out[row] = (x[row] - y[row]) / ((x[row] + y[row]) / 2);
  return out;
}

function tilt(x: Float64Array, y: Float64Array, across: Float64Array): Float64Array {
  const out = new Float64Array(rows);
  for (let row = 0; row < rows; row++) out[row] = Math.atan((x[row] - y[row]) / across[row]) * (180 / Math.PI);
  return out;
}

function chosen(
  x: Float64Array,
  y: Float64Array,
  a: Float64Array,
  b: Float64Array,
  c: Float64Array,
  d: Float64Array,
): Float64Array {
  const out = new Float64Array(rows);
  for (let row = 0; row < rows; row++) {
    const under = x[row] - y[row];
    out[row] = Number.isNaN(under) ? Number.NaN : under > 5 ? a[row] / b[row] : c[row] / d[row];
  }
  return out;
}

function rowWiseByHand(): unknown {
  return [
    difference(toe, heel),
    difference(toe, pastern),
    ratio(frogWidth, frogLength),
    ratio(width, length),
    difference(medial, lateral),
    ofTheirMean(medial, lateral),
    tilt(medial, lateral, width),
    chosen(toe, heel, toeLength, heelLength, width, length),
  ];
}

const feet = arquero({
  toe,
  heel,
  pastern,
  frogWidth,
  frogLength,
  width,
  length,
  medial,
  lateral,
  toeLength,
  heelLength,
});

type Row = Record<string, number>;

function rowWiseByArquero(): unknown {
  return feet.derive({
    a: (d: Row) => d.toe - d.heel,
    b: (d: Row) => d.toe - d.pastern,
    c: (d: Row) => d.frogWidth / d.frogLength,
    d: (d: Row) => d.width / d.length,
    e: (d: Row) => d.medial - d.lateral,
    f: (d: Row) => (d.medial - d.lateral) / ((d.medial + d.lateral) / 2),
    g: (d: Row) => op.degrees(op.atan((d.medial - d.lateral) / d.width)),
    h: (d: Row) => (d.toe - d.heel > 5 ? d.toeLength / d.heelLength : d.width / d.length),
  });
}

const groupCount = horses.length * limbs.length;

function groupSums(x: Float64Array): Float64Array {
  const sums = new Float64Array(groupCount);
  const counts = new Int32Array(groupCount);
  for (let row = 0; row < rows; row++) {
    const value = x[row];
    if (Number.isNaN(value)) continue;
    const group = horseCodes[row] * 4 + limbCodes[row];
    sums[group] += value;
    counts[group]++;
  }
  for (let group = 0; group < groupCount; group++) sums[group] /= counts[group];
  return sums;
}

function meansByHand(): unknown {
  return [groupSums(toe), groupSums(width), groupSums(toeLength)];
}

function quantilesByHand(): unknown {
  const shares = [0.25, 0.5, 0.75];
  return [toe, width, toeLength].map((x) => {
    const starts = new Int32Array(groupCount + 1);
    for (let row = 0; row < rows; row++) if (!Number.isNaN(x[row])) starts[horseCodes[row] * 4 + limbCodes[row] + 1]++;
    for (let group = 0; group < groupCount; group++) starts[group + 1] += starts[group];
    const next = starts.slice();
    const sorted = new Float64Array(starts[groupCount]);
    for (let row = 0; row < rows; row++)
      if (!Number.isNaN(x[row])) sorted[next[horseCodes[row] * 4 + limbCodes[row]]++] = x[row];
    const found = new Float64Array(groupCount * 3);
    for (let group = 0; group < groupCount; group++) {
      const own = sorted.subarray(starts[group], starts[group + 1]).sort();
      shares.forEach((share, which) => {
        const at = share * (own.length - 1);
        const low = Math.floor(at);
        found[group * 3 + which] = own[low] + (at - low) * ((own[low + 1] ?? own[low]) - own[low]);
      });
    }
    return found;
  });
}

/** One value a group, with the groups found anew. */
function summaries(names: readonly { name: string; p?: number }[]): unknown {
  const groups = groupRows([columns.horse_id, columns.limb], rows);
  return [toe, width, toeLength].map((x) => {
    const grouped = new Grouped(x, groups);
    return names.map(({ name, p }) => (functions.get(name) as Summary).of(grouped, p ?? Number.NaN));
  });
}

const meansAsColumns = [
  'mean(toe_angle_deg, horse_id, limb)',
  'mean(foot_width_mm, horse_id, limb)',
  'mean(toe_length_mm, horse_id, limb)',
];

function spread(means: Float64Array): Float64Array {
  const out = new Float64Array(rows);
  for (let row = 0; row < rows; row++) out[row] = means[horseCodes[row] * 4 + limbCodes[row]];
  return out;
}

const horseNames = () => Array.from(horseCodes, (code) => horses[code]);
const limbNames = () => Array.from(limbCodes, (code) => limbs[code]);

function keyedFeet() {
  return arquero({ toe, width, toeLength, horse: horseNames(), limb: limbNames() });
}

function summariesByArquero(
  keyed: ReturnType<typeof keyedFeet>,
  of: (column: string) => Record<string, unknown>,
): unknown {
  return keyed
    .groupby('horse', 'limb')
    .rollup({ ...of('toe'), ...of('width'), ...of('toeLength') } as Parameters<typeof keyed.rollup>[0]);
}

export async function bench(): Promise<BenchRow[]> {
  const numeric = { toe, heel, pastern, frogWidth, frogLength, width, length, medial, lateral, toeLength, heelLength };
  const polars = byPolars(numeric, horseNames(), limbNames());
  const duckdb = await byDuckdb(rows);
  const eight = await interleaved({
    ours: rowWise,
    'loops by hand': rowWiseByHand,
    'Arquero derive': rowWiseByArquero,
    Polars: polars.eight,
    DuckDB: duckdb.eight,
  });
  const keyed = keyedFeet();
  const means = await interleaved({
    ours: () => summaries([{ name: 'mean' }]),
    'loops by hand': meansByHand,
    'Arquero rollup': () => summariesByArquero(keyed, (column) => ({ [column]: op.mean(column) })),
    Polars: polars.means,
    DuckDB: duckdb.means,
  });
  const spreads = await interleaved({
    ours: () => {
      const { table, nodes } = resolved(meansAsColumns);
      return values(nodes, table);
    },
    'loops by hand': () => [groupSums(toe), groupSums(width), groupSums(toeLength)].map(spread),
  });
  const quantiles = await interleaved(
    {
      ours: () => summaries([{ name: 'quantile', p: 0.25 }, { name: 'median' }, { name: 'quantile', p: 0.75 }]),
      'loops by hand': quantilesByHand,
      'Arquero rollup': () =>
        summariesByArquero(keyed, (column) => ({
          [`${column}25`]: op.quantile(column, 0.25),
          [`${column}50`]: op.quantile(column, 0.5),
          [`${column}75`]: op.quantile(column, 0.75),
        })),
      Polars: polars.quantiles,
      DuckDB: duckdb.quantiles,
    },
    5,
  );
  return [
    ...against('eight row-wise columns of 1,000,000', eight, {
      'loops by hand': 'at most 1.50',
      'Arquero derive': 'at most 0.25',
      Polars: 'level',
    }),
    ...against('means of three columns in 2,000 groups', means, {
      'loops by hand': 'at most 1.50',
      Polars: 'below 1',
      DuckDB: 'below 1',
    }),
    ...against('the same, spread over 1,000,000 rows', spreads, { 'loops by hand': 'at most 1.50' }),
    ...against('three quantiles of each', quantiles, { 'loops by hand': 'at most 1.50' }),
  ];
}
