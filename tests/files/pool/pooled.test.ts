import { createHmac } from 'node:crypto';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leftOutOfPool, type PoolTables, pooled } from '../../../lib/files/pool/pooled.ts';
import { pooledFiles } from '../../../lib/files/pool/pooledFiles.ts';
import { newPoolKey, openPoolKey } from '../../../lib/files/pool/poolKey.ts';
import { daysMoved, pseudonym } from '../../../lib/files/pool/pseudonym.ts';
import { readTable } from '../../../lib/files/readTable.ts';
import { contextOf } from '../../../lib/hoof/context.ts';
import { herd } from '../../../lib/hoof/herd.ts';
import { type Columns, TextColumn, toColumn } from '../../../lib/sheet/column.ts';
import { daysFromIso, isoFromDays } from '../../../lib/sheet/days.ts';
import type { Sheet } from '../../../lib/sheet/sheet.ts';

const digits = '0123456789abcdef'.repeat(4);
const key = await openPoolKey(digits);

const read = (table: 'feet' | 'horses' | 'visits', csv: string | Uint8Array) =>
  readTable(csv, { schema: table }).columns;
const demoTable = (table: 'feet' | 'horses' | 'visits') =>
  read(table, readFileSync(new URL(`../../../data/${table}.csv`, import.meta.url)));
const demo = { feet: demoTable('feet'), horses: demoTable('horses'), visits: demoTable('visits') };
const text = (columns: Columns, name: string) => (toColumn(columns[name]) as TextColumn).values;

describe('a key for pooling', () => {
  it('is made at random, 64 digits, and read back whatever stands round it', async () => {
    const made = newPoolKey();
    expect(made).toMatch(/^[0-9a-f]{64}$/);
    expect(newPoolKey()).not.toBe(made);
    expect(await pseudonym(await openPoolKey(` ${made.toUpperCase()}\r\n`), 'horse_id', 'Bella')).toBe(
      await pseudonym(await openPoolKey(made), 'horse_id', 'Bella'),
    );
  });

  it('gives the first result of RFC 4231, whose short key counts as filled up with zeros', async () => {
    const short = await openPoolKey('0b'.repeat(20) + '00'.repeat(12));
    const mac = await crypto.subtle.sign('HMAC', short, new TextEncoder().encode('Hi There'));
    expect(Buffer.from(mac).toString('hex')).toBe('b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7');
  });

  it.each(['', 'secret', digits.slice(1), `${digits.slice(1)}g`])('is nothing else: “%s”', async (words) => {
    await expect(openPoolKey(words)).rejects.toThrow('This is no key for pooling');
  });
});

describe('a pseudonym', () => {
  it('is the HMAC-SHA-256 of column and name, as another library works it out', async () => {
    const mac = createHmac('sha256', Buffer.from(digits, 'hex'))
      .update('["name","horse_id","Bèlla “2”"]')
      .digest('hex');
    expect(await pseudonym(key, 'horse_id', 'Bèlla “2”')).toBe(`horse-${mac.slice(0, 12)}`);
  });

  it('moves the days of a horse by 1 to 182 days either way, each about as often', async () => {
    const days = await Promise.all(Array.from({ length: 36_400 }, (_, i) => daysMoved(key, `horse ${i}`)));
    const counts = new Map<number, number>();
    for (const day of days) counts.set(day, (counts.get(day) ?? 0) + 1);
    expect([...counts.keys()].sort((a, b) => a - b)).toEqual(
      Array.from({ length: 364 }, (_, i) => (i < 182 ? i - 182 : i - 181)),
    );
    // Chi-squared with 363 degrees of freedom is below 466 in all but 2 of 10,000 cases.
    expect([...counts.values()].reduce((sum, count) => sum + (count - 100) ** 2 / 100, 0)).toBeLessThan(466);
  });
});

