import { afterEach, describe, expect, it, vi } from 'vitest';
import { TextColumn } from '../../lib/sheet/column.ts';
import { copyReminder } from '../../lib/store/copyReminder.ts';
import type { WholeRecord } from '../../lib/store/recordFiles.ts';
import { recordFiles, recordOfFiles } from '../../lib/store/recordFiles.ts';
import { canKeepFolder, chooseFolder, type FolderHandle, RecordFolder } from '../../lib/store/recordFolder.ts';

/** A folder in memory, which shows a file only once it is closed, as the browser's does. */
function folder(
  files = new Map<string, Uint8Array>(),
  within = '',
): FolderHandle & { files: typeof files; log: string[] } {
  const log: string[] = [];
  return {
    files,
    log,
    name: 'yard',
    getDirectoryHandle: async (name) => folder(files, `${within}${name}/`),
    getFileHandle: async (name) => ({
      createWritable: async () => {
        let content = new Uint8Array();
        return {
          write: async (bytes) => {
            content = Uint8Array.from(bytes);
          },
          close: async () => {
            files.set(within + name, content);
            log.push(within + name);
          },
        };
      },
    }),
  };
}

const record = (angle: number): WholeRecord => ({
  name: 'North yard',
  tables: {
    feet: {
      columns: { horse_id: TextColumn.from(['Bella']), toe_angle_deg: { unit: 'deg', values: Float64Array.of(angle) } },
      ...{ problems: [], file: 'feet.csv' },
    },
  },
  journal: [],
  photographs: new Map([['a.jpg', Uint8Array.of(1)]]),
});

describe('a folder kept up to date', () => {
  it('holds the files of the record, photographs in a folder of their own, and reads back as the record', async () => {
    const disk = folder();
    await new RecordFolder(disk).keep(record(52));
    expect(disk.files).toEqual(recordFiles(record(52)));
    expect([...recordOfFiles(disk.files).tables.feet!.columns.toe_angle_deg.values]).toEqual([52]);
  });

  it('writes only what has changed, and what says how to read it last', async () => {
    const disk = folder();
    const kept = new RecordFolder(disk);
    await kept.keep(record(52));
    expect(disk.log.at(-1)).toBe('record.json');
    disk.log.length = 0;
    expect(await kept.keep(record(52))).toBe(0);
    expect(await kept.keep(record(53))).toBe(1);
    expect(disk.log).toEqual(['feet.csv']);
  });

  it('writes the last of several that come at once', async () => {
    const disk = folder();
    const kept = new RecordFolder(disk);
    await Promise.all([kept.keep(record(52)), kept.keep(record(53)), kept.keep(record(54))]);
    expect(disk.files).toEqual(recordFiles(record(54)));
    expect(disk.log.filter((name) => name === 'feet.csv')).toHaveLength(1);
  });

  it('says that it may no longer be written in, and goes on where it may again', async () => {
    const disk = folder();
    const { getFileHandle } = disk;
    const kept = new RecordFolder(disk);
    disk.getFileHandle = () => Promise.reject(new DOMException('Denied', 'NotAllowedError'));
    await expect(kept.keep(record(52))).rejects.toThrow('Denied');
    disk.getFileHandle = getFileHandle;
    await kept.keep(record(52));
    expect(disk.files.has('feet.csv')).toBe(true);
  });
});

describe('asking for a folder', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('is offered only where the browser has it', async () => {
    expect(canKeepFolder()).toBe(false);
    const disk = folder();
    vi.stubGlobal('showDirectoryPicker', async () => disk);
    expect(canKeepFolder()).toBe(true);
    expect(await chooseFolder()).toBe(disk);
  });

  it('is no failure where none is chosen', async () => {
    vi.stubGlobal('showDirectoryPicker', () => Promise.reject(new DOMException('', 'AbortError')));
    expect(await chooseFolder()).toBeUndefined();
    vi.stubGlobal('showDirectoryPicker', () => Promise.reject(new DOMException('no', 'SecurityError')));
    await expect(chooseFolder()).rejects.toThrow('no');
  });
});

describe('copyReminder', () => {
  const day = 86_400_000;
  it.each([
    ['a new record', { begun: 0, changed: 13 * day }, 13 * day, undefined],
    ['one never copied', { begun: 0, changed: day }, 15 * day, 'No copy of this record has been saved yet'],
    ['one unchanged since its copy', { begun: 0, changed: 3 * day, copied: 4 * day }, 400 * day, undefined],
    ['a young copy', { begun: 0, changed: 90 * day, copied: 80 * day }, 93 * day, undefined],
    ['an old copy', { begun: 0, changed: 90 * day, copied: 69 * day }, 92 * day, 'is 3 weeks old'],
    ['a very old copy', { begun: 0, changed: 190 * day, copied: 80 * day }, 191 * day, 'is 3 months old'],
    ['a clock that was set back', { begun: 50 * day, changed: 60 * day, copied: 55 * day }, 10 * day, undefined],
  ])('%s', (_, times, now, words) => {
    const said = copyReminder(times, now);
    if (words === undefined) expect(said).toBeUndefined();
    else expect(said).toContain(words);
  });
});
