import type { Kind } from '../column.ts';
import { daysFromIso } from '../days.ts';
import { conversion, convertible, parseUnit, power, product, pure, type Unit } from '../dimension.ts';
import { nearest } from '../nearest.ts';
import type { Relation } from '../relation.ts';
import type { Table } from '../table.ts';
import { type Form, functions, type PlainFunction, signature } from './functions.ts';
import { conditional, number, times } from './nodes.ts';
import { print } from './print.ts';
import type { Summary } from './summaries.ts';
import { FormulaError, type Node } from './syntax.ts';

/** A formula that fits its table. */
export interface Resolved {
  /** Pure arithmetic: every conversion of units is a factor, angles are radians where a function takes them. */
  readonly node: Node;
  /** UCUM code of the values. */
  readonly unit: string;
  readonly kind: Kind;
}

/** What checking a formula needs of a table. */
export type Scope = Pick<Table, 'names' | 'column' | 'relations'>;

/** A node with what is known of its values. */
interface Typed {
  readonly node: Node;
  readonly kind: Kind;
  readonly unit: Unit;
  /** A number without a unit of its own: beside a dimensioned value it takes that value's unit. */
  readonly bare: boolean;
}

const days = parseUnit('d');
const radian = parseUnit('rad');
const degree = parseUnit('deg');

/**
 * Checks a formula against the columns of a table and makes every conversion of units explicit.
 * A bare number in a sum, a comparison or a choice beside a value with a unit takes that unit.
 * @param node  as `parse` gives it
 * @param unit  UCUM code to turn the result into; left out, the unit that the formula gives
 * @throws FormulaError for unknown names, kinds or dimensions that don't go together, with the place
 * @example resolve(parse('toe_angle_deg > 50'), table) // { kind: 'boolean', unit: '1', node }
 */
export function resolve(node: Node, scope: Scope, unit?: string): Resolved {
  const typed = new Resolver(scope).typed(node);
  const wanted = unit === undefined ? typed.unit : unitFrom(unit, node);
  if (typed.bare) return { node: typed.node, unit: wanted.code, kind: typed.kind };
  if (!convertible(typed.unit, wanted) || (typed.kind !== 'number' && wanted.code !== typed.unit.code))
    throw new FormulaError(
      `${excerpt(node)} gives ${worded(typed)}, and the column is to have ${wanted.code}. Change the column's unit or the formula`,
      node.start,
      node.end,
    );
  return { node: times(typed.node, conversion(typed.unit, wanted)), unit: wanted.code, kind: typed.kind };
}

class Resolver {
  readonly #scope: Scope;
  readonly #names: ReadonlySet<string>;

  constructor(scope: Scope) {
    this.#scope = scope;
    this.#names = new Set(scope.names);
  }

  typed(node: Node): Typed {
    switch (node.kind) {
      case 'number':
        return { node, kind: 'number', unit: pure, bare: true };
      case 'text':
        return { node, kind: 'text', unit: pure, bare: false };
      case 'column':
        return this.#column(node, node.name);
      case 'unary': {
        const operand = this.typed(node.operand);
        expectKind(operand, node.operator === '!' ? ['boolean'] : ['number'], node.operator);
        return { ...operand, node: { ...node, operand: operand.node } };
      }
      case 'binary':
        return this.#binary(node);
      case 'conditional': {
        const test = this.typed(node.test);
        expectKind(test, ['boolean'], 'the test before ?');
        const arms = alike([this.typed(node.then), this.typed(node.otherwise)], node, 'stand in one column');
        return { ...arms, node: conditional(test.node, arms.nodes[0], arms.nodes[1], node) };
      }
      case 'call':
        return this.#call(node);
    }
  }

  #column(node: Node, name: string): Typed {
    if (!this.#names.has(name)) {
      const near = nearest(name, this.#names);
      throw new FormulaError(
        `There is no column ${shortened(name)} (characters ${node.start} to ${node.end}). ${near === undefined ? 'Choose one from the list of columns' : `Did you mean ${near}?`}`,
        node.start,
        node.end,
      );
    }
    const { kind, unit } = this.#scope.column(name);
    return { node, kind, unit: unitFrom(unit, node), bare: false };
  }