/** Rows of two sheets side by side, found by what names them. */
async function matched(before: Sheet, after: Sheet, dates: readonly string[], others: readonly string[]) {
  const names = (before.column('horse_id') as TextColumn).levels;
  const standIns = await Promise.all(names.map((name) => pseudonym(key, 'horse_id', name)));
  const days = await Promise.all(names.map((name) => daysMoved(key, name)));
  const codes = (before.column('horse_id') as TextColumn).codes;
  const word = (sheet: Sheet, name: string, row: number) => {
    const column = sheet.column(name);
    return column instanceof TextColumn ? column.at(row) : String(column.values[row]);
  };
  const places = new Map(
    Array.from({ length: after.rows }, (_, row) => {
      const day = (name: string) => after.column(name).values[row] as number;
      return [
        [word(after, 'horse_id', row), ...dates.map(day), ...others.map((name) => word(after, name, row))].join(),
        row,
      ];
    }),
  );
  return Array.from({ length: before.rows }, (_, row) => {
    const day = (name: string) => (before.column(name).values[row] as number) + days[codes[row]];
    return places.get(
      [standIns[codes[row]], ...dates.map(day), ...others.map((name) => word(before, name, row))].join(),
    );
  });
}

describe('tables for a pool', () => {
  it('give the same computed columns as the tables of the yard: of feet and intervals to the last digit, means of a horse but for the order in which they add up', async () => {
    const { tables } = await pooled(demo, key);
    const [before, after] = [herd(demo), herd(tables)];
    for (const [sheet, dates, others] of [
      ['feet', ['date'], ['limb', 'moment', 'repeat']],
      ['intervals', ['start_date', 'end_date'], ['limb']],
      ['horses', [], []],
    ] as const) {
      const [one, two] = [before[sheet], after[sheet]];
      expect(two.rows).toBe(one.rows);
      const rows = await matched(one, two, dates, others);
      expect(rows).not.toContain(undefined);
      const compared = one.names.filter((name) => {
        const column = one.column(name);
        return column.kind !== 'date' && !contextOf(name)?.naming && !['method', 'use'].includes(name);
      });
      expect(compared.length).toBeGreaterThan(10);
      for (const name of compared) {
        const [was, is] = [one.column(name).values, two.column(name).values];
        rows.forEach((row, at) => {
          const value = was[at];
          if (sheet === 'horses' && typeof value === 'number' && !Number.isNaN(value))
            expect(is[row!], name).toBeCloseTo(value, 12);
          else expect(is[row!], name).toBe(value);
        });
      }
    }
  });

  const name = fc.string({ unit: 'grapheme', minLength: 2, maxLength: 12 }).map((end) => `Zq${end.trim()}ǂ`);
  const row = fc.record({
    horse: fc.nat(5),
    day: fc.integer({ min: 0, max: 2000 }),
    limb: fc.constantFrom('LF', 'RF', 'LH', 'RH'),
    angle: fc.integer({ min: 400, max: 600 }).map((tenths) => tenths / 10),
    free: name,
    who: name,
  });

  it('hold no name, no free text and no heading that nobody knows, in any file', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(name, { minLength: 6, maxLength: 6 }),
        name,
        fc.array(row, { minLength: 1, maxLength: 12 }),
        async (horses, heading, rows) => {
          const words = (of: (row: (typeof rows)[number]) => string) => TextColumn.from(rows.map(of));
          const date = { kind: 'date' as const, values: Float64Array.from(rows, ({ day }) => 20_000 + day) };
          const who = words((one) => one.who);
          const free = words((one) => one.free);
          const horse_id = words((one) => horses[one.horse]);
          const tables: PoolTables = {
            feet: {
              ...{ horse_id, date, limb: words((one) => one.limb), observer: who, method: free, view_quality: free },
              ...{ vet: who, notes: free, [heading]: free, [`owner ${heading}`]: who },
              toe_angle_deg: { unit: 'deg', values: Float64Array.from(rows, ({ angle }) => angle) },
            },
            horses: {
              horse_id: TextColumn.from(horses),
              build: TextColumn.from(horses),
              yard: TextColumn.from(horses),
            },
            visits: { horse_id, date, farrier: who, work: free },
          };
          const pool = await pooled(tables, key);
          const files = pooledFiles(pool);
          expect(files.map((file) => file.name)).toContain('visits.csv');
          const all = files.map((file) => file.name + file.contents).join('\n');
          for (const secret of [...horses, heading, ...rows.flatMap((one) => [one.free, one.who]), digits])
            expect(all).not.toContain(secret);
          expect(Object.keys(pool.tables.feet)).toEqual([
            ...['horse_id', 'date', 'limb', 'observer', 'method', 'view_quality', 'vet', 'toe_angle_deg'],
          ]);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('keep every gap between the days of a horse, in all tables alike, and every reading', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 12 }), async (rows) => {
        const horse_id = TextColumn.from(rows.map(({ horse }) => `Zq${horse}`));
        const date = { kind: 'date' as const, values: Float64Array.from(rows, ({ day }) => 20_000 + day) };
        const values = Float64Array.from(rows, ({ angle }) => angle);
        const feet = { horse_id, date, limb: TextColumn.from(rows.map(({ limb }) => limb)), toe_angle_deg: { values } };
        const { tables } = await pooled({ feet, visits: { horse_id, date } }, key);
        const sorted = (list: readonly (readonly [string, number, number])[]) => list.map(String).sort();
        const expected = await Promise.all(
          rows.map(async ({ horse, day, angle }) => {
            const moved = 20_000 + day + (await daysMoved(key, `Zq${horse}`));
            return [await pseudonym(key, 'horse_id', `Zq${horse}`), moved, angle] as const;
          }),
        );
        const horses = text(tables.feet, 'horse_id');
        const [days, angles] = ['date', 'toe_angle_deg'].map(
          (name) => toColumn(tables.feet[name]).values as Float64Array,
        );
        expect(sorted(horses.map((horse, i) => [horse, days[i], angles[i]]))).toEqual(sorted(expected));
        const visits = toColumn(tables.visits!.date).values as Float64Array;
        expect([...visits].sort()).toEqual([...days].sort());
      }),
      { numRuns: 60 },
    );
  });

  it('join under the same key and not under another', async () => {
    const horses = async (digits: string) =>
      text((await pooled(demo, await openPoolKey(digits))).tables.horses!, 'horse_id');
    expect(await horses(digits)).toEqual(await horses(digits));
    const others = new Set(await horses(newPoolKey()));
    expect((await horses(digits)).some((name) => others.has(name))).toBe(false);
  });

  it('stand in the order of pseudonyms and days, repeats of a day in their own', async () => {
    const csv =
      'horse,date,limb,toe angle\nBella,2026-03-09,LF,52\nAda,2026-03-09,LF,50\nBella,2026-03-09,LF,53\n,2026-03-09,LF,51\n';
    const pool = await pooled({ feet: read('feet', csv) }, key);
    const horses = text(pool.tables.feet, 'horse_id');
    expect(horses).toEqual([...horses].sort());
    const bella = await pseudonym(key, 'horse_id', 'Bella');
    const angles = toColumn(pool.tables.feet.toe_angle_deg).values as Float64Array;
    expect([...angles].filter((_, row) => horses[row] === bella)).toEqual([52, 53]);
    expect(pool.rowsLeftOut).toBe(1);
    expect(isoFromDays((pool.tables.feet.date.values as Float64Array)[0])).not.toBe('2026-03-09');
  });
});

