import { useEffect, useState } from 'preact/hooks';
import {
  chooseRecord,
  deleteRecord,
  foundRecord,
  listRecords,
  newRecord,
  onTold,
  putSetting,
  type RecordInfo,
  renameRecord,
  say,
  setting,
} from '../../lib/index.ts';
import { inUse, show } from './herdInUse.ts';

/** A record with one empty table to type into. */
const empty = () => ({ feet: { columns: {}, problems: [], file: say`typed in here`, opened: 'begun' } });

/** Every record on this device: which one is shown, what they are called; and who types. */
export function RecordsPanel() {
  const [records, setRecords] = useState<readonly RecordInfo[]>([]);
  const [who, setWho] = useState('');
  const [trouble, setTrouble] = useState('');
  const shown = inUse.value?.record?.info.id;

  async function look() {
    setRecords(await listRecords());
    setWho((await setting('who')) ?? '');
  }

  const change = (work: () => Promise<unknown>) =>
    attempt(async () => {
      await work();
      await show();
      await look();
    });

  async function attempt(work: () => Promise<unknown>) {
    try {
      await work();
      setTrouble('');
    } catch (error) {
      setTrouble(
        say`That could not be done in this browser: ${error instanceof Error ? error.message : String(error)}`,
      );
    }
  }

  useEffect(() => {
    attempt(look);
    return onTold(({ kind }) => kind === 'records' && look());
  }, [shown]);
  return (
    <div class="records-panel">
      {records.length === 0 && <p>{say`No record of your own yet.`}</p>}
      <ul>
        {records.map((info) => (
          <OneRecord key={info.id} info={info} shown={info.id === shown} change={change} />
        ))}
      </ul>
      <NameForm
        label={say`Begin a new record, called`}
        button={say`Begin it`}
        onName={(name) => change(() => foundRecord(newRecord(name), empty()))}
      />
      <NameForm
        key={who}
        label={say`Your name, for the history`}
        button={say`Remember it`}
        value={who}
        onName={(name) =>
          change(async () => {
            await putSetting('who', name);
            inUse.value?.record?.signedBy(name);
          })
        }
      />
      {trouble && (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}

interface OneProps {
  readonly info: RecordInfo;
  readonly shown: boolean;
  readonly change: (work: () => Promise<unknown>) => Promise<void>;
}

function OneRecord({ info, shown, change }: OneProps) {
  const { id, name, invented } = info;
  const [doing, setDoing] = useState<'' | 'rename' | 'delete' | 'really delete'>('');
  return (
    <li>
      <strong>{name}</strong>
      {invented && say` (invented horses)`} {shown && <span class="note">{say`shown now`} </span>}
      {!shown && <button type="button" onClick={() => change(() => chooseRecord(id))}>{say`Show ${name}`}</button>}{' '}
      <button type="button" onClick={() => setDoing('rename')}>{say`Rename ${name}`}</button>{' '}
      <button type="button" onClick={() => setDoing('delete')}>{say`Delete ${name}`}</button>
      {doing === 'rename' && (
        <NameForm
          label={say`Its new name`}
          button={say`Rename it`}
          value={name}
          onName={(to) => change(() => renameRecord(id, to)).then(() => setDoing(''))}
        />
      )}
      {(doing === 'delete' || doing === 'really delete') && (
        <p role="alert" class="asked">
          {doing === 'delete'
            ? say`Delete ${name}, with every change that was ever made in it?`
            : say`There is no way back, unless you have saved it as files. Really delete ${name}?`}{' '}
          <button
            type="button"
            onClick={() => (doing === 'delete' ? setDoing('really delete') : change(() => deleteRecord(id)))}
          >
            {doing === 'delete' ? say`Yes, delete it` : say`Yes, delete it for good`}
          </button>{' '}
          <button type="button" onClick={() => setDoing('')}>{say`No, keep it`}</button>
        </p>
      )}
    </li>
  );
}

interface NameProps {
  readonly label: string;
  readonly button: string;
  readonly value?: string;
  readonly onName: (name: string) => void;
}

function NameForm({ label, button, value = '', onName }: NameProps) {
  const [name, setName] = useState(value);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (name.trim()) onName(name.trim());
      }}
    >
      <label>
        {label} <input value={name} maxLength={80} onInput={(event) => setName(event.currentTarget.value)} />
      </label>{' '}
      <button type="submit">{button}</button>
    </form>
  );
}