  #binary(node: Node & { kind: 'binary' }): Typed {
    const left = this.typed(node.left);
    const right = this.typed(node.right);
    const pair = (l: Node, r: Node): Node => ({ ...node, left: l, right: r });
    switch (node.operator) {
      case '+':
      case '-':
        if (left.kind === 'date' || right.kind === 'date') return dates(node, left, right, pair);
        break;
      case '*':
      case '/': {
        expectKind(left, ['number'], node.operator);
        expectKind(right, ['number'], node.operator);
        const other = node.operator === '*' ? { unit: right.unit, factor: 1 } : power(right.unit, -1)!;
        const both = product(left.unit, other.unit);
        return {
          node: times(pair(left.node, right.node), both.factor * other.factor),
          kind: 'number',
          unit: both.unit,
          bare: left.bare && right.bare,
        };
      }
      case '**':
        return raised(node, left, right, pair);
      case '&&':
      case '||':
        expectKind(left, ['boolean'], node.operator);
        expectKind(right, ['boolean'], node.operator);
        return { node: pair(left.node, right.node), kind: 'boolean', unit: pure, bare: false };
    }
    if (node.operator === '+' || node.operator === '-' || node.operator === '%') {
      const verb = { '+': 'be added', '-': 'be subtracted', '%': 'leave a remainder' }[node.operator];
      expectKind(left, ['number'], node.operator);
      expectKind(right, ['number'], node.operator);
      const both = alike([left, right], node, verb);
      return { ...both, node: pair(both.nodes[0], both.nodes[1]) };
    }
    const both = alike([left, right], node, 'be compared');
    if (both.kind !== 'number' && both.kind !== 'date' && node.operator !== '==' && node.operator !== '!=')
      throw new FormulaError(
        `${excerpt(node)}: ${both.kind === 'text' ? 'texts' : 'yes and no'} have no order (characters ${node.start} to ${node.end}). Compare them by == or !=`,
        node.start,
        node.end,
      );
    return { node: pair(both.nodes[0], both.nodes[1]), kind: 'boolean', unit: pure, bare: false };
  }

  #call(node: Node & { kind: 'call' }): Typed {
    const row = functions.get(node.name);
    if (row?.sort === 'plain') return this.#plain(node, row);
    if (row?.sort === 'summary') return this.#summary(node, row);
    if (row?.sort === 'form') return this.#form(node, row);
    const relation = this.#scope.relations.find(({ name }) => name === node.name);
    if (relation) return this.#relation(node, relation);
    const near = nearest(node.name, [...functions.keys(), ...this.#scope.relations.map(({ name }) => name)]);
    const remedy = this.#names.has(node.name)
      ? 'It is a column: write it without brackets after it'
      : near === undefined
        ? 'Choose one from the list of functions'
        : `Did you mean ${near}?`;
    throw new FormulaError(
      `There is no function ${shortened(node.name)} (characters ${node.start} to ${node.end}). ${remedy}`,
      node.start,
      node.end,
    );
  }

  #plain(node: Node & { kind: 'call' }, row: PlainFunction): Typed {
    expectCount(
      node,
      row.parameters.length,
      row.rest ? Number.POSITIVE_INFINITY : row.parameters.length,
      signature(row),
    );
    const given = node.args.map((arg) => this.typed(arg));
    for (const arg of given) if (!isMissing(arg)) expectKind(arg, row.kinds ?? ['number'], row.name);
    const { nodes, kind, unit, bare } = taken(given, row, node);
    // Each step of a chain of twos spans the whole call.
    const call =
      nodes.length === 1 ? { ...node, args: nodes } : nodes.reduce((chain, next) => ({ ...node, args: [chain, next] }));
    switch (row.gives) {
      case 'first':
        return { node: call, kind, unit, bare };
      case 'root': {
        const root = power(unit, 0.5);
        if (root) return { node: times(call, root.factor), kind: 'number', unit: root.unit, bare };
        throw new FormulaError(
          `${excerpt(node)}: ${unit.code} has no square root (characters ${node.start} to ${node.end}). Take the root of a pure number or of an even power, as in sqrt(x * x)`,
          node.start,
          node.end,
        );
      }
      case '1':
        return { node: call, kind: 'number', unit: pure, bare: false };
      case 'angle':
        return { node: times(call, conversion(radian, degree)), kind: 'number', unit: degree, bare: false };
      case 'boolean':
        return { node: call, kind: 'boolean', unit: pure, bare: false };
    }
  }

  #summary(node: Node & { kind: 'call' }, row: Summary): Typed {
    expectCount(node, row.parameters.length, Number.POSITIVE_INFINITY, signature(row));
    const x = countable(this.typed(node.args[0]));
    expectKind(x, row.kinds, row.name);
    const shares = node.args.slice(1, row.parameters.length).map((arg) => this.#share(arg));
    const keys = node.args.slice(row.parameters.length).map((key) => {
      if (key.kind === 'column') return this.typed(key).node;
      throw new FormulaError(
        `${excerpt(key)} is no column (characters ${key.start} to ${key.end}). After what ${row.name} is of come the names of key columns`,
        key.start,
        key.end,
      );
    });
    const call: Node = { ...node, args: [x.node, ...shares, ...keys] };
    if (row.gives === '1') return { node: call, kind: 'number', unit: pure, bare: false };
    return { node: call, kind: row.gives === 'spread' ? 'number' : x.kind, unit: x.unit, bare: false };
  }

  /** The share of a quantile: a number from 0 to 1 that is written out. */
  #share(arg: Node): Node {
    const value = constant(arg);
    if (value >= 0 && value <= 1) return number(value, arg);
    throw new FormulaError(
      `${excerpt(arg)} is no share (characters ${arg.start} to ${arg.end}). Write a number from 0 to 1, as in quantile(x, 0.25)`,
      arg.start,
      arg.end,
    );
  }

  #relation(node: Node & { kind: 'call' }, relation: Relation): Typed {
    expectCount(node, 1, 1, `${relation.name}(x)`);
    const needed = [...relation.match, ...Object.keys(relation.swap ?? {}), relation.before];
    const lacking = needed.find((name) => name !== undefined && !this.#names.has(name));
    if (lacking !== undefined)
      throw new FormulaError(
        `${relation.name} looks at the column ${lacking}, which this table lacks (characters ${node.start} to ${node.end}). Add that column`,
        node.start,
        node.end,
      );
    const x = this.typed(node.args[0]);
    return { ...x, node: { ...node, args: [x.node] } };
  }

  #form(node: Node & { kind: 'call' }, row: Form): Typed {
    expectCount(node, row.parameters.length, row.parameters.length, signature(row));
    switch (row.name) {
      case 'pi':
        return { node: number(Math.PI, node), kind: 'number', unit: pure, bare: false };
      case 'missing':
        return { node: number(Number.NaN, node), kind: 'number', unit: pure, bare: true };
      case 'clamp': {
        const parts = node.args.map((arg) => this.typed(arg));
        for (const part of parts) expectKind(part, ['number', 'date'], row.name);
        const { nodes, ...rest } = alike(parts, node, 'be compared');
        const above: Node = { ...node, name: 'greatest', args: [nodes[0], nodes[1]] };
        return { ...rest, node: { ...node, name: 'least', args: [above, nodes[2]] } };
      }
      case 'quantity': {
        const value = constant(node.args[0]);
        if (Number.isNaN(value))
          throw new FormulaError(
            `quantity() takes a number that is written out, as in quantity(330, '[in_i]3/[lb_av]'), and not ${excerpt(node.args[0])}`,
            node.args[0].start,
            node.args[0].end,
          );
        return { node: number(value, node), kind: 'number', unit: namedUnit(node.args[1]), bare: false };
      }
      case 'in_unit':
      case 'radians': {
        const x = this.typed(node.args[0]);
        expectKind(x, ['number'], row.name);
        const unit = row.name === 'radians' ? radian : namedUnit(node.args[1]);
        if (!convertible(x.unit, unit)) throw unlike(node, x, `${unit.code}`, 'be turned into each other');
        return { node: times(x.node, conversion(x.unit, unit)), kind: 'number', unit: pure, bare: false };
      }
      default:
        throw new TypeError(`The form ${row.name} has no meaning here yet`);
    }
  }
}

