import { CellStore, type CellStoreOptions } from '../cellStore.ts';
import type { Layout, PartRead } from '../rowReader.ts';
import type { FilePart } from './filePart.ts';
import { NotInPieces, Pieces } from './pieces.ts';

/** Whole lines of a file, whose rows are to be read into cells that two threads see. */
export interface PartTask {
  readonly part: FilePart;
  readonly layout: Layout;
  /** For how many rows there is room in the cells. */
  readonly room: number;
  readonly stores: readonly (CellStoreOptions & Pick<CellStore, 'as' | 'values' | 'codes'>)[];
}

/** Reads the rows of a part; `undefined` where that takes the whole file. */
export function readPart({ part, layout, room, stores }: PartTask): PartRead | undefined {
  const own = stores.map(({ as, values, codes, ...options }) =>
    Object.assign(new CellStore(as, options), { values, codes }),
  );
  const pieces = new Pieces(part, layout, own);
  pieces.rows.resize(room);
  try {
    pieces.rest();
  } catch (error) {
    if (error instanceof NotInPieces) return undefined;
    throw error;
  }
  const { rows, emptyLines, short, beyond, broken } = pieces.rows;
  const stored = own.map(({ texts, oddRows, oddCodes, quoted }) => ({
    ...{ texts: texts.packed(), oddRows, oddCodes, quoted },
  }));
  return { rows, emptyLines, short, beyond, broken, stores: stored };
}
