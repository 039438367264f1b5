import type { Block, Deferred } from './blocks.ts';
import { asProse } from './prose.ts';
import type { Task } from './task.ts';

/** A part of a page that waits for a task; the types of input and result are held together here. */
export function deferred<Input, Result>(part: {
  readonly name: string;
  readonly label: string;
  readonly task: Task<Input, Result>;
  readonly input: Input;
  readonly blocks: (result: Result) => readonly Block[];
}): Deferred {
  return { kind: 'deferred', ...part } as Deferred;
}

/** A page without anything that waits: every task is run at once, as for a file or on paper. */
export function settled(blocks: readonly Block[]): readonly Block[] {
  return blocks.flatMap((block): readonly Block[] => {
    if (block.kind === 'group') return [{ ...block, blocks: settled(block.blocks) }];
    if (block.kind !== 'deferred') return [block];
    try {
      return settled(block.blocks(block.task.run(block.input, () => true)));
    } catch (error) {
      return [failed(block, error)];
    }
  });
}

function failed({ label }: Deferred, error: unknown): Block {
  const reason = error instanceof Error ? error.message : String(error);
  return { kind: 'prose', tone: 'caution', text: asProse(`${label}: this could not be worked out: ${reason}`) };
}
