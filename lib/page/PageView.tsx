import type { ReadonlySignal } from '@preact/signals';
import { useComputed } from '@preact/signals';
import { say } from '../words/say.ts';
import type { Block } from './blocks.ts';
import type { ControlValues, Page } from './page.ts';
import { BlockList } from './parts/BlockList.tsx';
import { asProse } from './prose.ts';
import { type Surroundings, SurroundingsContext } from './surroundings.ts';

interface Live<Data> {
  readonly page: Page<Data>;
  readonly herd: ReadonlySignal<Data>;
  readonly controls: ReadonlySignal<ControlValues>;
  readonly surroundings: ReadonlySignal<Surroundings>;
}

/** A page, computed afresh whenever its herd, its controls or the reader's units change. */
export function PageView<Data>({ page, herd, controls, surroundings }: Live<Data>) {
  const blocks = useComputed(() =>
    blocksOf(page, { herd: herd.value, controls: controls.value, units: surroundings.value.units }),
  );
  return (
    <SurroundingsContext.Provider value={surroundings.value}>
      <BlockList blocks={blocks.value} />
    </SurroundingsContext.Provider>
  );
}

/** A page that fails says why in its place, and never comes out empty. */
function blocksOf<Data>(page: Page<Data>, input: Parameters<Page<Data>['blocks']>[0]): readonly Block[] {
  try {
    return page.blocks(input);
  } catch (error) {
    console.error(error);
    const reason = error instanceof Error ? error.message : String(error);
    return [
      {
        kind: 'prose',
        tone: 'caution',
        text: say`This page could not be worked out from these tables. They are untouched, and the other pages may still open.`,
      },
      { kind: 'prose', text: asProse(say`What was found: ${reason}`) },
    ];
  }
}
