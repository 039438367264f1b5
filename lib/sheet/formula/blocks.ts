import type { TextColumn } from '../column.ts';
import { kept } from '../kept.ts';
import { relationNamed } from '../relationNamed.ts';
import type { Table } from '../table.ts';
import { functions } from './functions.ts';
import { choose, copy, divide, eachOf, type Kernel, lookUp, score, subtract } from './kernels.ts';
import { type Operation, operators } from './operators.ts';
import type { Node } from './syntax.ts';
import { isText, sameText, type Whole } from './texts.ts';

/** Values that stay in the processor's first cache while several operations work on them. */
const block = 1024;

/** What a step reads or writes: an array, from the current row on where it moves, else from `base` on. */
interface Operand {
  readonly id: number;
  array: Float64Array;
  moves: boolean;
  base: number;
  /** The one value of all rows, where there is one. */
  readonly constant?: number;
  /** Whether a step makes it, block after block. */
  readonly made: boolean;
}

interface Step {
  kernel: Kernel;
  readonly x: Operand;
  y: Operand;
  out: Operand;
}

/** One value a group, and the group of each row. */
export interface GroupValues {
  readonly codes: Int32Array;
  readonly values: Float64Array;
}

/** What the steps take as whole columns. */
export interface Inner {
  readonly whole: Whole;
  readonly summary: (node: Node & { kind: 'call' }) => GroupValues;
}

/**
 * Numbers of several formulas together, block after block of rows. Each sub-expression is a step that is done once,
 * whichever formulas it stands in; a formula's last step writes into its column.
 */
export class Blocks {
  readonly #table: Table;
  readonly #inner: Inner;
  /** Rows rounded up to what kernels take at a time; only a table shorter than a block needs that. */
  readonly #size: number;
  readonly #length: number;
  readonly #known = new Map<string, Operand>();
  readonly #seen = new Map<Node, Operand>();
  readonly #row: Operand;
  #steps: Step[] = [];
  #ids = 0;

  constructor(table: Table, inner: Inner) {
    this.#table = table;
    this.#inner = inner;
    this.#size = table.rows < block ? Math.ceil(table.rows / 4) * 4 : table.rows;
    this.#length = Math.min(block, this.#size);
    this.#row = this.#operand(new Float64Array(0), true);
  }

  /**
   * A column for each node, all of them numbers.
   * @param into  for each node an array to write into, where it has the length that the blocks need
   */
  columns(nodes: readonly Node[], into: readonly (Float64Array | undefined)[] = []): Float64Array[] {
    const { rows } = this.#table;
    const roots = nodes.map((node) => this.#number(node));
    const made = new Set(roots.filter((root) => root.made));
    for (const root of made) {
      const old = into[roots.indexOf(root)];
      root.array = old?.length === this.#size ? old : new Float64Array(this.#size);
      root.moves = true;
    }
    this.#writeArmsDirectly(made);
    this.#joinScores(made);
    this.#giveRegisters(made);
    run(this.#steps, this.#size, this.#length);
    const taken = new Set<Operand>();
    return roots.map((root) => {
      if (root.constant !== undefined) return new Float64Array(rows).fill(root.constant);
      const own = root.made && !taken.has(root) && root.array.length === rows;
      taken.add(root);
      return own ? root.array : root.array.slice(0, rows);
    });
  }

  #operand(array: Float64Array, moves: boolean, made = false, constant?: number): Operand {
    return { id: this.#ids++, array, moves, base: 0, made, constant };
  }

  #once(key: string, make: () => Operand): Operand {
    return kept(this.#known, key, make);
  }

  #constant(value: number): Operand {
    return this.#once(`number ${value}`, () =>
      this.#operand(new Float64Array(this.#length).fill(value), false, false, value),
    );
  }

