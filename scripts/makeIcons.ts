// Draws the PNG icons from notebooks/shell/icon.svg: `npx tsx scripts/makeIcons.ts`, after the drawing has changed.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import chromium from '@sparticuz/chromium';
import { chromium as playwright } from 'playwright-core';
import { grounds } from '../lib/views/theme.ts';
import { icons } from '../notebooks/shell/manifest.ts';

/** Devices cut a maskable icon to a circle of four fifths at the least. */
const WITHIN = 0.7;

const shell = fileURLToPath(new URL('../notebooks/shell/', import.meta.url));
const drawing = readFileSync(`${shell}icon.svg`, 'utf8');
const browser = await playwright.launch({ executablePath: await chromium.executablePath(), args: ['--no-sandbox'] });
try {
  for (const { file, size, purpose } of icons) {
    const page = await browser.newPage({ viewport: { width: size, height: size } });
    const drawn = purpose === 'maskable' ? size * WITHIN : size;
    const ground = purpose === 'maskable' ? grounds.paper : 'transparent';
    await page.setContent(
      `<body style="margin:0;display:grid;place-items:center;height:${size}px;background:${ground}">
         <div style="width:${drawn}px;height:${drawn}px">${drawing}</div>`,
    );
    writeFileSync(shell + file, await page.screenshot({ omitBackground: true }));
    await page.close();
  }
} finally {
  await browser.close();
}
