import { say } from '../../words/say.ts';
import type { Kind } from '../column.ts';
import { daysFromIso } from '../days.ts';
import { conversion, convertible, parseUnit, power, product, pure, type Unit } from '../dimension.ts';
import { complaint } from './complaint.ts';
import type { PlainFunction } from './functions.ts';
import { number, times } from './nodes.ts';
import { excerpt } from './print.ts';
import type { FormulaError, Node } from './syntax.ts';
import { constant, expectKind, isMissing, type Typed, worded } from './typed.ts';

export const days = parseUnit('d');
export const radian = parseUnit('rad');
export const degree = parseUnit('deg');

type Binary = Node & { kind: 'binary' };

/** Several values made comparable: the nodes in one unit. */
export interface Alike extends Omit<Typed, 'node'> {
  readonly nodes: readonly Node[];
}

/**
 * Values that are held against each other: of one kind, and all in the unit of the first that has one.
 * @param verb  what can't be done with them otherwise: `be added`
 */
export function alike(parts: readonly Typed[], at: Node, verb: string): Alike {
  const dated = parts.some(({ kind }) => kind === 'date') ? parts.map(asDate) : parts;
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

export function unlike(
  at: Node,
  left: Typed,
  right: string,
  verb: string,
  remedy = say`Compare columns of one kind, or divide first`,
): FormulaError {
  return complaint(at, say`${excerpt(at)}: ${worded(left)} and ${right} can't ${verb}`, remedy);
}

/** What to write instead of comparing a yes/no with a number, `40 < x < 60` or `shod == 1`. */
function yesNoRemedy(at: Node, left: Typed, right: Typed): string | undefined {
  if (at.kind !== 'binary' || (left.kind === 'boolean') === (right.kind === 'boolean')) return undefined;
  if (at.left.kind === 'binary') return say`For a value between two others write low < x && x < high`;
  const yesNo = excerpt((left.kind === 'boolean' ? left : right).node);
  return say`A yes/no stands for itself: write ${yesNo} or !${yesNo}`;
}

/** What stands beside a date: an ISO date that is written out is one too. */
function asDate(part: Typed): Typed {
  if (part.node.kind !== 'text') return part;
  const value = daysFromIso(part.node.value);
  if (Number.isNaN(value))
    throw complaint(part.node, say`${excerpt(part.node)} is no date`, say`Write year-month-day, as in '2026-01-31'`);
  return { node: number(value, part.node), kind: 'date', unit: days, bare: false };
}

/** Dates and days: a date less a date is a number of days, a date and a length of time make a date. */
export function dateSum(at: Binary, left: Typed, right: Typed): Typed {
  const [l, r] = [asDate(left), asDate(right)];
  const subtracting = at.operator === '-';
  if (l.kind === 'date' && r.kind === 'date' && subtracting)
    return { node: { ...at, left: l.node, right: r.node }, kind: 'number', unit: days, bare: false };
  const [date, time] = l.kind === 'date' ? [l, r] : [r, l];
  const together = time.kind === 'number' && (time.bare || convertible(time.unit, days));
  if (!together || (subtracting && date === r))
    throw unlike(
      at,
      l,
      worded(r),
      subtracting ? say`be subtracted` : say`be added`,
      say`A date takes days: date + 42, or date - previous(date)`,
    );
  const inDays = time.bare ? time.node : times(time.node, conversion(time.unit, days));
  const [first, second] = date === l ? [date.node, inDays] : [inDays, date.node];
  return { node: { ...at, left: first, right: second }, kind: 'date', unit: days, bare: false };
}

/** A product or a quotient; each dimension keeps one unit. */
export function productOf(at: Binary, left: Typed, right: Typed): Typed {
  expectKind(left, at.left, ['number'], at.operator);
  expectKind(right, at.right, ['number'], at.operator);
  const other = at.operator === '*' ? { unit: right.unit, factor: 1 } : power(right.unit, -1)!;
  const { unit, factor } = product(left.unit, other.unit);
  const node = times({ ...at, left: left.node, right: right.node }, factor * other.factor);
  return { node, kind: 'number', unit, bare: left.bare && right.bare };
}

/** A power; of what has a unit only a written-out one. */
export function powerOf(at: Binary, left: Typed, right: Typed): Typed {
  expectKind(left, at.left, ['number'], '**');
  expectKind(right, at.right, ['number'], '**');
  if (!convertible(right.unit, pure))
    throw complaint(
      at,
      say`${excerpt(at)}: an exponent is a pure number, and this is ${right.unit.code}`,
      say`Divide first`,
    );
  const exponent = times(right.node, conversion(right.unit, pure));
  if (convertible(left.unit, pure)) {
    const base = times(left.node, conversion(left.unit, pure));
    const bare = left.bare && right.bare;
    return { node: { ...at, left: base, right: exponent }, kind: 'number', unit: pure, bare };
  }
  const value = constant(exponent);
  const result = Number.isNaN(value) ? undefined : power(left.unit, value);
  if (!result)
    throw complaint(
      at,
      say`${excerpt(at)}: what has a unit (${left.unit.code}) can only be raised to a written-out power that leaves a whole one`,
      say`Write x ** 2, or divide first`,
    );
  const node = times({ ...at, left: left.node, right: exponent }, result.factor);
  return { node, kind: 'number', unit: result.unit, bare: false };
}

/** The arguments of a plain function as it takes them. */
export function taken(given: readonly Typed[], row: PlainFunction, at: Node & { kind: 'call' }): Alike {
  const kinds = row.kinds ?? ['number'];
  if (row.takes === 'alike') return alikeOf(kinds, given, at);
  const [x] = given;
  expectKind(x, at.args[0], kinds, row.name);
  if (row.takes === 'any') return { ...x, nodes: [x.node] };
  if (row.takes === 'angle' && x.bare && !isMissing(x)) {
    const remedy = say`Write ${row.name}(quantity(${excerpt(x.node)}, 'deg'))`;
    throw complaint(at, say`${excerpt(at)}: degrees or radians?`, remedy);
  }
  // Without a unit an angle is in radians, as SI has it.
  const unit = [radian, pure].find((unit) => (row.takes === 'angle' || unit === pure) && convertible(x.unit, unit));
  if (unit) return { ...x, nodes: [times(x.node, conversion(x.unit, unit))] };
  const takes = row.takes === 'angle' ? say`an angle` : say`a pure number`;
  throw complaint(
    at,
    say`${excerpt(at)}: ${row.name} takes ${takes}, and this is ${x.unit.code}`,
    say`Divide by something of the same kind first`,
  );
}

/** The arguments of a call, held against each other, where they are of one of these kinds. */
export function alikeOf(kinds: readonly Kind[], given: readonly Typed[], at: Node & { kind: 'call' }): Alike {
  const both = alike(given, at, say`be compared`);
  const { kind, unit, bare } = both;
  both.nodes.forEach((node, index) => {
    expectKind({ node, kind, unit, bare }, at.args[index], kinds, at.name);
  });
  return both;
}

/** What a plain function gives, from its call and the arguments it took. */
export function given(call: Node, row: PlainFunction, x: Omit<Typed, 'node'>, at: Node): Typed {
  switch (row.gives) {
    case 'first':
      return { ...x, node: call };
    case 'root': {
      const root = power(x.unit, 0.5);
      if (root) return { node: times(call, root.factor), kind: 'number', unit: root.unit, bare: x.bare };
      throw complaint(
        at,
        say`${excerpt(at)}: ${x.unit.code} has no square root`,
        say`Take the root of a pure number or of an even power, as in sqrt(x * x)`,
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

/** A value in a unit that it can be turned into. */
export function turned(x: Typed, unit: Unit, at: Node): Node {
  if (!convertible(x.unit, unit)) throw unlike(at, x, unit.code, say`be turned into each other`);
  return times(x.node, conversion(x.unit, unit));
}