/** Dates and days: a date less a date is a number of days, a date and a length of time make a date. */
function dates(
  node: Node & { kind: 'binary' },
  left: Typed,
  right: Typed,
  pair: (left: Node, right: Node) => Node,
): Typed {
  const [l, r] = [asDate(left, right), asDate(right, left)];
  const subtracting = node.operator === '-';
  if (l.kind === 'date' && r.kind === 'date' && subtracting)
    return { node: pair(l.node, r.node), kind: 'number', unit: days, bare: false };
  const [date, time] = l.kind === 'date' ? [l, r] : [r, l];
  const together = time.kind === 'number' && (time.bare || convertible(time.unit, days));
  if (!together || (subtracting && date === r))
    throw unlike(
      node,
      l,
      worded(r),
      subtracting ? 'be subtracted' : 'be added',
      'A date takes days: date + 42, or date - previous(date)',
    );
  const inDays = time.bare ? time.node : times(time.node, conversion(time.unit, days));
  return { node: date === l ? pair(l.node, inDays) : pair(inDays, r.node), kind: 'date', unit: days, bare: false };
}

function raised(
  node: Node & { kind: 'binary' },
  left: Typed,
  right: Typed,
  pair: (left: Node, right: Node) => Node,
): Typed {
  expectKind(left, ['number'], '**');
  expectKind(right, ['number'], '**');
  if (!convertible(right.unit, pure))
    throw unlike(node, right, 'an exponent', 'be one', 'An exponent is a pure number');
  const exponent = times(right.node, conversion(right.unit, pure));
  if (convertible(left.unit, pure)) {
    const base = times(left.node, conversion(left.unit, pure));
    return { node: pair(base, exponent), kind: 'number', unit: pure, bare: left.bare && right.bare };
  }
  const value = constant(exponent);
  const result = Number.isNaN(value) ? undefined : power(left.unit, value);
  if (!result)
    throw new FormulaError(
      `${excerpt(node)}: what has a unit (${left.unit.code}) can only be raised to a written-out power that leaves a whole one (characters ${node.start} to ${node.end}). Write x ** 2, or divide first`,
      node.start,
      node.end,
    );
  return { node: times(pair(left.node, exponent), result.factor), kind: 'number', unit: result.unit, bare: false };
}

