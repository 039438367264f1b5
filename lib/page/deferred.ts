import { say } from '../words/say.ts';
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
export async function settled(blocks: readonly Block[]): Promise<readonly Block[]> {
  return (await Promise.all(blocks.map(settledOne))).flat();
}

async function settledOne(block: Block): Promise<readonly Block[]> {
  if (block.kind === 'group') return [{ ...block, blocks: await settled(block.blocks) }];
  if (block.kind !== 'deferred') return [block];
  try {
    return await settled(block.blocks(await block.task.run(block.input, () => true)));
  } catch (error) {
    return [failed(block, error)];
  }
}

function failed({ label }: Deferred, error: unknown): Block {
  const reason = error instanceof Error ? error.message : String(error);
  return { kind: 'prose', tone: 'caution', text: asProse(say`${label}: this could not be worked out: ${reason}`) };
}
