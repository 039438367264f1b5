import type { Cell } from '../cell.ts';
import { type Column, TextColumn } from '../column.ts';
import { type Changes, ColumnStage, DeltaBuilder } from './stage.ts';

/** A column whose values are typed in. The arrays that came in are not written to: the first change copies them. */
export class InputStage extends ColumnStage {
  #column: Column;
  #own = false;
  #codes: Map<string, number> | undefined;
  /** By row, what stood there before the changes that nobody has looked at yet. */
  readonly #before = new Map<number, number>();

  constructor(column: Column) {
    super([]);
    this.#column = column;
  }

  get column(): Column {
    return this.#column;
  }

  override get idle(): boolean {
    return !this.fresh && this.#before.size === 0;
  }

  /** Puts a value into a row; it has the column's kind. */
  write(row: number, cell: Cell): void {
    if (!this.#own) this.#copy();
    const column = this.#column;
    const kept = column.kind === 'text' ? column.codes : column.values;
    if (!this.#before.has(row)) this.#before.set(row, kept[row]);
    if (column.kind === 'text') kept[row] = cell === null ? -1 : this.#codeOf(String(cell), column);
    else kept[row] = cell === null ? Number.NaN : Number(cell);
  }

  refresh(): Changes {
    const column = this.#column;
    const kept = column.kind === 'text' ? column.codes : column.values;
    const delta = new DeltaBuilder();
    for (const [row, before] of this.#before) if (!Object.is(before, kept[row])) delta.add(row, before);
    this.#before.clear();
    // The words of a text column are kept with it once asked for; they are stale now.
    if (column.kind === 'text' && delta.changes !== 'none') this.#column = new TextColumn(column.codes, column.levels);
    return delta.changes;
  }

  #copy(): void {
    const column = this.#column;
    this.#column =
      column.kind === 'text'
        ? new TextColumn(column.codes.slice(), [...column.levels])
        : { ...column, values: column.values.slice() };
    this.#own = true;
  }

  #codeOf(word: string, { levels }: TextColumn): number {
    this.#codes ??= new Map(levels.map((level, code) => [level, code]));
    let code = this.#codes.get(word);
    if (code === undefined) {
      code = (levels as string[]).push(word) - 1;
      this.#codes.set(word, code);
    }
    return code;
  }
}
