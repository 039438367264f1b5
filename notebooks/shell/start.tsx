import { computed, effect, type ReadonlySignal, untracked } from '@preact/signals';
import { render } from 'preact';
import { type Herd, type HerdPage, mountPage, say } from '../../lib/index.ts';
import { Day } from './Day.tsx';
import { Desk } from './Desk.tsx';
import { rememberUnits, units } from './displayUnits.ts';
import { failure, herd, keptPages, start as startHerd, typedInto } from './herdInUse.ts';
import { keepForOffline } from './offline.ts';
import { runTask } from './runTask.ts';
import { tableFiles } from './tableFiles.ts';

/** The pages that type into the table of feet. */
const typing = new Set(['record', 'measure-from-picture']);

/** Starts a page's document: the herd, the desk above the page, the page, and its keeping for offline. */
export async function start(page: HerdPage): Promise<void> {
  const blocks = document.getElementById('blocks')!;
  rememberUnits();
  typedInto.value = typing.has(page.name);
  const typed = typedInto.value ? await import('./feetEditing.ts') : undefined;
  render(<Desk />, document.getElementById('desk')!);
  if (page.name === 'record') {
    const below = document.createElement('div');
    blocks.after(below);
    render(<Day page={page} />, below);
  }
  let mounted = () => {};
  const trouble = computed(() => failure.value || (herd.value instanceof Error ? herd.value.message : ''));
  const ready = computed(() => herd.value !== undefined && !(herd.value instanceof Error));
  effect(() => {
    const [reason, whole] = [trouble.value, ready.value];
    untracked(() => {
      mounted();
      mounted = () => {};
      if (reason || whole) blocks.querySelector('.waiting')?.remove();
      if (reason) render(<Trouble reason={reason} />, blocks);
      else if (whole)
        mounted = mountPage(blocks, {
          page,
          herd: herd as ReadonlySignal<Herd>,
          units,
          files: tableFiles,
          editing: typed?.editing,
          run: runTask,
        });
    });
  });
  let linked = false;
  effect(() => {
    const pages = keptPages.value;
    linked ||= pages.length > 0;
    if (linked) import('./keptLinks.tsx').then(({ drawKeptLinks }) => drawKeptLinks(pages));
  });
  await startHerd();
  await keepForOffline();
}

function Trouble({ reason }: { reason: string }) {
  return (
    <div class="trouble" role="alert">
      <p>{say`There is nothing to show yet: ${reason}.`}</p>
      <p>{say`What you have is untouched. Mend it and open it again, or put it away and look at the demo herd.`}</p>
    </div>
  );
}
