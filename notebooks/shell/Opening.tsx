import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { say } from '../../lib/index.ts';
import { inUse } from './herdInUse.ts';
import type { DateOrder } from './openFiles.ts';
import type { Ask } from './takeIn.tsx';

/**
 * Opens the reader's own files, chosen or dropped anywhere on the page. With `children` it is folded on a phone once there
 * is an own herd; what became of the files is said outside of the fold.
 */
export function Opening({ children }: { children: ComponentChildren }) {
  const [said, setSaid] = useState('');
  const [trouble, setTrouble] = useState('');
  const [question, setQuestion] = useState<VNode | undefined>();
  const [over, setOver] = useState(false);
  const chooser = useRef<HTMLInputElement>(null);

  const ask: Ask = (asked) =>
    new Promise((resolve) => {
      setQuestion(
        asked((answer) => {
          setQuestion(undefined);
          // The question that had the focus is gone.
          chooser.current?.focus();
          resolve(answer);
        }),
      );
    });
  const dates = (file: string) => ask<DateOrder | undefined>((answer) => <DatesQuestion file={file} answer={answer} />);

  async function open(files: readonly File[]) {
    if (files.length === 0) return;
    setTrouble('');
    setSaid(say`Reading …`);
    try {
      const { takeIn } = await import('./takeIn.tsx');
      setSaid((await takeIn(files, ask, dates)) ?? '');
    } catch (error) {
      setSaid('');
      setTrouble(error instanceof Error ? error.message : String(error));
    }
    setQuestion(undefined);
  }

  useEffect(() => listenForDrops(open, setOver), []);
  return (
    <>
      <details class="folded" open={inUse.value?.whose !== 'own'}>
        <summary>{say`Files and units`}</summary>
        <div class="opening">
          <label class="chooser">
            {say`Open your own files`}
            <input
              type="file"
              multiple
              accept=".csv,.tsv,.txt,text/csv,.xlsx,.ods,.parquet,.arrow,.zip"
              ref={chooser}
              onChange={(event) => {
                const chooser = event.currentTarget;
                // The same file may be mended and opened again.
                open([...(chooser.files ?? [])]).finally(() => {
                  chooser.value = '';
                });
              }}
            />
          </label>
          <p class="note">{say`Tables of feet, horses and visits from any spreadsheet (CSV, XLSX, ODS), or a saved record (zip), in any order; or drop them anywhere on this page.`}</p>
        </div>
        {children}
      </details>
      <div class="opened">
        <p class="note" role="status">
          {said}
        </p>
        {trouble && <p class="trouble" role="alert">{say`${trouble}. What was shown before is still in use.`}</p>}
      </div>
      {question && <div class="asking">{question}</div>}
      {over && <p class="drop">{say`Drop the files to open them`}</p>}
    </>
  );
}

interface Question {
  readonly file: string;
  readonly answer: (dates: DateOrder | undefined) => void;
}

function DatesQuestion({ file, answer }: Question) {
  const place = useRef<HTMLFieldSetElement>(null);
  useEffect(() => place.current?.focus(), []);
  return (
    <fieldset class="asked" tabIndex={-1} ref={place}>
      <legend>
        {say`The dates in`} <strong>{file}</strong> {say`can be read two ways. What does 03/04/2026 mean in it?`}
      </legend>
      <button type="button" onClick={() => answer('dmy')}>{say`3 April, day first`}</button>
      <button type="button" onClick={() => answer('mdy')}>{say`4 March, month first`}</button>
      <button type="button" onClick={() => answer(undefined)}>{say`I don’t know, leave it`}</button>
    </fieldset>
  );
}

function listenForDrops(open: (files: readonly File[]) => void, setOver: (over: boolean) => void): () => void {
  const hasFiles = ({ dataTransfer }: DragEvent) => dataTransfer?.types.includes('Files') ?? false;
  const over = (event: DragEvent) => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    setOver(true);
  };
  const leave = ({ relatedTarget }: DragEvent) => {
    if (relatedTarget === null) setOver(false);
  };
  const drop = (event: DragEvent) => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    setOver(false);
    open([...event.dataTransfer!.files]);
  };
  addEventListener('dragover', over);
  addEventListener('dragleave', leave);
  addEventListener('drop', drop);
  return () => {
    removeEventListener('dragover', over);
    removeEventListener('dragleave', leave);
    removeEventListener('drop', drop);
  };
}
