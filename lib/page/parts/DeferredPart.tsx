import type { VNode } from 'preact';
import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import { say } from '../../words/say.ts';
import type { Block, Deferred } from '../blocks.ts';
import { sameInput } from '../sameInput.ts';
import { SurroundingsContext } from '../surroundings.ts';
import { runHere } from '../task.ts';

type Work = Pick<Deferred, 'task' | 'input'>;
type State =
  | { readonly at: 'work'; readonly done: number; readonly total: number }
  | { readonly at: 'stopped' }
  | { readonly at: 'failed'; readonly reason: string };

/** What was worked out while this page is open, newest first: going back and forth between controls repeats nothing. */
const known: (Work & { readonly result: unknown })[] = [];
const MOST_KNOWN = 24;

const same = (a: Work, b: Work) => a.task.name === b.task.name && sameInput(a.input, b.input);

interface DeferredProps {
  readonly block: Deferred;
  /** Draws the blocks that come out. */
  readonly draw: (blocks: readonly Block[]) => VNode;
}

/** A part that waits for work beside the page: how far it is, a way to stop it, then what came out. */
export function DeferredPart({ block, draw }: DeferredProps) {
  const { run = runHere } = useContext(SurroundingsContext);
  const [state, setState] = useState<State>({ at: 'work', done: 0, total: 1 });
  // The page is computed afresh for every control; only another input is other work.
  const work = useRef<Work>(block);
  if (!same(work.current, block)) work.current = block;
  const stop = useRef(() => {});
  const start = () => {
    const { task, input } = work.current;
    let current = true;
    const show = (next: State) => current && setState(next);
    show({ at: 'work', done: 0, total: 1 });
    const running = run(task, input, (done, total) => show({ at: 'work', done, total }));
    stop.current = () => {
      show({ at: 'stopped' });
      current = false;
      running.stop();
    };
    running.result.then(
      (result) => {
        known.unshift({ task, input, result });
        known.length = Math.min(known.length, MOST_KNOWN);
        show({ at: 'work', done: 1, total: 1 });
      },
      (error) => show({ at: 'failed', reason: error instanceof Error ? error.message : String(error) }),
    );
  };
  const found = known.find((entry) => same(entry, work.current));
  useEffect(() => {
    if (found) return;
    start();
    return () => stop.current();
  }, [work.current]);

  if (found) return draw(block.blocks(found.result));
  if (state.at === 'work')
    return (
      <p class="working">
        <label>
          {block.label} … <progress value={state.done} max={state.total} />
        </label>{' '}
        <button type="button" onClick={() => stop.current()}>{say`Stop`}</button>
      </p>
    );
  return (
    <p class={state.at === 'failed' ? 'trouble' : 'working'} role={state.at === 'failed' ? 'alert' : 'status'}>
      {block.label}: {state.at === 'failed' ? say`this could not be worked out: ${state.reason}.` : say`stopped.`}{' '}
      <button type="button" onClick={start}>{say`Work it out`}</button>
    </p>
  );
}
