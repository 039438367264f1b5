import { type Download, type SheetBlock, writeTable } from '../../lib/index.ts';

/** What can be taken away of a table: the rows and columns shown, as tidy CSV, and the dictionary beside it. */
export function tableFiles({ name, title, sheet, columns, rows }: SheetBlock): Download[] {
  return [
    {
      kind: 'download',
      label: `Save ${title} as tidy CSV`,
      filename: `${name}.csv`,
      type: 'text/csv',
      contents: () => writeTable(sheet, { columns, rows }),
    },
  ];
}
