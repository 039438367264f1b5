import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Entry, publicNames } from '../../scripts/reference.ts';

let names: Entry[] = [];
beforeAll(() => {
  names = publicNames();
}, 120_000);

describe('the library reference', () => {
  it('finds a docstring at every function, class and value', () => {
    expect(names.length).toBeGreaterThan(400);
    expect(names.filter(({ kind, text }) => kind !== 'type' && text === '').map(({ name }) => name)).toEqual([]);
  });

  it('finds words or members at every type', () => {
    const bare = names.filter(({ kind, text, members }) => kind === 'type' && text === '' && members.length === 0);
    expect(bare.map(({ name }) => name)).toEqual([]);
  });

  it('finds what a class lets others use, what it inherits too, and nothing that it keeps to itself', () => {
    const members = (of: string) => names.find(({ name }) => name === of)!.members.map(({ code }) => code);
    const sheet = members('Sheet').map((code) => code.match(/^[\w.]+/)?.[0]);
    for (const name of [
      'Sheet.from',
      'Sheet.fromArquero',
      'rows',
      'column',
      'add',
      'set',
      'undo',
      'lineage',
      'toArquero',
    ])
      expect(sheet).toContain(name);
    expect(members('FormulaError')).toEqual(['name: "FormulaError"', 'start: number', 'end: number']);
    expect(names.flatMap(({ members: each }) => each).filter(({ code }) => code.includes('#'))).toEqual([]);
  });

  it('names every one of them', () => {
    const written = readFileSync(new URL('../../docs/reference.md', import.meta.url), 'utf8');
    expect(names.filter(({ name }) => !written.includes(`### \`${name}\`\n`)).map(({ name }) => name)).toEqual([]);
  });
});