/** The arguments of a plain function as it takes them. */
function taken(
  given: readonly Typed[],
  row: PlainFunction,
  at: Node,
): { nodes: readonly Node[]; kind: Kind; unit: Unit; bare: boolean } {
  if (row.takes === 'alike') return alike(given, at, 'be compared');
  const [x] = given;
  if (row.takes === 'any') return { ...x, nodes: [x.node] };
  if (row.takes === 'angle') {
    if (x.bare && !isMissing(x))
      throw new FormulaError(
        `${excerpt(at)}: degrees or radians? (characters ${at.start} to ${at.end}). Write ${row.name}(quantity(${print(x.node)}, 'deg'))`,
        at.start,
        at.end,
      );
    if (convertible(x.unit, radian)) return { ...x, nodes: [times(x.node, conversion(x.unit, radian))] };
  }
  if (convertible(x.unit, pure)) return { ...x, nodes: [times(x.node, conversion(x.unit, pure))] };
  const takes = row.takes === 'angle' ? 'an angle' : 'a pure number';
  throw new FormulaError(
    `${excerpt(at)}: ${row.name} takes ${takes}, and this is ${x.unit.code} (characters ${at.start} to ${at.end}). Divide by something of the same kind first`,
    at.start,
    at.end,
  );
}

/** Values that are held against each other: of one kind, and all in the unit of the first that has one. */
function alike(
  parts: readonly Typed[],
  at: Node,
  verb: string,
): { nodes: readonly Node[]; kind: Kind; unit: Unit; bare: boolean } {
  const date = parts.find(({ kind }) => kind === 'date');
  const dated = date ? parts.map((part) => asDate(part, date)) : parts;
  const lead = dated.find(({ bare }) => !bare) ?? dated[0];
  const nodes = dated.map((part) => {
    if (isMissing(part)) return lead.kind === 'text' ? { ...part.node, kind: 'text' as const, value: '' } : part.node;
    if (part.kind !== lead.kind) throw unlike(at, lead, worded(part), verb, yesNoRemedy(at, lead, part));
    if (part.bare || part.kind !== 'number') return part.node;
    if (!convertible(part.unit, lead.unit)) throw unlike(at, lead, worded(part), verb);
    return times(part.node, conversion(part.unit, lead.unit));
  });
  return { nodes, kind: lead.kind, unit: lead.unit, bare: lead.bare };
}

