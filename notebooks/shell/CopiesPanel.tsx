import { useState } from 'preact/hooks';
import { canKeepFolder, type OpenRecord, say } from '../../lib/index.ts';
import { allowFolder, chooseRecordFolder, folderState, leaveFolder, saveCopy } from './copies.ts';
import { Later } from './Later.tsx';

interface Props {
  readonly record: OpenRecord;
  readonly saved: () => void;
}

/** Saves the whole record as one file, and keeps a folder on the disk up to date where the browser can. */
export function CopiesPanel({ record, saved }: Props) {
  const [photographs, setPhotographs] = useState(false);
  const [said, setSaid] = useState('');
  const [trouble, setTrouble] = useState('');
  async function work(words: string, task: () => Promise<unknown>) {
    setTrouble('');
    setSaid(words);
    try {
      const file = await task();
      setSaid(typeof file === 'string' ? say`${file} was handed to the browser to save.` : '');
    } catch (error) {
      setSaid('');
      setTrouble(error instanceof Error ? error.message : String(error));
    }
  }
  return (
    <div class="records-panel">
      <p>{say`A copy holds the tables as tidy CSV, what stands in them, and every change that was ever made. Open it here or on another device and the record is as it was.`}</p>
      <label>
        <input
          type="checkbox"
          checked={photographs}
          onChange={(event) => setPhotographs(event.currentTarget.checked)}
        />{' '}
        {say`with the photographs on this device`}
      </label>
      <p>
        <button
          type="button"
          onClick={() =>
            work(say`Packing …`, async () => {
              const file = await saveCopy(record, photographs);
              saved();
              return file;
            })
          }
        >{say`Save a copy of the record`}</button>
      </p>
      <Folder record={record} work={work} />
      <Pool record={record} />
      <p role="status">{said}</p>
      {trouble && <p class="trouble" role="alert">{say`That could not be done: ${trouble}.`}</p>}
    </div>
  );
}

function Pool({ record }: Pick<Props, 'record'>) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say`Tables without names, for a pool of several yards`}</summary>
      {open && <Later part={async () => (await import('./PoolPanel.tsx')).PoolPanel} record={record} />}
    </details>
  );
}

interface FolderProps {
  readonly record: OpenRecord;
  readonly work: (words: string, task: () => Promise<unknown>) => Promise<void>;
}

function Folder({ record, work }: FolderProps) {
  const state = folderState.value;
  if (!canKeepFolder())
    return (
      <p class="note">{say`Some browsers on a computer can keep a folder on the disk up to date with the record. This one can’t; save a copy now and then.`}</p>
    );
  const leave = (
    <button type="button" onClick={() => work('', () => leaveFolder(record))}>{say`Keep it no longer`}</button>
  );
  switch (state.kind) {
    case 'none':
      return (
        <p>
          <button
            type="button"
            onClick={() => work('', () => chooseRecordFolder(record))}
          >{say`Keep a folder on the disk up to date`}</button>
        </p>
      );
    case 'waiting':
      return (
        <p>
          {say`The browser wants to be asked again before it writes in the folder ${state.name}.`}{' '}
          <button
            type="button"
            onClick={() => work('', () => allowFolder(record))}
          >{say`Go on with ${state.name}`}</button>{' '}
          {leave}
        </p>
      );
    case 'trouble':
      return (
        <p class="trouble" role="alert">
          {say`The folder ${state.name} is not up to date: ${state.why}.`}{' '}
          <button
            type="button"
            onClick={() => work('', () => chooseRecordFolder(record))}
          >{say`Choose a folder`}</button>{' '}
          {leave}
        </p>
      );
    default:
      return (
        <p role="status">
          {state.kind === 'writing'
            ? say`The folder ${state.name} is being written.`
            : say`The folder ${state.name} is up to date.`}{' '}
          {leave}
        </p>
      );
  }
}
