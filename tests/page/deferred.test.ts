import { describe, expect, it } from 'vitest';
import type { Block } from '../../lib/page/blocks.ts';
import { deferred, settled } from '../../lib/page/deferred.ts';
import { htmlPage } from '../../lib/page/render/html.tsx';
import { sameInput } from '../../lib/page/sameInput.ts';
import { runHere, type Task } from '../../lib/page/task.ts';

const double: Task<number, number> = { name: 'double', run: (input) => 2 * input };
const fails: Task<number, number> = {
  name: 'fails',
  run: () => {
    throw new Error('no **rows**');
  },
};
const counting: Task<number, number> = {
  name: 'counting',
  run: (input, progress) => {
    for (let done = 1; done <= input; done++) if (!progress(done, input)) throw new Error('stopped');
    return input;
  },
};
const words = (text: string): Block => ({ kind: 'prose', text });
const part = (task: Task<number, number>, input = 21) =>
  deferred({ name: task.name, label: 'Working', task, input, blocks: (result) => [words(`it is ${result}`)] });

describe('settled', () => {
  it('puts the blocks of every task in its place, in groups too', async () => {
    const group: Block = { kind: 'group', layout: 'stack', blocks: [part(double, 1), words('end')] };
    expect(await settled([words('start'), part(double), group])).toEqual([
      words('start'),
      words('it is 42'),
      { kind: 'group', layout: 'stack', blocks: [words('it is 2'), words('end')] },
    ]);
  });

  it('runs tasks that come out of tasks', async () => {
    const outer = deferred({
      name: 'o',
      label: 'Outer',
      task: double,
      input: 2,
      blocks: (four) => [part(double, four)],
    });
    expect(await settled([outer])).toEqual([words('it is 8')]);
  });

  it('says in its place what could not be worked out, as plain words, and leaves the rest', async () => {
    const [said, rest] = await settled([part(fails), words('rest')]);
    expect(said).toEqual({
      kind: 'prose',
      tone: 'caution',
      text: 'Working: this could not be worked out: no \\*\\*rows\\*\\*',
    });
    expect(rest).toEqual(words('rest'));
  });

  it('stands in a page that is written to a file', async () => {
    const page = { name: 'p', title: 'P', question: 'Q?', blocks: () => [part(double)] };
    expect(await htmlPage(page, { herd: undefined })).toContain('it is 42');
  });
});

describe('runHere', () => {
  it('runs later, tells how far it is and gives the result', async () => {
    const seen: number[] = [];
    const running = runHere(counting, 3, (done, total) => seen.push(done / total));
    expect(seen).toEqual([]);
    expect(await running.result).toBe(3);
    expect(seen).toEqual([1 / 3, 2 / 3, 1]);
  });

  it('gives the reason where the task fails', async () => {
    await expect(runHere(fails, 1, () => {}).result).rejects.toThrow('no **rows**');
  });

  it('does not begin what was stopped before', async () => {
    const seen: number[] = [];
    const running = runHere(counting, 3, (done) => seen.push(done));
    running.stop();
    await new Promise((resolve) => setTimeout(resolve, 10));
    expect(seen).toEqual([]);
  });
});

describe('sameInput', () => {
  it('compares all the way down, missing numbers included', () => {
    const input = () => ({ a: [1, 'x', null], b: Float64Array.of(1, Number.NaN), c: { d: true } });
    expect(sameInput(input(), input())).toBe(true);
    expect(sameInput(Number.NaN, Number.NaN)).toBe(true);
  });

  it.each([
    [{ a: 1 }, { a: 2 }],
    [{ a: 1 }, { b: 1 }],
    [{ a: 1 }, { a: 1, b: 2 }],
    [[1, 2], [1]],
    [[1], { 0: 1 }],
    [{ 0: 1 }, [1]],
    [Float64Array.of(1), Float64Array.of(2)],
    [Float64Array.of(1), Float32Array.of(1)],
    [Float64Array.of(1), [1]],
    [null, {}],
    [{ a: undefined }, { b: undefined }],
    [1, '1'],
  ])('tells %j from %j', (a, b) => {
    expect(sameInput(a, b)).toBe(false);
  });

  it('is not led astray by names that every object has', () => {
    expect(sameInput({ toString: 1 }, { a: 1 })).toBe(false);
    expect(sameInput(JSON.parse('{"__proto__": 1}'), {})).toBe(false);
  });
});
