import { parse, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile, type TopLevelSpec } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import { daysFromIso } from '../../lib/sheet/days.ts';
import { type LinkedDescription, linkedHerd } from '../../lib/views/linkedHerd.ts';
import { hostile, number, table } from './plotted.ts';

const horses = [...hostile, 'A', 'B'];
const feet = table({
  horse_id: { values: horses.flatMap((horse) => [horse, horse]) },
  limb: { values: horses.flatMap(() => ['LF', 'RH']) },
  date: {
    kind: 'date',
    values: Float64Array.from(
      horses.flatMap((_, at) => [at, at]),
      (at) => daysFromIso('2026-01-01') + 10 * at,
    ),
  },
  wall_level_mm: number(
    horses.flatMap((_, at) => [at, at === 0 ? Number.NaN : -at]),
    'mm',
  ),
});

interface Spec {
  vconcat: {
    params?: { name: string; value?: unknown }[];
    layer?: { params?: { name: string; value?: unknown }[] }[];
  }[];
}

/** Draws it as the pages do, expressions interpreted, with something chosen from the start. */
async function drawnWith(
  { specification }: LinkedDescription,
  chosen: Record<string, unknown> = {},
  expected: readonly string[] = [],
): Promise<string> {
  const warnings: string[] = [];
  const quiet = () => logger;
  const note = (...said: unknown[]) => {
    warnings.push(said.join(' '));
    return logger;
  };
  const logger = { level: quiet, info: quiet, debug: quiet, warn: note, error: note };
  const copy = structuredClone(specification) as Spec;
  const params = copy.vconcat.flatMap((part) => [
    ...(part.params ?? []),
    ...(part.layer?.flatMap((layer) => layer.params ?? []) ?? []),
  ]);
  for (const param of params) if (Object.hasOwn(chosen, param.name)) param.value = chosen[param.name];
  const { spec } = compile(copy as unknown as TopLevelSpec, { logger: logger as never });
  const view = new View(parse(spec, undefined, { ast: true }), {
    expr: expressionInterpreter,
    renderer: 'none',
    logger: logger as never,
  });
  const text = await view.toSVG();
  view.finalize();
  // There is no window here to drag in; in a browser there is.
  expect(warnings.filter((warning) => warning !== 'Can not resolve event source: window')).toEqual(expected);
  return text;
}

/** How many points the first chart shows. */
function pointsIn(text: string): number {
  return (text.match(/aria-roledescription="point"/g) ?? []).length;
}

describe('linkedHerd', () => {
  const linked = linkedHerd(feet);

  it('compiles and draws without a warning, expressions interpreted', async () => {
    expect(pointsIn(await drawnWith(linked))).toBe(15);
  });

  it('counts the rows it leaves out', () => {
    expect(linked.caption).toContain('1 row without a measurement left out.');
    expect(linked.summary).toContain('15 measurements of 8 horses');
  });

  it('filters the dates by the limb and the horses that are chosen', async () => {
    expect(pointsIn(await drawnWith(linked, { limb: [{ limb: 'RH' }] }))).toBe(7);
    expect(pointsIn(await drawnWith(linked, { horse: [{ horse: 'A' }, { horse: '__proto__' }] }))).toBe(4);
    expect(pointsIn(await drawnWith(linked, { limb: [{ limb: 'LF' }], horse: [{ horse: 'B' }] }))).toBe(1);
  });

  it('filters limbs and horses by the span of dates that is chosen, and keeps their rows', async () => {
    const ticks = (text: string) => (text.match(/aria-roledescription="tick"/g) ?? []).length;
    const span = { x: [Date.UTC(2026, 0, 1), Date.UTC(2026, 0, 12)] };
    const [all, some] = [await drawnWith(linked), await drawnWith(linked, { span })];
    // 15 measurements in two charts, the medians of 2 limbs and of 8 horses; then 3 measurements, 2 limbs, 2 horses.
    expect(ticks(all)).toBe(2 * 15 + 2 + 8);
    expect(ticks(some)).toBe(2 * 3 + 2 + 2);
    for (const text of [all, some]) expect(text).toContain('>B</text>');
  });

  it('takes any name of a horse as text', async () => {
    const text = await drawnWith(linked);
    expect(text).not.toContain('<script');
    expect(text).toContain('__proto__');
  });

  it('brings its data along and fetches nothing', () => {
    const text = JSON.stringify(linked.specification);
    expect(text).not.toContain('"url"');
    expect(text).not.toMatch(/"(expr|signal|calculate)"/);
    expect(text).not.toContain('NaN');
  });

  it('shows values in the reader’s units', () => {
    const inches = linkedHerd(feet, { units: { length: 'in', mass: 'lb' } });
    expect(JSON.stringify(inches.specification)).toContain('Level from the front (in)');
  });

  it('draws an empty herd', async () => {
    const noDates = ['Infinite extent for field "date": [Infinity, -Infinity]'];
    expect(pointsIn(await drawnWith(linkedHerd(feet, { rows: [] }), {}, noDates))).toBe(0);
  });
});
