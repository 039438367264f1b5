import { counted } from '../../words/counted.ts';
import { say } from '../../words/say.ts';
import type { Kind } from '../column.ts';
import { conversion, convertible, pure } from '../dimension.ts';
import { nearest } from '../nearest.ts';
import type { Relation } from '../relation.ts';
import type { Table } from '../table.ts';
import { complaint } from './complaint.ts';
import { type Form, functions, type PlainFunction, signature } from './functions.ts';
import { conditional, number, times } from './nodes.ts';
import { excerpt, shortened } from './print.ts';
import type { Summary } from './summaries.ts';
import type { Node } from './syntax.ts';
import { constant, expectKind, namedUnit, type Typed, unitFrom, worded } from './typed.ts';
import { alike, alikeOf, dateSum, given, powerOf, productOf, radian, taken, turned } from './unitRules.ts';

/** A formula that fits its table. */
export interface Resolved {
  /** Pure arithmetic: every conversion of units is a factor, angles are radians where a function takes them. */
  readonly node: Node;
  /** UCUM code of the values. */
  readonly unit: string;
  readonly kind: Kind;
}

/** What checking a formula needs of a table. */
export interface Scope extends Pick<Table, 'names' | 'relations'> {
  column(name: string): { readonly kind: Kind; readonly unit: string };
}

type Call = Node & { kind: 'call' };

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
    throw complaint(
      node,
      say`${excerpt(node)} gives ${worded(typed)}, and the column is to have ${wanted.code}`,
      say`Change the column's unit or the formula`,
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
        return this.#column(node);
      case 'unary': {
        const operand = this.typed(node.operand);
        expectKind(operand, node.operand, node.operator === '!' ? ['boolean'] : ['number'], node.operator);
        return { ...operand, node: { ...node, operand: operand.node } };
      }
      case 'binary':
        return this.#binary(node);
      case 'conditional': {
        const test = this.typed(node.test);
        expectKind(test, node.test, ['boolean'], say`the test before ?`);
        const { nodes, ...arms } = alike(
          [this.typed(node.then), this.typed(node.otherwise)],
          node,
          say`stand in one column`,
        );
        return { ...arms, node: conditional(test.node, nodes[0], nodes[1], node) };
      }
      case 'call':
        return this.#call(node);
    }
  }

  #column(node: Node & { kind: 'column' }): Typed {
    if (!this.#names.has(node.name)) {
      const near = nearest(node.name, this.#names);
      const remedy = near === undefined ? say`Choose one from the list of columns` : say`Did you mean ${near}?`;
      throw complaint(node, say`There is no column ${shortened(node.name)}`, remedy);
    }
    const { kind, unit } = this.#scope.column(node.name);
    return { node, kind, unit: unitFrom(unit, node), bare: false };
  }

  #binary(node: Node & { kind: 'binary' }): Typed {
    const left = this.typed(node.left);
    const right = this.typed(node.right);
    switch (node.operator) {
      case '*':
      case '/':
        return productOf(node, left, right);
      case '**':
        return powerOf(node, left, right);
      case '+':
      case '-':
      case '%': {
        if (node.operator !== '%' && (left.kind === 'date' || right.kind === 'date')) return dateSum(node, left, right);
        expectKind(left, node.left, ['number'], node.operator);
        expectKind(right, node.right, ['number'], node.operator);
        const verb = { '+': say`be added`, '-': say`be subtracted`, '%': say`leave a remainder` }[node.operator];
        const { nodes, ...both } = alike([left, right], node, verb);
        return { ...both, node: { ...node, left: nodes[0], right: nodes[1] } };
      }
      case '&&':
      case '||':
        expectKind(left, node.left, ['boolean'], node.operator);
        expectKind(right, node.right, ['boolean'], node.operator);
        return { node: { ...node, left: left.node, right: right.node }, kind: 'boolean', unit: pure, bare: false };
      default:
        return comparison(node, left, right);
    }
  }

  #call(node: Call): Typed {
    const row = functions.get(node.name);
    if (row?.sort === 'plain') return this.#plain(node, row);
    if (row?.sort === 'summary') return this.#summary(node, row);
    if (row?.sort === 'form') return this.#form(node, row);
    const relation = this.#scope.relations.find(({ name }) => name === node.name);
    if (relation) return this.#relation(node, relation);
    const near = nearest(node.name, [...functions.keys(), ...this.#scope.relations.map(({ name }) => name)]);
    const remedy = this.#names.has(node.name)
      ? say`It is a column: write it without brackets after it`
      : near === undefined
        ? say`Choose one from the list of functions`
        : say`Did you mean ${near}?`;
    throw complaint(node, say`There is no function ${shortened(node.name)}`, remedy);
  }

  #plain(node: Call, row: PlainFunction): Typed {
    const most = row.rest ? Number.POSITIVE_INFINITY : row.parameters.length;
    expectCount(node, row.parameters.length, most, signature(row));
    const args = node.args.map((arg) => this.typed(arg));
    const { nodes, ...x } = taken(args, row, node);
    // Each step of a chain of twos spans the whole call.
    const call: Node =
      nodes.length === 1 ? { ...node, args: nodes } : nodes.reduce((chain, next) => ({ ...node, args: [chain, next] }));
    return given(call, row, x, node);
  }

  #summary(node: Call, row: Summary): Typed {
    expectCount(node, row.parameters.length, Number.POSITIVE_INFINITY, signature(row));
    const x = countable(this.typed(node.args[0]));
    expectKind(x, node.args[0], row.kinds, row.name);
    const shares = node.args.slice(1, row.parameters.length).map(share);
    const keys = node.args.slice(row.parameters.length).map((key) => this.#key(key, row));
    const call: Node = { ...node, args: [x.node, ...shares, ...keys] };
    if (row.gives === '1') return { node: call, kind: 'number', unit: pure, bare: false };
    return { node: call, kind: row.gives === 'spread' ? 'number' : x.kind, unit: x.unit, bare: false };
  }

  #key(key: Node, row: Summary): Node {
    if (key.kind !== 'column') {
      const remedy = say`After what ${row.name} is of come the names of key columns`;
      throw complaint(key, say`${excerpt(key)} is no column`, remedy);
    }
    const { kind, unit } = this.typed(key);
    // max(medial_mm, lateral_mm) is meant as the larger of the two, and would be a maximum for each lateral_mm.
    if (kind === 'number' && unit.code !== '1') {
      const either = { min: 'least', max: 'greatest' }[row.name];
      const remedy = either
        ? say`For one of two values write ${either}(x, y)`
        : say`Keys are texts, dates or plain numbers`;
      throw complaint(key, say`${key.name} is measured in ${unit.code} and makes no groups`, remedy);
    }
    return key;
  }

  #relation(node: Call, relation: Relation): Typed {
    expectCount(node, 1, 1, `${relation.name}(x)`);
    const needed = [...relation.match, ...Object.keys(relation.swap ?? {}), relation.before];
    const lacking = needed.find((name) => name !== undefined && !this.#names.has(name));
    if (lacking !== undefined)
      throw complaint(
        node,
        say`${relation.name} looks at the column ${lacking}, which is not there`,
        say`Add that column`,
      );
    const isText = (name: string) => this.#scope.column(name).kind === 'text';
    const refuse = (what: string) =>
      complaint(node, say`${relation.name} goes by ${what}`, say`Give that column another kind`);
    const numeric = Object.keys(relation.swap ?? {}).find((name) => !isText(name));
    if (numeric !== undefined) throw refuse(say`the words of ${numeric}, which are numbers`);
    if (relation.before !== undefined && isText(relation.before))
      throw refuse(say`the order of ${relation.before}, which is text`);
    const x = this.typed(node.args[0]);
    return { ...x, node: { ...node, args: [x.node] }, bare: false };
  }

  #form(node: Call, row: Form): Typed {
    expectCount(node, row.parameters.length, row.parameters.length, signature(row));
    switch (row.name) {
      case 'pi':
        return { node: number(Math.PI, node), kind: 'number', unit: pure, bare: false };
      case 'missing':
        return { node: number(Number.NaN, node), kind: 'number', unit: pure, bare: true };
      case 'clamp': {
        const parts = node.args.map((arg) => this.typed(arg));
        const { nodes, ...x } = alikeOf(['number', 'date'], parts, node);
        const above: Node = { ...node, name: 'greatest', args: [nodes[0], nodes[1]] };
        return { ...x, node: { ...node, name: 'least', args: [above, nodes[2]] } };
      }
      case 'quantity': {
        const value = constant(node.args[0]);
        if (Number.isNaN(value)) {
          const remedy = say`Write it out, as in quantity(330, '[in_i]3/[lb_av]')`;
          throw complaint(node.args[0], say`quantity takes a number, and not ${excerpt(node.args[0])}`, remedy);
        }
        return { node: number(value, node), kind: 'number', unit: namedUnit(node.args[1]), bare: false };
      }
      case 'in_unit':
      case 'radians': {
        const x = this.typed(node.args[0]);
        expectKind(x, node.args[0], ['number'], row.name);
        const unit = row.name === 'radians' ? radian : namedUnit(node.args[1]);
        return { node: turned(x, unit, node), kind: 'number', unit: pure, bare: false };
      }
      default:
        throw new TypeError(`The form ${row.name} has no meaning here yet`);
    }
  }
}

