import type { ControlValue, ControlValues } from './page.ts';

const isValue = (value: unknown): value is ControlValue =>
  typeof value === 'string' ||
  typeof value === 'boolean' ||
  (typeof value === 'number' && Number.isFinite(value)) ||
  (Array.isArray(value) && value.every((item) => typeof item === 'string'));

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/**
 * What a page's controls say, as the part of an address after `#`. Text stands as it is; everything else, and text that
 * would read as something else, as JSON.
 * @returns `''` where no control was touched
 * @example toHash({ horse: 'Bramble', weeks: 6 }) // 'horse=Bramble&weeks=6'
 */
export function toHash(controls: ControlValues): string {
  const hash = new URLSearchParams();
  for (const [name, value] of Object.entries(controls))
    hash.set(name, typeof value === 'string' && !isValue(parsed(value)) ? value : JSON.stringify(value));
  return hash.toString();
}

/**
 * The values of controls out of an address, the inverse of `toHash`.
 * @param hash with or without the `#`
 * @example fromHash('#horse=Bramble&weeks=6') // { horse: 'Bramble', weeks: 6 }
 */
export function fromHash(hash: string): ControlValues {
  const controls: Record<string, ControlValue> = Object.create(null);
  for (const [name, text] of new URLSearchParams(hash.replace(/^#/, ''))) {
    const value = parsed(text);
    controls[name] = isValue(value) ? value : text;
  }
  return controls;
}

/**
 * What a control says, or what it says at first: also where an address was typed by hand and holds another kind of value.
 * @param controls what the page was given
 * @param first the value before anyone has touched the control; its kind is the kind wanted
 * @example chosen({ weeks: 'six' }, 'weeks', 6) // 6
 */
export function chosen(controls: ControlValues, name: string, first: string): string;
export function chosen(controls: ControlValues, name: string, first: number): number;
export function chosen(controls: ControlValues, name: string, first: boolean): boolean;
export function chosen(controls: ControlValues, name: string, first: readonly string[]): readonly string[];
export function chosen(controls: ControlValues, name: string, first: ControlValue): ControlValue {
  const value = Object.hasOwn(controls, name) ? controls[name] : first;
  return typeof value === typeof first && Array.isArray(value) === Array.isArray(first) ? value : first;
}

/**
 * The address of a page of the notebook, with its controls set.
 * @example addressOf('level', { limb: 'LF' }) // 'level.html#limb=LF'
 */
export function addressOf(page: string, controls: ControlValues = {}): string {
  const hash = toHash(controls);
  return `${page}.html${hash === '' ? '' : `#${hash}`}`;
}
