/** The rules for a sheet that is typed into. */
export const editedStyle = `
.ways { display: flex; flex-wrap: wrap; gap: 0; margin: var(--space-near) 0; padding: 0; border: 0; font: var(--size-small)/1.3 var(--font-label); }
.ways label { display: inline-flex; align-items: center; gap: var(--space-close); min-height: 2.2rem; padding: 0.3rem 0.9rem; border: var(--stroke-thin) solid var(--edge); background: var(--card); cursor: pointer; }
.ways label + label { margin-left: -1px; }
.ways label:has(:checked) { border-color: var(--ink); background: var(--wash); font-weight: 600; position: relative; }
.ways label:focus-within { outline: 3px solid var(--focus); outline-offset: 2px; z-index: 1; position: relative; }
.edit-bar { display: flex; flex-wrap: wrap; align-items: center; gap: var(--space-close); margin: var(--space-close) 0; font: var(--size-small)/1.3 var(--font-label); }
.edit-bar .kept { margin: 0 0 0 auto; color: var(--soft); }
.edit-bar .kept.trouble { color: var(--ink); }
.edit-bar button { max-width: 100%; text-align: left; }
.typed-into [role=gridcell]:not([aria-readonly=true]) { cursor: cell; }
.grid-body > .in-front { z-index: 1; }
.grid .unread { overflow: visible; background: color-mix(in srgb, var(--beyond) 10%, var(--card)); box-shadow: inset 0 0 0 1.5px var(--beyond); text-align: left; }
.grid .unread-text { text-decoration: underline wavy var(--beyond) 1px; text-underline-offset: 0.2em; }
.cell-note { position: absolute; top: 100%; left: -1px; z-index: 3; width: max-content; max-width: 20rem; padding: var(--space-close) var(--space-near); border: var(--stroke-line) solid var(--beyond); background: var(--card); color: var(--ink); line-height: 1.4; white-space: normal; font-style: normal; font-weight: 400; pointer-events: none; }
.grid [role=gridcell].unread, .grid [role=gridcell].typing { position: relative; }
.grid [role=gridcell].unread[aria-colindex="1"] { position: sticky; }
.grid .typing { padding: 0; }
.grid input.cell-editor { display: block; width: 100%; height: 100%; min-height: 0; padding: 0 calc(var(--space-close) - 1px); border: 2px solid var(--measured); border-radius: 0; background: var(--card); font: inherit; font-style: normal; text-align: inherit; outline-offset: -2px; }
.origin { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: var(--space-near) var(--space-far); margin: var(--space-near) 0 0; padding: var(--space-near) var(--space-apart); border: var(--stroke-thin) solid var(--rule); border-left: 4px solid var(--measured); background: var(--card); font: var(--size-small)/1.5 var(--font-label); align-content: start; }
.origin p { margin: 0 0 var(--space-tight); }
.origin-subject { color: var(--soft); }
.origin-value { font: var(--size-lead)/1.35 var(--font-text); }
.origin-numbers { padding: var(--space-tight) 0; font-size: var(--size-body); }
.origin .gives { color: var(--soft); }
.origin code, .own code, .offered code { font: var(--size-label)/1.4 var(--font-formula); overflow-wrap: anywhere; }
.origin-facts { display: grid; gap: var(--space-tight); margin: var(--space-close) 0 0; max-width: 46rem; }
.origin-facts > div { display: grid; grid-template-columns: 9rem minmax(0, 1fr); gap: var(--space-near); }
.origin-facts dt { color: var(--soft); }
.origin-facts dd { margin: 0; }
.cell-history { margin: 0; padding: 0; list-style: none; }
.origin-tree { grid-column: 1 / -1; border-top: var(--stroke-thin) solid var(--rule); padding-top: var(--space-close); }
.origin-tree .origin-heading { color: var(--soft); }
.origin-tree ul ul { margin-left: 0.5rem; padding-left: 1rem; border-left: var(--stroke-thin) solid var(--edge); }
.origin-tree .via { color: var(--soft); }
.own { margin: var(--space-near) 0; padding: var(--space-close) var(--space-near); border: var(--stroke-thin) solid var(--edge); background: var(--card); font: var(--size-small)/1.4 var(--font-label); }
.own summary { display: list-item; padding: var(--space-tight) 0; cursor: pointer; }
.own-fields { display: grid; grid-template-columns: 12rem minmax(14rem, 1fr) 8rem auto; gap: var(--space-near); align-items: end; margin-top: var(--space-close); }
.own-fields label { display: grid; gap: var(--space-hair); color: var(--soft); }
.own-fields input { width: 100%; }
.own-form .note:empty { display: none; }
.own-preview { min-height: 2.6em; margin-top: var(--space-close); }
.own-preview p { margin: 0; }
.own-list { display: grid; grid-template-columns: minmax(0, 1fr); overflow-wrap: anywhere; gap: var(--space-close); margin-top: var(--space-near); padding-top: var(--space-near); border-top: var(--stroke-thin) solid var(--rule); }
.formula-field { display: grid; gap: var(--space-hair); min-width: 0; }
.formula-box { position: relative; }
.formula-box input.formula, .formula-mirror { font: var(--size-small)/1.4 var(--font-formula); letter-spacing: 0; padding: 0.3rem 0.75rem; }
.formula-box input.formula { position: relative; background: transparent; }
.formula-mirror { position: absolute; inset: 1px; display: flex; align-items: center; overflow: hidden; white-space: pre; color: transparent; background: var(--card); border-radius: 2px; }
.formula-mirror .fault { text-decoration: underline wavy var(--beyond) 1.5px; text-underline-offset: 0.25em; }
.offered { position: absolute; z-index: 4; top: 100%; left: 0; width: max-content; min-width: 100%; max-width: min(38rem, 90vw); border: var(--stroke-thin) solid var(--ink); background: var(--card); box-shadow: 0 4px 14px rgb(43 42 39 / 18%); }
.offered[hidden] { display: none; }
.offered [role=option] { display: flex; flex-wrap: wrap; gap: 0 var(--space-near); padding: var(--space-tight) var(--space-near); cursor: pointer; }
.offered [role=option] span { color: var(--soft); }
.offered [aria-selected=true] { background: var(--wash); box-shadow: inset 4px 0 0 var(--measured); }
.foot-form { margin: var(--space-near) 0; font: var(--size-body)/1.35 var(--font-label); touch-action: pan-y; }
.foot-form h3 { margin: var(--space-close) 0; font-family: var(--font-text); }
.unbroken { white-space: nowrap; }
.turn { display: flex; align-items: center; justify-content: space-between; gap: var(--space-close); margin: var(--space-near) 0; color: var(--soft); white-space: nowrap; }
.turn button { flex: 1 1 7rem; min-width: 0; white-space: normal; max-width: 16rem; min-height: 56px; padding-inline: var(--space-tight); font-size: var(--size-body); }
.foot-form > .turn:last-child { position: sticky; bottom: 0; z-index: 1; margin-bottom: 0; padding: var(--space-close) 0; border-top: var(--stroke-thin) solid var(--edge); background: var(--paper); }
.which-foot { margin-bottom: var(--space-near); }
.which-foot summary { display: list-item; min-height: 48px; padding: var(--space-near) 0; cursor: pointer; color: var(--soft); font-size: var(--size-body); }
.foot-fields { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 19rem), 1fr)); gap: 0 var(--space-far); }
.foot-field { display: grid; hyphens: auto; grid-template-columns: minmax(0, 1fr) auto; align-items: center; align-content: start; gap: 0 var(--space-near); padding: var(--space-tight) 0; border-bottom: var(--stroke-thin) solid var(--rule); }
.foot-input { display: inline-flex; align-items: center; gap: var(--space-close); }
.foot-form .foot-input input, .foot-form .foot-input select { width: 8.2rem; min-height: 52px; padding: 0.4rem 0.75rem; font: var(--size-lead)/1.2 var(--font-label); font-variant-numeric: tabular-nums lining-nums; scroll-margin-bottom: 6rem; }
.foot-form .foot-input input[type=date] { width: 11.5rem; }
.foot-unit { flex: none; width: 1.9rem; white-space: nowrap; color: var(--soft); }
.foot-note { grid-column: 1 / -1; margin: 0; padding-bottom: var(--space-tight); color: var(--soft); font-size: var(--size-small); }
.foot-note:empty { display: none; }
.doubted .foot-note { color: var(--ink); }
.foot-form .doubted input, .foot-form .doubted select { border: 2px solid var(--beyond); }
@media (max-width: 44rem) {
  .own-fields { grid-template-columns: minmax(0, 1fr); }
  .origin { grid-template-columns: minmax(0, 1fr); padding: var(--space-near); }
  .origin-facts > div { grid-template-columns: minmax(0, 1fr); gap: 0; }
  .edit-bar .kept { margin-left: 0; flex-basis: 100%; }
}
@media (pointer: coarse) {
  .ways label { min-height: 48px; }
  .offered [role=option] { min-height: 44px; align-items: center; }
}
`;