describe('choices for a pool', () => {
  const csv = 'horse,date,limb,paddock,diet,born on,toe angle,work\nBella,2026-03-09,LF,north,hay,2015-05-01,52,trim\n';
  const feet = (): Columns => {
    const columns = read('feet', csv);
    return { ...columns, 'born on': { kind: 'date', values: Float64Array.of(daysFromIso('2015-05-01')) } };
  };

  it('name what is left out, and keep of it what is wished; dates are moved then too', async () => {
    expect(leftOutOfPool({ feet: feet() })).toEqual(['paddock', 'diet', 'born on']);
    const { tables } = await pooled({ feet: feet() }, key, { keep: ['diet', 'born on'], leaveOut: ['toe_angle_deg'] });
    expect(Object.keys(tables.feet)).toEqual(['horse_id', 'date', 'limb', 'diet', 'born on', 'work']);
    expect(text(tables.feet, 'diet')).toEqual(['hay']);
    const moved = daysFromIso('2015-05-01') + (await daysMoved(key, 'Bella'));
    expect([...tables.feet['born on'].values]).toEqual([moved]);
  });

  it.each([
    [{ keep: ['sadle'] }, 'There is no column sadle'],
    [{ keep: ['horse_id'] }, 'names someone'],
    [{ leaveOut: ['date'] }, 'nothing without its column date'],
  ])('that can’t be followed are refused in words: %j', async (choices, words) => {
    await expect(pooled({ feet: feet() }, key, choices)).rejects.toThrow(words);
  });
});
