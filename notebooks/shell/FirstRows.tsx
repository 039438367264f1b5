import {
  BlockList,
  type Columns,
  describeColumn,
  type PlannedRead,
  Sheet,
  SurroundingsContext,
  say,
  type TableName,
  TextColumn,
} from '../../lib/index.ts';
import { units } from './displayUnits.ts';

const shown = 8;

/** The first rows of a table as they would be read. */
export function FirstRows({ read, table }: { read: PlannedRead; table: TableName }) {
  const columns: Columns = Object.create(null);
  for (const [name, column] of Object.entries(read.columns)) {
    const part =
      column instanceof TextColumn
        ? new TextColumn(column.codes.slice(0, shown), column.levels)
        : { ...column, values: column.values.slice(0, shown) };
    columns[name] = {
      ...part,
      values: part.values,
      ...(describeColumn(name).title && { title: describeColumn(name).title }),
    };
  }
  const surroundings = { units: units.value, still: false, set: () => {}, files: () => [] };
  return (
    <SurroundingsContext.Provider value={surroundings}>
      <BlockList
        blocks={[
          {
            ...{ kind: 'sheet', name: 'first-rows', title: say`The first rows, as they are read` },
            caption: say`One row is one of the table of ${table}.`,
            sheet: Sheet.from(columns),
          },
        ]}
      />
    </SurroundingsContext.Provider>
  );
}
