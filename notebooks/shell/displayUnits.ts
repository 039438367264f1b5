import { effect, type Signal, signal } from '@preact/signals';
import type { DisplayUnits } from '../../lib/index.ts';

const KEY = 'evenhoof units';
const first: DisplayUnits = { length: 'mm', mass: 'kg' };

/** The units the reader sees, on every page and in every tab alike; inside everything stays in mm and kg. */
export const units: Signal<DisplayUnits> = signal(remembered());

/** Keeps the choice, and follows the one made in another tab. */
export function rememberUnits(): void {
  addEventListener('storage', ({ key }) => {
    if (key === KEY) units.value = remembered();
  });
  effect(() => {
    const chosen = JSON.stringify(units.value);
    try {
      localStorage.setItem(KEY, chosen);
    } catch {
      // Where the browser keeps nothing the choice holds for this page.
    }
  });
}

function remembered(): DisplayUnits {
  try {
    const { length, mass } = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return {
      length: ['mm', 'cm', 'in'].includes(length) ? length : 'mm',
      mass: ['kg', 'lb'].includes(mass) ? mass : 'kg',
    };
  } catch {
    return first;
  }
}
