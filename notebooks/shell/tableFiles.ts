import { type Download, dataPackage, type SheetBlock, say, writeTable } from '../../lib/index.ts';

/** What can be taken away of a table: the rows and columns shown, as tidy CSV, and the dictionary beside it. */
export function tableFiles({ name, title, caption, sheet, columns = sheet.names, rows }: SheetBlock): Download[] {
  const shown = { names: columns, column: (column: string) => sheet.column(column) };
  const dictionary = () =>
    dataPackage([
      {
        name,
        path: `${name}.csv`,
        title,
        description: caption,
        columns: shown,
        describe: (column) => sheet.describe(column),
      },
    ]);
  return [
    {
      kind: 'download',
      label: say`Save this table as tidy CSV`,
      filename: `${name}.csv`,
      type: 'text/csv',
      contents: () => writeTable(sheet, { columns, rows }),
    },
    {
      kind: 'download',
      label: say`Save its dictionary`,
      filename: `${name}.datapackage.json`,
      type: 'application/json',
      contents: () => `${JSON.stringify(dictionary(), null, 2)}\n`,
    },
  ];
}
