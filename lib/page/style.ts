import { cssVariables } from '../views/theme.ts';
import { sheetStyle } from './sheet/sheetStyle.ts';

const base = `
*, ::before, ::after { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); font: var(--size-body)/1.55 var(--font-text); text-size-adjust: 100%; }
body { margin: 0; overflow-wrap: break-word; }
main { max-width: 76rem; margin: 0 auto; padding: var(--space-apart) clamp(1rem, 5vw, 4rem) var(--space-wide); }
h1, h2, h3 { margin: var(--space-far) 0 var(--space-close); font-weight: 600; line-height: 1.2; text-wrap: balance; }
h1 { margin-top: var(--space-near); font-size: var(--size-title); letter-spacing: -0.01em; }
h2 { padding-top: var(--space-near); border-top: var(--stroke-thin) solid var(--rule); font-size: var(--size-heading); }
h3 { font-size: var(--size-lead); }
p { margin: 0 0 var(--space-near); }
a { color: var(--link); text-underline-offset: 0.15em; }
ul { margin: 0; padding: 0; list-style: none; }
figure { margin: var(--space-far) 0; }
:focus-visible { outline: 3px solid var(--focus); outline-offset: 2px; }
.question { max-width: 40rem; color: var(--soft); font-size: var(--size-lead); font-style: italic; }
.number { font-family: var(--font-label); font-variant-numeric: tabular-nums lining-nums; }
.note, figcaption { margin: var(--space-tight) 0 0; color: var(--soft); font: var(--size-small)/1.45 var(--font-label); }
.trouble { margin: var(--space-close) 0; padding: var(--space-close) var(--space-near); border: var(--stroke-line) dashed var(--raise); background: var(--card); font-family: var(--font-label); font-size: var(--size-small); }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
button, select, input, summary, .download { font: var(--size-small)/1.3 var(--font-label); }
button, .download, select, input:not([type=checkbox], [type=radio]) { min-height: 2rem; padding: 0.3rem 0.75rem; border: var(--stroke-thin) solid var(--edge); border-radius: 2px; background: var(--card); color: var(--ink); }
button, .download { cursor: pointer; }
button:hover, .download:hover { background: var(--wash); }
button:disabled, button[aria-disabled=true] { border-style: dotted; color: var(--soft); cursor: default; }
input[type=checkbox], input[type=radio] { width: 1.15rem; height: 1.15rem; margin: 0; accent-color: var(--measured); }
`;

