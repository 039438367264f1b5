import { useState } from 'preact/hooks';
import {
  type KeptTable,
  leftOutOfPool,
  newPoolKey,
  type OpenRecord,
  openPoolKey,
  type PoolTables,
  pooled,
  pooledFiles,
  saveFile,
  say,
  zipped,
} from '../../lib/index.ts';

const KEY_FILE = 'pooling-key.txt';

/** Saves the tables under pseudonyms, with days moved, for someone who pools several yards; the key stays with its owner. */
export function PoolPanel({ record }: { record: OpenRecord }) {
  const tables = tablesOf(record);
  const [keep, setKeep] = useState<readonly string[]>([]);
  const [keyFile, setKeyFile] = useState<File | undefined>();
  const [saved, setSaved] = useState<{ readonly words: string; readonly remains: string } | undefined>();
  const [trouble, setTrouble] = useState('');
  const others = leftOutOfPool(tables);

  async function save() {
    setTrouble('');
    try {
      const made = keyFile ? undefined : newPoolKey();
      const key = await openPoolKey(made ?? (await keyFile!.text()));
      const files = pooledFiles(await pooled(tables, key, { keep: keep.filter((name) => others.includes(name)) }));
      const encoder = new TextEncoder();
      const zip = await zipped(files.map(({ name, contents }) => [name, encoder.encode(contents)] as const));
      // Without its key, what is saved could never be joined.
      if (made) saveFile(KEY_FILE, 'text/plain', `${made}\n`);
      saveFile('herd-without-names.zip', 'application/zip', zip);
      setSaved({
        words: made
          ? say`Two files were handed to the browser to save: herd-without-names.zip to hand on, and ${KEY_FILE}, which belongs to you alone. Keep it: with it, the next export gets the same pseudonyms.`
          : say`herd-without-names.zip was handed to the browser to save, under the key that you chose.`,
        remains: files.find(({ name }) => name.endsWith('.md'))!.contents,
      });
    } catch (error) {
      setSaved(undefined);
      setTrouble(error instanceof Error ? error.message : String(error));
    }
  }

  return (
    <div class="records-panel">
      <p>{say`Horses and people get pseudonyms, the days of each horse are moved by a number of its own, up to half a year, so that gaps stay exact and the season is lost. Notes, photographs and columns that nobody knows are left out. What in the tables still identifies is listed with them, and here: read it before you hand them on. They remain personal data.`}</p>
      <label>
        {say`The key of an earlier export, so that both join (without one, a new key is made)`}{' '}
        <input
          type="file"
          accept=".txt,text/plain"
          onChange={(event) => setKeyFile(event.currentTarget.files?.[0] ?? undefined)}
        />
      </label>
      {others.length > 0 && (
        <fieldset class="control">
          <legend>{say`Left out, unless you tick them to be kept as they stand`}</legend>
          <div class="options">
            {others.map((name) => (
              <label key={name}>
                <input
                  type="checkbox"
                  checked={keep.includes(name)}
                  onChange={(event) =>
                    setKeep(event.currentTarget.checked ? [...keep, name] : keep.filter((other) => other !== name))
                  }
                />
                {name}
              </label>
            ))}
          </div>
        </fieldset>
      )}
      <p>
        <button type="button" onClick={save}>{say`Save the tables without names`}</button>
      </p>
      <p role="status">{saved?.words}</p>
      {saved && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: long lines must be scrolled by keyboard too
        <pre tabIndex={0} style={{ maxHeight: '24rem', overflowY: 'auto', whiteSpace: 'pre-wrap' }}>
          {saved.remains}
        </pre>
      )}
      {trouble && <p class="trouble" role="alert">{say`That could not be done: ${trouble}.`}</p>}
    </div>
  );
}

function tablesOf(record: OpenRecord): PoolTables {
  const { feet, horses, visits } = record.tables();
  const columns = (table: KeptTable | undefined) => table?.columns;
  return { feet: feet!.columns, horses: columns(horses), visits: columns(visits) };
}
