import type { Kind } from '../sheet/column.ts';
import { daysFromIso } from '../sheet/days.ts';
import { isMissing } from './missingWords.ts';
import { plainNumber } from './plainNumber.ts';

/**
 * The kind of a column of which nothing is known but its texts: what all of them are that don't say "missing".
 * Numbers written plainly, `TRUE` and `FALSE`, ISO dates; else text. `007` is text.
 * @example inferKind(['52', 'NA', '48.5'], '.') // 'number'
 */
export function inferKind(texts: readonly string[], mark: '.' | ','): Kind {
  const said = texts.filter((text) => !isMissing(text));
  if (said.every((text) => !Number.isNaN(plainNumber(text, mark, true)))) return 'number';
  if (said.every((text) => /^(?:true|false)$/i.test(text))) return 'boolean';
  return said.every((text) => !Number.isNaN(daysFromIso(text))) ? 'date' : 'text';
}
