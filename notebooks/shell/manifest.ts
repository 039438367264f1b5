import { grounds, say } from '../../lib/index.ts';

/** The icons' sizes in px; `maskable` leaves room for whatever shape a device cuts them to. */
export const icons = [
  { file: 'icon-192.png', size: 192, purpose: 'any' },
  { file: 'icon-512.png', size: 512, purpose: 'any' },
  { file: 'icon-maskable-512.png', size: 512, purpose: 'maskable' },
] as const;

/** What a device needs to know to take the notebook among its own programs; addresses are relative to it. */
export const manifest = {
  name: 'Evenhoof',
  short_name: 'Evenhoof',
  description: say`A field book of hoof measurements: what was measured, and what follows from it.`,
  lang: say`en`,
  start_url: './index.html',
  scope: './',
  display: 'standalone',
  background_color: grounds.paper,
  theme_color: grounds.paper,
  icons: [
    { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
    ...icons.map(({ file, size, purpose }) => ({ src: file, sizes: `${size}x${size}`, type: 'image/png', purpose })),
  ],
};
