import ts from 'typescript';

/** A source text as a tree whose nodes know their parents and their places. */
export function sourceFile(text: string, tsx: boolean): ts.SourceFile {
  const [name, kind] = tsx ? (['a.tsx', ts.ScriptKind.TSX] as const) : (['a.ts', ts.ScriptKind.TS] as const);
  return ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true, kind);
}
