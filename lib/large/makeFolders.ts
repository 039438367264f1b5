import { mkdirSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';

/**
 * Makes a folder and those above it that are not there, one after the other: asked for all at once, Node tries without end
 * where the system makes none, as under /proc.
 * @throws Error of the system where one can't be made
 */
export function makeFolders(folder: string): void {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return;
  const above = dirname(resolve(folder));
  if (above !== resolve(folder)) makeFolders(above);
  mkdirSync(folder);
}
