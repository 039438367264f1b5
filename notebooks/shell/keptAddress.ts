import { addressOf, type KeptPage } from '../../lib/index.ts';

/** The address that shows a kept page again. */
export function keptAddress({ title, controls }: KeptPage): string {
  return addressOf('own-page', { ...controls, title });
}