  /** A whole column; one that is shorter than kernels need is copied. */
  #column(values: Float64Array): Operand {
    return this.#operand(padded(values, this.#size), true);
  }

  #step(kernel: Kernel, x: Operand, y: Operand, out = this.#operand(new Float64Array(0), false, true)): Operand {
    this.#steps.push({ kernel, x, y, out });
    return out;
  }

  #operation(name: string, { of, kernel }: Operation, x: Operand, y: Operand): Operand {
    if (x.constant !== undefined && y.constant !== undefined) return this.#constant(of(x.constant, y.constant));
    return this.#once(`${name} ${x.id} ${y.id}`, () => this.#step(kernel ?? eachOf(of), x, y));
  }

  #number(node: Node): Operand {
    // Formulas that were put into each other share whole branches: each is looked at once.
    return kept(this.#seen, node, () => this.#numberOf(node));
  }

  #numberOf(node: Node): Operand {
    switch (node.kind) {
      case 'number':
        return this.#constant(node.value);
      case 'column':
        return this.#once(`column ${node.name}`, () => this.#column(this.#inner.whole(node) as Float64Array));
      case 'unary': {
        const from = this.#constant(node.operator === '-' ? 0 : 1);
        return this.#operation('-', operators['-'], from, this.#number(node.operand));
      }
      case 'binary':
        return isText(node.left, this.#table) ? this.#textComparison(node) : this.#binary(node);
      case 'conditional':
        return this.#conditional(node);
      case 'call':
        return this.#call(node);
      case 'text':
        throw new TypeError('A text is no number');
    }
  }

  #binary(node: Node & { kind: 'binary' }): Operand {
    const left = this.#number(node.left);
    const right = this.#number(node.right);
    // Squares are common, and a product is far faster than a power.
    if (node.operator === '**' && right.constant === 2) return this.#operation('*', operators['*'], left, left);
    return this.#operation(node.operator, operators[node.operator], left, right);
  }

  #textComparison(node: Node & { kind: 'binary' }): Operand {
    const [left, right] = node.left.kind === 'text' ? [node.right, node.left] : [node.left, node.right];
    if (right.kind === 'text' && right.value === '') return this.#constant(Number.NaN);
    const column = this.#inner.whole(left) as TextColumn;
    const same =
      right.kind === 'text'
        ? this.#lookUp(
            column.codes,
            Float64Array.from(column.levels, (level) => (level === right.value ? 1 : 0)),
          )
        : this.#column(sameText(column, this.#inner.whole(right) as TextColumn));
    return node.operator === '==' ? same : this.#operation('-', operators['-'], this.#constant(1), same);
  }

  #lookUp(codes: Int32Array, table: Float64Array): Operand {
    return this.#step(lookUp(padded(codes, this.#size)), this.#row, this.#operand(table, false));
  }

  #conditional(node: Node & { kind: 'conditional' }): Operand {
    const test = this.#number(node.test);
    const then = this.#number(node.then);
    const otherwise = this.#number(node.otherwise);
    if (test.constant !== undefined)
      return test.constant === 1 ? then : test.constant === 0 ? otherwise : this.#constant(Number.NaN);
    return this.#once(`? ${test.id} ${then.id} ${otherwise.id}`, () => {
      const arms = this.#operand(new Float64Array(2 * this.#length), false);
      this.#step(copy, otherwise, otherwise, arms);
      this.#step(copy, then, then, { ...arms, base: this.#length });
      return this.#step(choose, test, arms);
    });
  }

  #call(node: Node & { kind: 'call' }): Operand {
    const row = functions.get(node.name);
    if (row?.sort === 'plain') {
      if (isText(node.args[0], this.#table)) {
        const { codes } = this.#inner.whole(node.args[0]) as TextColumn;
        return this.#column(Float64Array.from(codes, (code) => (code < 0 ? 1 : 0)));
      }
      const x = this.#number(node.args[0]);
      return this.#operation(row.name, row, x, node.args.length > 1 ? this.#number(node.args[1]) : x);
    }
    if (row?.sort === 'summary') {
      const { codes, values } = this.#inner.summary(node);
      return values.length === 1 ? this.#constant(values[0]) : this.#lookUp(codes, values);
    }
    const relation = relationNamed(node.name, this.#table.relations);
    return this.#lookUp(this.#table.partners(relation), this.#inner.whole(node.args[0]) as Float64Array);
  }

  /** An arm that nothing else reads is made where the choice looks for it, without a copy. */
  #writeArmsDirectly(roots: ReadonlySet<Operand>): void {
    const makers = this.#soleMakers(roots);
    this.#steps = this.#steps.filter((step) => {
      const maker = step.kernel === copy ? makers.get(step.x) : undefined;
      if (!maker) return true;
      maker.out = step.out;
      return false;
    });
  }

  /** A difference from one number that is only divided by another takes one pass with the quotient. */
  #joinScores(roots: ReadonlySet<Operand>): void {
    const makers = this.#soleMakers(roots);
    this.#steps = this.#steps.filter((step) => {
      const maker = step.kernel === divide ? makers.get(step.x) : undefined;
      const [centre, scale] = [maker?.y.constant, step.y.constant];
      if (maker?.kernel !== subtract || centre === undefined || scale === undefined) return true;
      const y = this.#operand(Float64Array.of(centre, scale), false);
      maker.kernel = score;
      maker.y = y;
      maker.out = step.out;
      return false;
    });
  }

  /** The steps that make what one other step reads and nobody else. */
  #soleMakers(roots: ReadonlySet<Operand>): Map<Operand, Step> {
    const uses = new Map<Operand, number>();
    for (const { x, y } of this.#steps)
      for (const operand of new Set([x, y])) uses.set(operand, (uses.get(operand) ?? 0) + 1);
    const sole = this.#steps.filter(({ out }) => uses.get(out) === 1 && !roots.has(out));
    return new Map(sole.map((step) => [step.out, step]));
  }

  /** Each step's result gets a block of its own until its last reader has read it. */
  #giveRegisters(roots: ReadonlySet<Operand>): void {
    const last = new Map<Operand, Step>();
    for (const step of this.#steps) for (const operand of [step.x, step.y]) last.set(operand, step);
    const free: Float64Array[] = [];
    for (const step of this.#steps) {
      for (const operand of new Set([step.x, step.y]))
        if (operand.made && !roots.has(operand) && last.get(operand) === step) free.push(operand.array);
      if (step.out.made && !roots.has(step.out)) step.out.array = free.pop() ?? new Float64Array(this.#length);
    }
  }
}

function run(steps: readonly Step[], size: number, length: number): void {
  for (let next = 0; next < size; next += length) {
    // The last block reaches back over rows that are done, so that every block is whole.
    const row = Math.min(next, size - length);
    for (const { kernel, x, y, out } of steps)
      kernel(out.array, start(out, row), x.array, start(x, row), y.array, start(y, row), length);
  }
}

/** Where in its array an operand begins for the block from `row` on. */
function start({ moves, base }: Operand, row: number): number {
  return moves ? row : base;
}

function padded<Values extends Float64Array | Int32Array>(values: Values, size: number): Values {
  if (values.length >= size) return values;
  const longer = new (values.constructor as new (length: number) => Values)(size);
  longer.set(values);
  return longer;
}
