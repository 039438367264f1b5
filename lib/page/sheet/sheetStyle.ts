import { editedStyle } from './editedStyle.ts';

/** The rules for a sheet; its columns' widths are set by the part itself. */
export const sheetStyle = `
.sheet { min-width: 0; }
.sheet-bar { display: flex; flex-wrap: wrap; align-items: end; gap: var(--space-close) var(--space-near); margin: var(--space-close) 0; font: var(--size-small)/1.3 var(--font-label); }
.sheet-bar label { display: grid; grid-template-columns: minmax(0, 1fr); gap: var(--space-hair); color: var(--soft); max-width: 100%; }
.sheet-bar input.number { width: 6.5em; }
.sheet-bar select { max-width: 22rem; }
.conditions { display: flex; flex-wrap: wrap; gap: var(--space-close); margin: 0 0 var(--space-close); font: var(--size-small)/1.3 var(--font-label); }
.sheet-count { margin: 0 0 var(--space-tight); color: var(--soft); font: var(--size-small)/1.3 var(--font-label); }
.grid { position: relative; max-height: min(70vh, 44rem); overflow: auto; border: var(--stroke-thin) solid var(--edge); background: var(--card); font: var(--size-label)/1.3 var(--font-label); font-variant-numeric: tabular-nums lining-nums; contain: content; overscroll-behavior-x: contain; }
.grid [role=row] { display: grid; width: 100%; min-width: 100%; }
.grid-head, .grid-body { min-width: 100%; }
.grid-head { position: sticky; top: 0; z-index: 2; background: var(--wash); border-bottom: var(--stroke-line) solid var(--edge); }
.grid-body { position: relative; }
.grid-body > [role=row] { position: absolute; top: 0; left: 0; border-bottom: var(--stroke-thin) solid var(--rule); }
.grid [role=gridcell], .grid [role=columnheader] { padding: 0 var(--space-close); overflow: hidden; text-overflow: ellipsis; white-space: nowrap; outline-offset: -3px; cursor: default; }
.grid [role=gridcell] { line-height: var(--row-height); }
.grid [role=columnheader] { display: flex; flex-direction: column; justify-content: end; padding: var(--space-tight) var(--space-close); cursor: pointer; white-space: normal; line-height: 1.25; font-weight: 600; }
.grid [role=columnheader] .unit { color: var(--soft); font-weight: 400; }
.grid .as-number { text-align: right; align-items: end; }
.grid .worked-out { font-style: italic; background: color-mix(in srgb, var(--wash) 38%, transparent); }
.grid [role=columnheader].worked-out { font-weight: 500; }
.grid .missing { color: var(--soft); }
.grid .give { color: var(--soft); font-size: 0.9em; }
.grid [aria-colindex="1"] { position: sticky; left: 0; z-index: 1; background: var(--card); }
.grid-head [aria-colindex="1"] { background: var(--wash); }
.grid .chosen, .grid .chosen[aria-colindex="1"] { background: color-mix(in srgb, var(--measured) 16%, var(--card)); }
${editedStyle}.about-column { min-height: 4.2em; margin: var(--space-close) 0 0; max-width: 60rem; color: var(--soft); font: var(--size-small)/1.45 var(--font-label); }
.about-column code { color: var(--ink); font: var(--size-label)/1.4 var(--font-formula); overflow-wrap: anywhere; }
.still-sheet { position: relative; max-width: 100%; overflow-x: auto; }
.still-sheet table { border-collapse: collapse; font: var(--size-label)/1.3 var(--font-label); font-variant-numeric: tabular-nums lining-nums; }
.still-sheet th, .still-sheet td { padding: 0.2em 0.6em; border-bottom: var(--stroke-thin) solid var(--rule); text-align: left; vertical-align: bottom; }
.still-sheet td { max-width: 16rem; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
.still-sheet .as-number { text-align: right; }
.still-sheet .worked-out { font-style: italic; }
@media print {
  .grid { display: none; }
  .still-sheet { overflow: visible; }
  .still-sheet table { font-size: 7.5pt; }
  .still-sheet th, .still-sheet td { padding: 0.15em 0.3em; }
  .still-sheet th { overflow-wrap: anywhere; }
}
`;