function comparison(node: Node & { kind: 'binary' }, left: Typed, right: Typed): Typed {
  const { nodes, kind } = alike([left, right], node, say`be compared`);
  const ordered = node.operator !== '==' && node.operator !== '!=';
  if (ordered && kind !== 'number' && kind !== 'date') {
    const what = kind === 'text' ? say`texts` : say`yes and no`;
    throw complaint(node, say`${excerpt(node)}: ${what} have no order`, say`Compare them by == or !=`);
  }
  if (nodes.some((side) => side.kind === 'text' && side.value === ''))
    throw complaint(
      node,
      say`${excerpt(node)}: what is missing is neither equal to anything nor different from it`,
      say`Write is_missing(x)`,
    );
  return { node: { ...node, left: nodes[0], right: nodes[1] }, kind: 'boolean', unit: pure, bare: false };
}

/** A yes/no as the number 1 or 0, so that it can be counted and averaged. */
function countable(x: Typed): Typed {
  if (x.kind !== 'boolean') return x;
  const { node } = x;
  const asNumber = conditional(node, number(1, node), number(0, node), node);
  return { node: asNumber, kind: 'number', unit: pure, bare: false };
}

/** The share of a quantile: a number from 0 to 1 that is written out. */
function share(arg: Node): Node {
  const value = constant(arg);
  if (value >= 0 && value <= 1) return number(value, arg);
  throw complaint(arg, say`${excerpt(arg)} is no share`, say`Write a number from 0 to 1, as in quantile(x, 0.25)`);
}

function expectCount(call: Call, least: number, most: number, form: string): void {
  const count = call.args.length;
  if (count >= least && count <= most) return;
  const found = count === 0 ? say`nothing` : counted(count, { one: say`one value`, other: say`${count} values` });
  throw complaint(call, say`${call.name} was given ${found}`, say`It is written ${form}`);
}
