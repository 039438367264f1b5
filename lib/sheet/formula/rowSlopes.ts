import { TextColumn } from '../column.ts';
import type { Table } from '../table.ts';
import { type Carrier, carrier } from './carriers.ts';
import { children } from './children.ts';
import { functions } from './functions.ts';
import type { Numbering } from './numbering.ts';
import { fillSlope } from './operators.ts';
import type { Node } from './syntax.ts';
import { values } from './values.ts';

/** What a formula gives in each row, and how fast that changes with each column, other row or summary it looks at. */
export interface RowSlopes {
  readonly values: Float64Array;
  /** Measured columns, relations and summaries; each once. */
  readonly inputs: readonly { readonly carrier: Carrier & { kind: Input }; readonly slopes: Float64Array }[];
}

type Input = 'root' | 'relation' | 'summary';

const BLOCK = 4096;

/**
 * The derivatives of a formula by its inputs, row by row, worked out from the result back to the inputs.
 * @param node of a resolved tree over measured columns, giving numbers
 * @returns slopes in units of the result per unit of the input; 0 where the input doesn't count in that row, as in
 *   the branch of a choice that is not taken
 */
export function rowSlopes(node: Node, table: Table, numbering: Numbering): RowSlopes {
  const plan = planOf(node, table, numbering);
  const result = new Float64Array(table.rows);
  const slopes = plan.inputs.map(() => new Float64Array(table.rows));
  // Other rows are out of sight in a block, so the values of formulas that look at them are taken whole.
  const whole = seesOtherRows(node) ? plan.values(table) : undefined;
  for (let start = 0; start < table.rows; start += BLOCK) {
    const end = Math.min(start + BLOCK, table.rows);
    const inBlock = (all: Float64Array) => all.subarray(start, end);
    const known = whole?.map(inBlock) ?? plan.values(slice(table, start, end));
    fill(plan, known, inBlock(result), slopes.map(inBlock));
  }
  return {
    values: result,
    inputs: plan.inputs.map(({ carrier }, i) => ({ carrier: carrier as Carrier & { kind: Input }, slopes: slopes[i] })),
  };
}

interface Step {
  readonly node: Node;
  readonly carrier: Carrier;
  /** Where the parts that carry error stand among the steps. */
  readonly parts: readonly number[];
}

interface Plan {
  /** Parts before the whole; the whole is last. */
  readonly steps: readonly Step[];
  readonly inputs: readonly Step[];
  /** The values of the steps, then of the tests of choices in their order. */
  readonly values: (table: Table) => readonly Float64Array[];
}

function planOf(node: Node, table: Table, numbering: Numbering): Plan {
  const steps: Step[] = [];
  const places = new Map<number, number>();

  function place(part: Node): number {
    const number = numbering.of(part);
    const before = places.get(number);
    if (before !== undefined) return before;
    const by = carrier(part, table);
    const parts = by.kind === 'operation' ? by.args.map(place) : by.kind === 'choice' ? by.branches.map(place) : [];
    const at = steps.push({ node: part, carrier: by, parts }) - 1;
    places.set(number, at);
    return at;
  }

  place(node);
  const inputs = steps.filter(({ carrier: { kind } }) => kind === 'root' || kind === 'relation' || kind === 'summary');
  const tests = steps.flatMap(({ carrier }) => (carrier.kind === 'choice' ? [carrier.test] : []));
  const nodes = [...steps.map(({ node }) => node), ...tests];
  return { steps, inputs, values: (rows) => values(nodes, rows) as Float64Array[] };
}

function fill(
  { steps, inputs }: Plan,
  known: readonly Float64Array[],
  result: Float64Array,
  slopes: readonly Float64Array[],
): void {
  const own = steps.map((step) => {
    const input = inputs.indexOf(step);
    return input < 0 ? new Float64Array(result.length) : slopes[input];
  });
  const slope = new Float64Array(result.length);
  let nextTest = known.length;
  result.set(known[steps.length - 1]);
  own[steps.length - 1].fill(1);
  for (let at = steps.length - 1; at >= 0; at--) {
    const { carrier, parts } = steps[at];
    if (carrier.kind === 'operation') {
      const args = parts.map((part) => known[part]);
      parts.forEach((part, argument) => {
        if (steps[part].carrier.kind === 'exact') return;
        fillSlope(carrier.operation, argument, args, known[at], slope);
        addProduct(own[part], own[at], slope);
      });
    } else if (carrier.kind === 'choice') {
      const test = known[--nextTest];
      addProduct(own[parts[0]], own[at], test);
      for (let row = 0; row < slope.length; row++) slope[row] = 1 - test[row];
      addProduct(own[parts[1]], own[at], slope);
    }
  }
}

/** What doesn't count stays out, even where the slope is missing. */
function addProduct(sum: Float64Array, outer: Float64Array, inner: Float64Array): void {
  for (let row = 0; row < sum.length; row++) if (outer[row] !== 0) sum[row] += outer[row] * inner[row];
}

/** Whether a formula's value in a row may come from other rows too. */
export function seesOtherRows(node: Node, seen = new Set<Node>()): boolean {
  if (seen.has(node)) return false;
  seen.add(node);
  if (node.kind === 'call' && functions.get(node.name)?.sort !== 'plain') return true;
  return children(node).some((child) => seesOtherRows(child, seen));
}

/** Some rows of a table, for formulas that look at one row at a time. */
function slice(table: Table, start: number, end: number): Table {
  const unseen = () => {
    throw new TypeError('Some rows of a table have no partners and no groups: take the whole table');
  };
  return {
    rows: end - start,
    names: table.names,
    relations: [],
    partners: unseen,
    groups: unseen,
    column: (name) => {
      const column = table.column(name);
      return column instanceof TextColumn
        ? new TextColumn(column.codes.subarray(start, end), column.levels)
        : { ...column, values: column.values.subarray(start, end) };
    },
  };
}
