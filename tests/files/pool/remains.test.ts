import { describe, expect, it } from 'vitest';
import { pooled } from '../../../lib/files/pool/pooled.ts';
import { openPoolKey } from '../../../lib/files/pool/poolKey.ts';
import { pseudonym } from '../../../lib/files/pool/pseudonym.ts';
import { remains } from '../../../lib/files/pool/remains.ts';
import { remainsInWords } from '../../../lib/files/pool/remainsInWords.ts';
import { readTable } from '../../../lib/files/readTable.ts';

const key = await openPoolKey('5a'.repeat(32));
const read = (schema: 'feet' | 'horses' | 'visits', csv: string) => readTable(csv, { schema }).columns;

const feet = read(
  'feet',
  `horse,date,limb,toe angle,toe length,observer
Ada,2026-01-01,LF,52,80,Tom
Ada,2026-02-10,LF,52,80,Tom
Ben,2026-01-05,LF,51,82,Tom
Ben,2026-02-14,LF,51,82,Tom
Cob,2026-01-05,LF,50,84,Tom
Cob,2026-02-15,LF,50,84,Tom
Dot,2026-01-05,LF,49,86,Ida
Elk,2026-01-05,LF,48,120,Tom
`,
);
const horses = read(
  'horses',
  'horse,born,build,weight kg,diet\nAda,2010,pony,401,hay\nBen,2010,pony,399,hay\nCob,2011,pony,420,hay\nDot,2011,heavy,760,hay|grass\n',
);
const visits = read(
  'visits',
  'horse,date,farrier,work\nAda,2026-03-01,M. Alder,trim\nBen,2026-03-05,M. Alder,own way\n',
);
const all = await pooled({ feet, horses, visits }, key, { keep: ['diet'] });
const named = (horse: string) => pseudonym(key, 'horse_id', horse);

describe('what still identifies in pooled tables', () => {
  it('is counted by what people may know, sizes as closely as one may guess them', async () => {
    const { horses: order, known, standings } = remains(all);
    const of = async (column: string, horse: string) => known[column][order.indexOf(await named(horse))];
    expect([await of('weight_kg', 'Ada'), await of('weight_kg', 'Ben'), await of('birth_year', 'Cob')]).toEqual([
      ...['400 kg', '400 kg', '2011'],
    ]);
    const by = (...columns: string[]) => standings.find((one) => one.columns.join() === columns.join())!;
    expect(by('build').alone.map((row) => order[row])).toEqual([await named('Dot')]);
    expect(by('birth_year').alone).toEqual([]);
    expect(by('birth_year', 'build').alone).toHaveLength(2);
  });

  it('are sequences of gaps like no other, values far from others, and people with one horse', async () => {
    const { gaps, far, named: people } = remains(all);
    // Ada and Ben have the same gaps of 40 and 19 days, Cob 41; the other two have one day each.
    expect(gaps).toEqual({ horses: 3, alone: 1 });
    expect(far.map(({ horse, column, value, middle }) => [horse, column, value, middle])).toEqual([
      [await named('Elk'), 'toe_length_mm', 120, 84],
    ]);
    expect(people).toEqual([
      { table: 'feet', name: 'observer', names: 2, withOneHorse: 1 },
      { table: 'visits', name: 'farrier', names: 1, withOneHorse: 0 },
    ]);
  });

  it('is told in words, with what was done, and never by a name or a heading that was left out', async () => {
    const text = remainsInWords(all);
    expect(text).toContain('`feet.horse_id`, `feet.observer`');
    expect(text).toContain('(texts taken out: 1)');
    expect(text).toContain('| Year of birth and Build | 4 | 2 | 2 |');
    expect(text).toContain(`- ${await named('Dot')}: diet hay grass`);
    expect(text).toContain(`${await named('Elk')}: toe length 120.0 mm, the middle of all horses 84.0 mm`);
    expect(text).toContain('with more than one day: 3. Of these, with a sequence of gaps like no other here: 1.');
    for (const name of ['Ada', 'Alder', 'Tom', 'own way']) expect(text).not.toContain(name);
    const without = remainsInWords(await pooled({ feet: { ...feet, 'Ada’s saddle': feet.observer } }, key));
    expect(without).toContain('**Columns left out**, as nobody knows what may stand in them: 1');
    expect(without).not.toContain('saddle');
    expect(without).toContain('say nothing else of their 5 horses');
  });
});
