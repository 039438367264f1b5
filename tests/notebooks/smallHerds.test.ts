import { describe, expect, it } from 'vitest';
import { type Columns, herd } from '../../lib/index.ts';
import { htmlPage } from '../../lib/report.ts';
import { page as longerIntervals } from '../../notebooks/longerIntervals.ts';
import { page as measurements } from '../../notebooks/measurements.ts';
import { page as planATrial } from '../../notebooks/planATrial.ts';

const foot = (more: Record<string, string[]> = {}, rows = 1): Columns => ({
  horse_id: { values: Array.from({ length: rows }, (_, i) => `h${i % 3}`) },
  date: {
    values: Array.from({ length: rows }, (_, i) => new Date(Date.UTC(2026, 0, 1 + 40 * i)).toISOString().slice(0, 10)),
  },
  limb: { values: Array.from({ length: rows }, () => 'LF') },
  toe_angle_deg: { unit: 'deg', values: Float64Array.from({ length: rows }, (_, i) => 50 + (i % 4)) },
  ...Object.fromEntries(Object.entries(more).map(([name, values]) => [name, { values }])),
});

const herds: Record<string, Columns> = {
  'one foot, once': foot(),
  'three horses, a few times, nothing but the toe angle': foot({}, 12),
  'horses named like parts of the language': {
    ...foot({}, 8),
    horse_id: {
      values: ['__proto__', 'constructor', '<script>alert(1)</script>', '=1+1', '__proto__', '', '**a**', '[b](c)'],
    },
  },
  'no feet at all': foot({}, 0),
};

describe.each(Object.entries(herds))('a herd of %s', (_, feet) => {
  it.each([longerIntervals, measurements, planATrial])('has words for what can’t be told ($name)', async (page) => {
    const html = await htmlPage(page, { herd: herd({ feet }) });
    expect(html.match(/.{60}(NaN|undefined|Infinity|could not be|<script).{20}/s)?.[0]).toBeUndefined();
    expect(html.includes(page.title)).toBe(true);
  });
});

it('says that there is too little to go by', async () => {
  const html = await htmlPage(longerIntervals, { herd: herd({ feet: foot({}, 12) }) });
  expect(html).toContain('Too little to go by yet');
  expect(html).toMatch(/at least 20 intervals of 3 horses are needed/);
  expect(await htmlPage(measurements, { herd: herd({ feet: foot() }) })).toContain(
    'No foot was read twice at one moment',
  );
});

it('takes controls that an address was given by hand as far as they make sense', async () => {
  const yard = herd({ feet: foot({}, 12) });
  const odd = {
    outcome: '__proto__',
    feet: ['XX'],
    others: ['nothing'],
    start: 'soon',
    intervals: 1e9,
    longer: -4,
    seed: 0.5,
  };
  for (const page of [longerIntervals, measurements, planATrial])
    expect(
      (await htmlPage(page, { herd: yard, controls: odd })).match(/.{60}(NaN|undefined|could not be).{20}/s),
    ).toBeNull();
});
