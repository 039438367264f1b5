import { useEffect, useReducer } from 'preact/hooks';
import type { SheetBlock } from '../blocks.ts';
import type { Editing } from './editing.ts';

/** A number that grows with every change of a sheet or of what is kept of it, so that what is drawn follows. */
export function useRevision(sheet: SheetBlock['sheet'], editing: Editing | undefined): number {
  const [revision, grow] = useReducer((times: number, _: undefined) => times + 1, 0);
  useEffect(() => sheet.subscribe(() => grow(undefined)), [sheet]);
  useEffect(() => editing?.subscribe(() => grow(undefined)), [editing]);
  return revision;
}