const parts = `
.prose { max-width: 40rem; }
.aside { padding-left: var(--space-apart); border-left: var(--stroke-thin) solid var(--edge); color: var(--soft); }
.caution { padding: var(--space-near) var(--space-apart) 1px; border: var(--stroke-thin) solid var(--edge); border-left-width: 6px; background: var(--card); margin-bottom: var(--space-near); }
.caution-word { margin: 0 0 var(--space-tight); font: 600 var(--size-small)/1.3 var(--font-label); }
.stack > * + * { margin-top: var(--space-near); }
.sheet-of-paper > h2 { margin-top: var(--space-far); }
.beside { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 19rem), 1fr)); gap: var(--space-near) var(--space-far); align-items: start; }
.small { grid-template-columns: repeat(auto-fit, minmax(min(100%, 17rem), 1fr)); }
.small .figure-title { font-size: var(--size-small); }
.beside > figure { margin-top: 0; min-width: 0; }

.figures { display: flex; flex-wrap: wrap; gap: var(--space-apart) var(--space-wide); margin: var(--space-apart) 0; }
.figures dt { color: var(--soft); font: var(--size-small)/1.3 var(--font-label); }
.figures dd { margin: 0; max-width: 18rem; }
.figures dd.number { font-size: var(--size-heading); line-height: 1.3; }

.finding { display: grid; grid-template-columns: 15rem minmax(0, 40rem); gap: var(--space-near) var(--space-apart); margin: var(--space-apart) 0; padding-left: var(--space-near); border-left: 4px solid var(--raise); }
.finding > :only-child { grid-column: 1 / -1; }
.finding.unsure { border-left: 4px dashed var(--unsure); }
.finding.steady { border-left: 2px solid var(--steady); }
.finding.on-purpose { border-left: 6px double var(--on-purpose); }
.finding p { margin-bottom: var(--space-tight); }
.finding summary { width: fit-content; color: var(--soft); cursor: pointer; }
.finding-value { font-size: var(--size-lead); }
.finding-subject { font-size: var(--size-lead); line-height: 1.3; }
.state { display: inline-flex; align-items: center; gap: 0.35em; margin-left: var(--space-close); padding: 0 0.4em; border: var(--stroke-thin) solid currentColor; border-radius: 2px; background: var(--card); font: var(--size-label)/1.5 var(--font-label); }
.raise .state { color: var(--raise); }
.on-purpose .state { color: var(--on-purpose); }
.against { padding-left: 1.1em; list-style: "– "; color: var(--soft); font: var(--size-small)/1.45 var(--font-label); }

.figure-title { margin-bottom: var(--space-tight); font-size: var(--size-lead); font-weight: 600; line-height: 1.3; text-wrap: balance; }
.summary { max-width: 40rem; }
.on-paper { display: none; }
.takeaway { display: flex; flex-wrap: wrap; gap: var(--space-close); margin: var(--space-close) 0 0; }
.beside .takeaway button { padding-inline: 0.25rem; border-color: transparent; background: none; color: var(--soft); text-decoration: underline; text-underline-offset: 0.15em; }
.picture { min-height: 1px; }
.linked .picture { overflow-x: auto; }
.working { display: flex; flex-wrap: wrap; align-items: center; gap: var(--space-close) var(--space-apart); padding: var(--space-near); border: var(--stroke-thin) solid var(--rule); background: var(--card); font: var(--size-small)/1.4 var(--font-label); }
.working progress { accent-color: var(--measured); vertical-align: middle; }
.drawing { display: block; }
.picture svg, .drawing svg { display: block; max-width: 100%; height: auto; }
.plot { background: none; overflow: visible; color: var(--ink); font-family: var(--font-label); font-size: var(--size-mark); }
.plot text, .plot tspan { white-space: pre; }
.linked text { font-family: var(--font-label); }
.drawings > ul { display: flex; flex-wrap: wrap; gap: var(--space-apart); align-items: end; }
.drawings li { max-width: 100%; }
.beside > .drawings { position: sticky; top: var(--space-near); }
.row { display: flex; flex-wrap: wrap; align-items: end; gap: var(--space-close); }
.rows > ul { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 1px * var(--widest)), 1fr)); }
.rows .row { flex-wrap: nowrap; }
.rows text { font-size: calc(var(--size-mark) * max(1, var(--widest) / var(--room, 1000))); }
.rows .row > div { --shrink: calc(var(--wide) / var(--widest)); flex: none; width: min(1px * var(--wide), (100% - 2 * var(--space-close)) * var(--shrink)); }
.drawing-title { margin: var(--space-tight) 0 0; font: var(--size-small)/1.3 var(--font-label); }
.drawing-title a { display: inline-block; max-width: 100%; padding: 0.2rem 0; overflow-wrap: anywhere; }

.form-table { overflow-x: auto; }
.form table { border-collapse: collapse; font: var(--size-small)/1.35 var(--font-label); }
.form caption { padding-bottom: var(--space-tight); text-align: left; font: 600 var(--size-lead)/1.3 var(--font-text); }
.form th, .form td { padding: var(--space-tight) var(--space-close); border: var(--stroke-thin) solid var(--edge); text-align: left; vertical-align: top; }
.form td { font-variant-numeric: tabular-nums lining-nums; }
.form thead th { background: var(--wash); font-weight: 600; }
.form .to-fill { min-width: 4.5rem; height: 2.2em; background: var(--card); }
.form:has(.to-fill) tbody th { min-width: 8rem; }
pre { overflow-x: auto; margin: var(--space-close) 0; padding: var(--space-near); border: var(--stroke-thin) solid var(--rule); background: var(--card); font: var(--size-label)/1.45 var(--font-formula); }
.ruled { max-width: 46rem; }
.ruled hr { height: 2em; margin: 0; border: 0; border-bottom: var(--stroke-thin) solid var(--edge); }

.control { display: flex; flex-wrap: wrap; align-items: center; gap: var(--space-tight) var(--space-close); margin: var(--space-close) 0; padding: 0; border: 0; font: var(--size-small)/1.3 var(--font-label); min-width: 0; }
.control select, .control input { max-width: 100%; }
.control label { display: inline-flex; align-items: center; gap: var(--space-close); }
.control label[for] { flex-basis: 100%; }
.control legend { padding: 0; margin-bottom: var(--space-tight); }
.control .options { display: flex; flex-wrap: wrap; gap: var(--space-close) var(--space-apart); max-height: 16rem; overflow-y: auto; }
.control .options label { min-height: 1.6rem; }
.control .note { flex-basis: 100%; margin: 0; }
.control input.number { width: 6.5em; }

.cautions { max-width: 46rem; color: var(--soft); font: var(--size-small)/1.5 var(--font-label); }
.cautions li { margin: 0 0 var(--space-tight); padding-left: 1.1em; text-indent: -1.1em; }
.cautions li::before { content: "– "; }
.still > footer { max-width: 76rem; margin: 0 auto; padding: var(--space-apart) clamp(1rem, 5vw, 4rem); border-top: var(--stroke-thin) solid var(--rule); }
`;

