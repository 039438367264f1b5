import type { VNode } from 'preact';
import {
  changePages,
  foundRecord,
  type KeptTables,
  mergedPages,
  mergeInto,
  newRecord,
  type OpenRecord,
  say,
  type TableName,
} from '../../lib/index.ts';
import { GuidedImport } from './GuidedImport.tsx';
import { inUse, show, tableNames, useOwn, withoutFeet } from './herdInUse.ts';
import { type MergeDecision, MergeOffer } from './MergeOffer.tsx';
import { openFiles, type Questions } from './openFiles.ts';
import { takePhotographs } from './photographs.ts';
import { type RecordDecision, RecordOffer } from './RecordOffer.tsx';

/** Shows a question and waits for its answer. */
export type Ask = <Answer>(question: (answer: (said: Answer) => void) => VNode) => Promise<Answer>;

/**
 * Takes files in, however much has to be asked: into the record in use, or as a record of their own.
 * @returns what became of them, in words; `undefined` where a question was left unanswered
 * @throws Error in words for the reader
 */
export async function takeIn(files: readonly File[], ask: Ask, dates: Questions['dates']): Promise<string | undefined> {
  const opened = await openFiles(files, {
    dates,
    guided: (sheets) => ask((answer) => <GuidedImport sheets={sheets} answer={answer} />),
  });
  if (!opened) return undefined;
  const names = files.map(({ name }) => name).join(', ');
  const own = ownRecord();
  if (opened.kind === 'tables') return takeTables(opened.tables, names, own, ask);
  const { record, file } = opened;
  const decision = await ask<RecordDecision>((answer) => (
    <RecordOffer file={file} record={record} own={own?.info.name} answer={answer} />
  ));
  if (decision === undefined) return undefined;
  if (decision === 'merge' && record.photographs) await takePhotographs(record.photographs);
  const { name, tables, journal, earlier, pages = [] } = record;
  if (decision === 'merge') {
    const said = await takeTables(tables, names, own, ask);
    if (said !== undefined && pages.length > 0) {
      await changePages(own!.info.id, (ours) => mergedPages(ours, pages));
      await show();
    }
    return said;
  }
  const invented = Object.values(tables).some((table) => table.invented);
  const info = { ...newRecord(name || file, invented), ...(pages.length > 0 && { pages }) };
  await foundRecord(info, tables, journal, earlier);
  if (record.photographs) await takePhotographs(record.photographs);
  await show();
  return say`${names} opened as a record of its own.`;
}

/** The reader's own record that is shown, or waits for its feet. */
export function ownRecord(): OpenRecord | undefined {
  const shown = inUse.value?.record;
  return withoutFeet.value ?? (shown?.info.invented ? undefined : shown);
}

async function takeTables(
  theirs: KeptTables,
  names: string,
  own: OpenRecord | undefined,
  ask: Ask,
): Promise<string | undefined> {
  const ours = own?.tables() ?? {};
  const both = tableNames.filter((name) => ours[name] && theirs[name]);
  if (!own || both.length === 0) {
    await useOwn(theirs);
    return say`${names} opened.`;
  }
  const decision = await ask<MergeDecision | undefined>((answer) => (
    <MergeOffer from={names} ours={ours} theirs={theirs} answer={answer} />
  ));
  if (decision === undefined) return undefined;
  if (decision === 'replace') {
    await useOwn(theirs);
    return say`${names} opened in place of what was there.`;
  }
  for (const name of both) {
    const choices = decision[name];
    if (choices) mergeInto(own.table(name)!, name, theirs[name]!, choices, `merging ${theirs[name]!.file}`);
  }
  await own.settled();
  const fresh = tableNames.filter((name) => theirs[name] && !ours[name]);
  if (fresh.length > 0) await useOwn(only(theirs, fresh));
  // What is shown follows the feet by itself, and they can be taken back.
  else if (both.some((name) => name !== 'feet')) await show();
  return say`${names} merged.`;
}

const only = (tables: KeptTables, names: readonly TableName[]): KeptTables =>
  Object.fromEntries(names.map((name) => [name, tables[name]]));
