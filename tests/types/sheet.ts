// Compiled, not run: what TypeScript must take and what it must refuse. Each refusal says why.
import { FootSheet } from '../../lib/hoof/footSheet.ts';
import type { Column, NumberColumn, TextColumn } from '../../lib/sheet/column.ts';
import { type ColumnDescription, Sheet } from '../../lib/sheet/sheet.ts';
import type { Table } from '../../lib/sheet/table.ts';

const sheet = Sheet.from({ horse: { values: ['Ada'] }, toe: { unit: 'deg', values: Float64Array.of(50) } }, ['horse']);

// A column is what was handed in.
const toe: NumberColumn = sheet.column('toe');
const horse: TextColumn = sheet.column('horse');
// @ts-expect-error a text column has texts, no numbers
const numbers: Float64Array = sheet.column('horse').values;
// @ts-expect-error there is no column of that name
sheet.column('tow');
// @ts-expect-error a key is one of the columns
Sheet.from({ toe: { values: Float64Array.of(1) } }, ['heel']);
// @ts-expect-error values are a Float64Array or texts
Sheet.from({ toe: { values: [1, 2] } });

// Names are checked wherever one is written.
sheet
  .set('toe', 0, 51)
  .fill('toe', [0], null)
  .addRows([{ horse: 'Bo' }]);
// @ts-expect-error there is no column of that name
sheet.set('tow', 0, 51);
// @ts-expect-error there is no column of that name
sheet.fill('tow', [0], 51);
// @ts-expect-error a cell is a number, a text or null
sheet.set('toe', 0, true);
// @ts-expect-error there is no column of that name
sheet.addRows([{ tow: 51 }]);
// @ts-expect-error there is no column of that name
sheet.remove('tow');
// @ts-expect-error there is no column of that name
sheet.rename('tow', 'toe');
// @ts-expect-error there is no column of that name
sheet.rowsWhere({ sort: { by: 'tow' } });
// @ts-expect-error there is no column of that name
sheet.groups(['tow']);
// @ts-expect-error there is no column of that name
sheet.lineage('tow', 0);
// @ts-expect-error there is no column of that name
const description: ColumnDescription = sheet.describe('tow');

// A column that was added is known from then on.
const more = sheet.add({ name: 'doubled', formula: 'toe * 2' }).addMeasured('heel', { values: Float64Array.of(40) });
const doubled: Column = more.column('doubled');
const heel: NumberColumn = more.column('heel');
more.set('heel', 0, 41).replace({ name: 'doubled', formula: 'toe + toe' });
// @ts-expect-error whether a formula gives numbers or text is known only when it runs
const known: NumberColumn = more.column('doubled');
// @ts-expect-error the sheet as it was known before doesn't have it
sheet.column('doubled');

// A sheet of feet is a sheet, a sheet is a table, and a plain `Sheet` takes any name.
const feet = FootSheet.from({ horse_id: { values: ['Ada'] }, toe: { values: Float64Array.of(50) } }, ['horse_id']);
const angle: NumberColumn = feet.column('toe');
// @ts-expect-error there is no column of that name
feet.column('tow');
const plain: Sheet = feet;
const plainer: Sheet = more;
const table: Table = sheet;
const any: Column = plain.set('whatever', 0, 1).add({ name: 'x', formula: '1' }).column('anything');

export const used = { toe, horse, numbers, description, doubled, heel, known, angle, plainer, table, any };