const elsewhere = `
@media (pointer: coarse) {
  button, .download, select, summary, input:not([type=checkbox], [type=radio]), .control label, .drawing-title a { min-height: 44px; }
  .control .options label { min-width: 44px; min-height: 44px; }
  summary { padding-block: calc((44px - 1.3em) / 2); }
}
@media (max-width: 30rem) {
  h1 { font-size: var(--size-heading); }
  .rows { --room: 380; }
  .finding { grid-template-columns: minmax(0, 1fr); }
}
@media (prefers-contrast: more) {
  :root { --soft: var(--ink); --rule: var(--edge); }
}
@media print {
  @page { margin: 12mm; }
  html { background: none; font-size: 10.5pt; }
  main { max-width: none; padding: 0; }
  h1, h2, h3, .figure-title { break-after: avoid; }
  .finding details::details-content { content-visibility: visible; block-size: auto; }
  .sheet-of-paper + .sheet-of-paper { break-before: page; }
  .form table { width: 100%; font-size: 8.5pt; }
  .form th, .form td { padding: 2px 4px; }
  .form thead th { background: none; }
  .form-table { overflow: visible; }
  .form .to-fill { min-width: 14mm; }
  pre { white-space: pre-wrap; }
  .form tbody th { white-space: nowrap; }
  .form:has(.to-fill) tbody th { min-width: 0; white-space: normal; }
  .form:has(.to-fill) :is(th, td) { padding-inline: 0.3em; }
  .form .ruled hr { height: 1.7em; }
  .on-paper { display: revert; }
  figure:not(.sheet), .finding, .figures, .drawings li { break-inside: avoid; }
  button, .takeaway, .download, .unprinted { display: none !important; }
  a { color: inherit; text-decoration: none; }
  footer a { display: none; }
  .trouble, .caution, .state { background: none; }
  .picture { overflow: visible; }
  .control select, .control input { border: 0; padding: 0; appearance: none; background: none; }
}
`;

/**
 * Sheets of paper that hold by construction: A4 leaves 273 mm of height within its margins and Letter 255, and whatever may
 * grow has a height or a number of lines. One horse, at its most: 10 mm of frame; a name of 11; two sets of feet of 74; 8
 * on how they are drawn; 8 and 12 of heading and sentence on what has changed, 46 of table; 7 of cautions. Its second sheet: a
 * name of 11; 11 on how to read; five rows of charts of 37.5; 32 of notes; 7 of cautions.
 */
const sheetsOfPaper = `
@media print {
  body:has(.sheet-of-paper) { line-height: 1.2; }
  body:has(.sheet-of-paper) :is(footer, .question, .whose.own, .control, .aside:not(.sheet-of-paper *)) { display: none; }
  body:has(.sheet-of-paper) #desk { padding-top: 0; }
  body:has(.sheet-of-paper) :is(.whose p, main > .note) { height: 4mm; margin: 0; overflow: hidden; font-size: 8pt; line-height: 4mm; }
  main:has(.sheet-of-paper) > h1 { height: 6mm; margin: 0; overflow: hidden; font-size: 11pt; line-height: 6mm; }
  .sheet-of-paper > :is(*, h2) { margin: 0; }
  .sheet-of-paper > :not(:first-child) { margin-top: 1.5mm; }
  .sheet-of-paper > h2 { padding: 0; border: 0; font-size: 13pt; }
  .sheet-of-paper > h2:not(:first-child) { margin-top: 3mm; font-size: 11pt; }
  .sheet-of-paper :is(p, figure) { margin: 0; }
  main:has(.sheet-of-paper) .prose { margin: 0; max-width: none; padding: 0; border: 0; font-size: 7.5pt; line-height: 1.25; }
  .sheet-of-paper :is(.figure-title, caption) { font-size: 9pt; line-height: 1.2; }
  .sheet-of-paper table { width: calc(100% - 1px); font-size: 7pt; line-height: 1.15; }
  .sheet-of-paper tr:has(.to-fill) { height: 8.5mm; }
  .sheet-of-paper tr:has(.to-fill) > * { vertical-align: middle; }
  tr:has(.to-fill + .to-fill) > td:not(.to-fill) { border-left-width: var(--stroke-strong); }
  tr:has(.to-fill + .to-fill) > th { width: 25mm; }
  .sheet-of-paper :is(.note, figcaption, .drawing-title) { font-size: 7pt; line-height: 1.2; }
  .sheet-of-paper :is(.cautions, .ruled) { max-width: none; }
  .sheet-of-paper > h2, .sheet-of-paper :is(.note, figcaption), .small .figure-title { display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 2; overflow: hidden; }
  .rows > ul { grid-template-columns: 1fr 1fr; gap: 1mm 4mm; }
  .rows .row { justify-content: space-between; }
  .rows .row > div { width: min(1px * var(--wide), (100% - 2 * var(--space-close)) * var(--shrink), 27mm * var(--wide) / var(--tallest)); }
  .rows text { font-size: calc(7pt * max(1, var(--widest) / 320, var(--tallest) / 101)); }
  .rows :is(.drawing-title, .note) { display: inline; }
  .small { grid-template-columns: repeat(5, 1fr); gap: 1mm 2mm; }
  .small > figure { height: 36.5mm; overflow: hidden; }
  .small .figure-title { -webkit-line-clamp: 5; font: 600 7pt/1.17 var(--font-label); text-wrap: wrap; }
  .small .plot text { font-size: 7pt; }
}
`;

/** The style sheet of every part of a page, on screen and paper, from the theme. */
export const style = `:root {\n${cssVariables()}}\n${base}${parts}${sheetStyle}${elsewhere}${sheetsOfPaper}`;