/** A written-out ISO date beside a date is one. */
function asDate(part: Typed, beside: Typed): Typed {
  if (beside.kind !== 'date' || part.node.kind !== 'text') return part;
  const { node } = part;
  const value = daysFromIso(node.value);
  if (Number.isNaN(value))
    throw new FormulaError(
      `${excerpt(node)} is no date (characters ${node.start} to ${node.end}). Write year-month-day, as in '2026-01-31'`,
      node.start,
      node.end,
    );
  return { node: number(value, node), kind: 'date', unit: days, bare: false };
}

/** A yes/no as the number 1 or 0, so that it can be counted and averaged. */
function countable(x: Typed): Typed {
  if (x.kind !== 'boolean') return x;
  return {
    node: conditional(x.node, number(1, x.node), number(0, x.node), x.node),
    kind: 'number',
    unit: pure,
    bare: false,
  };
}

/** A number that is written out, with its sign; `NaN` for anything else. */
function constant(node: Node): number {
  if (node.kind === 'number') return node.value;
  if (node.kind === 'unary' && node.operator === '-') return -constant(node.operand);
  return Number.NaN;
}

function isMissing({ node }: Typed): boolean {
  return node.kind === 'number' && Number.isNaN(node.value);
}

function namedUnit(node: Node): Unit {
  if (node.kind === 'text') return unitFrom(node.value, node);
  throw new FormulaError(
    `${excerpt(node)} is no unit (characters ${node.start} to ${node.end}). Write its code in quotes, as in 'mm'`,
    node.start,
    node.end,
  );
}

function unitFrom(code: string, at: Node): Unit {
  try {
    return parseUnit(code);
  } catch (error) {
    throw new FormulaError((error as TypeError).message, at.start, at.end);
  }
}

function expectCount(
  { args, start, end, name }: Node & { kind: 'call' },
  least: number,
  most: number,
  form: string,
): void {
  if (args.length >= least && args.length <= most) return;
  throw new FormulaError(
    `${name} was given ${args.length === 0 ? 'nothing' : args.length === 1 ? 'one value' : `${args.length} values`} (characters ${start} to ${end}). It is written ${form}`,
    start,
    end,
  );
}

function expectKind(x: Typed, kinds: readonly Kind[], what: string): void {
  if (kinds.includes(x.kind) || isMissing(x)) return;
  const { start, end } = x.node;
  const wanted = kinds.map((kind) => named[kind]).join(' or ');
  const remedy =
    x.kind === 'boolean'
      ? `To count with it, write ${excerpt(x.node)} ? 1 : 0`
      : kinds.includes('boolean')
        ? 'Compare it with something, as in x > 5'
        : x.kind === 'date'
          ? 'Take a difference of dates for a number of days'
          : 'Choose another column';
  throw new FormulaError(
    `${excerpt(x.node)} is ${named[x.kind]}, and ${what} takes ${wanted} (characters ${start} to ${end}). ${remedy}`,
    start,
    end,
  );
}

const named: Readonly<Record<Kind, string>> = { number: 'a number', date: 'a date', boolean: 'a yes/no', text: 'text' };

/** What a value is, in an error: its unit, or its kind where that says more. */
function worded({ kind, unit }: Typed): string {
  return kind !== 'number' ? named[kind] : unit.code === '1' ? 'a pure number' : unit.code;
}

function unlike(
  at: Node,
  left: Typed,
  right: string,
  verb: string,
  remedy = 'Compare columns of one kind, or divide first',
): FormulaError {
  return new FormulaError(
    `${excerpt(at)}: ${worded(left)} and ${right} can't ${verb} (characters ${at.start} to ${at.end}). ${remedy}`,
    at.start,
    at.end,
  );
}

/** What to write instead of comparing a yes/no with a number, `40 < x < 60` or `shod == 1`. */
function yesNoRemedy(at: Node, left: Typed, right: Typed): string | undefined {
  if (at.kind !== 'binary' || (left.kind === 'boolean') === (right.kind === 'boolean')) return undefined;
  if (at.left.kind === 'binary') return 'For a value between two others write low < x && x < high';
  const yesNo = print((left.kind === 'boolean' ? left : right).node);
  return `A yes/no stands for itself: write ${yesNo} or !${yesNo}`;
}

function excerpt(node: Node): string {
  return shortened(print(node));
}

function shortened(text: string): string {
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}
