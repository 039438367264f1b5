import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import { isKeptPage, type KeptPage, mergedPages, pagesWith } from '../../lib/store/keptPage.ts';
import { newRecord, recordInUse } from '../../lib/store/recordInUse.ts';
import { changePages, deleteRecord, foundRecord, listRecords, renameRecord } from '../../lib/store/records.ts';

const toes: KeptPage = { title: 'Toes', controls: { table: 'occasions', column: 'toe_angle_deg' } };
const heels: KeptPage = { title: 'Heels', controls: { table: 'occasions', column: 'heel_angle_deg' } };
const otherToes: KeptPage = { ...toes, controls: { ...toes.controls, column: 'toe_length_mm' } };

describe('pages that are kept', () => {
  it('have titles of their own: one of the same title takes the other’s place', () => {
    expect(pagesWith([toes, heels], otherToes)).toEqual([otherToes, heels]);
    expect(pagesWith([heels], toes)).toEqual([heels, toes]);
    expect(pagesWith([heels], toes, 0)).toEqual([toes, heels]);
  });

  it('of two records come together: the same once, another of the same title beside it', () => {
    const both = mergedPages([toes], [toes, otherToes, heels]);
    expect(both).toEqual([toes, { ...otherToes, title: 'Toes (2)' }, heels]);
    expect(mergedPages(both, [toes, otherToes, heels])).toEqual(both);
  });

  it.each([null, 'Toes', { title: 'Toes' }, { title: 'Toes', controls: null }, { title: 'Toes', controls: { by: 1 } }])(
    'are nothing else that a file may hold: %j',
    (value) => {
      expect(isKeptPage(value)).toBe(false);
    },
  );
});

describe('the pages of a record', () => {
  it('stay with it through a new name, and are gone without a trace when the last is removed', async () => {
    const info = newRecord('Barn');
    await foundRecord(info, {});
    await changePages(info.id, (pages) => pagesWith(pages, toes));
    await renameRecord(info.id, 'Yard');
    await changePages(info.id, (pages) => pagesWith(pages, heels));
    expect(await recordInUse()).toEqual({ ...info, name: 'Yard', pages: [toes, heels] });
    await changePages(info.id, () => []);
    expect(await listRecords()).toEqual([{ ...info, name: 'Yard' }]);
  });

  it('changed on two pages of the notebook at once are both kept', async () => {
    const info = newRecord('Barn');
    await foundRecord(info, {});
    await Promise.all([toes, heels].map((page) => changePages(info.id, (pages) => pagesWith(pages, page))));
    expect((await recordInUse())?.pages).toEqual([toes, heels]);
  });

  it('are not kept in a record that was deleted', async () => {
    const info = newRecord('Barn');
    await foundRecord(info, {});
    await deleteRecord(info.id);
    await expect(changePages(info.id, () => [toes])).rejects.toThrow('deleted');
    expect((await listRecords()).some(({ id }) => id === info.id)).toBe(false);
  });
});
