import { describe, expect, it } from 'vitest';
import { footFacts } from '../../lib/hoof/footFacts.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';

const number = (...values: number[]) => ({ values: Float64Array.from(values) });
const none = Number.NaN;

describe('the facts of a foot', () => {
  const table = plainTable({
    horse_id: { values: ['Kit', 'Bella', ''] },
    limb: { values: ['LF', 'RH', ''] },
    moment: { values: ['after', 'before', ''] },
    build: { values: ['cob', '', ''] },
    // 2026-03-09 and the last day of 2025.
    date: number(20521, 20453, none),
    readings: number(3, none, none),
    shod: number(1, 0, none),
    body_weight_kg: number(500, none, none),
    birth_year: number(2015, 2020, none),
    therapeutic: number(1, 0, none),
    poorly_seen: number(1, 0, none),
  });
  const facts = (row: number) => footFacts(table)(row);

  it('are all that its row says', () => {
    expect(facts(0)).toEqual({
      ...{ horse: 'Kit', limb: 'LF', date: 20521, moment: 'after', readings: 3, build: 'cob', shod: true },
      ...{ weightKg: 500, age: 11, therapeutic: true, poorlySeen: true },
    });
  });

  it('are left out where nobody knows, and a foot is taken as read once', () => {
    expect(facts(1)).toEqual({
      ...{ horse: 'Bella', limb: 'RH', date: 20453, moment: 'before', readings: 1, build: undefined, shod: false },
      ...{ weightKg: undefined, age: 5, therapeutic: false, poorlySeen: false },
    });
    expect(facts(2)).toMatchObject({ shod: undefined, age: undefined, therapeutic: false, poorlySeen: false });
  });

  it('can be read of a table that has hardly a column', () => {
    const bare = footFacts(
      plainTable({ horse_id: { values: ['Kit'] }, limb: { values: ['LF'] }, date: number(20521) }),
    );
    expect(bare(0)).toEqual({
      ...{ horse: 'Kit', limb: 'LF', date: 20521, moment: '', readings: 1, build: undefined, shod: undefined },
      ...{ weightKg: undefined, age: undefined, therapeutic: false, poorlySeen: false },
    });
  });
});
