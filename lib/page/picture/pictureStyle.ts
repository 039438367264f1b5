/** The rules for working on a picture. Only this page wants them, so they come with its code and not with every page. */
export const pictureStyle = `
.picture-desk .note { max-width: 46rem; }
.picture-desk > [role=status] { min-height: 1.45em; }
.picture-part { margin-bottom: var(--space-far); }
.picture-choosers, .picture-kept { display: flex; flex-wrap: wrap; align-items: end; gap: var(--space-close) var(--space-near); margin: 0 0 var(--space-close); }
.picture-desk .chooser { font: var(--size-small)/1.3 var(--font-label); }
.picture-choosers .chooser.chooser { min-height: 2.75rem; padding-inline: 1.1rem; border-color: var(--ink); font-weight: 600; }
.picture-camera { display: none; }
.picture-kept { margin-top: var(--space-near); }
.picture-field { display: grid; grid-template-columns: minmax(0, max-content); gap: var(--space-hair); color: var(--soft); font: var(--size-small)/1.3 var(--font-label); max-width: 100%; }
.picture-field input, .picture-field select { max-width: 100%; color: var(--ink); }
.picture-field input.number { width: 7em; }
.picture-doubt { color: var(--ink); text-decoration: underline wavy var(--beyond) 1px; text-underline-offset: 0.2em; }
.picture-invented { padding-left: var(--space-near); border-left: 4px dotted var(--ochre); font: var(--size-small)/1.4 var(--font-label); }
.picture-about { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 24rem), 1fr)); gap: var(--space-near) var(--space-far); align-items: start; }
.picture-which, .picture-size { display: flex; flex-wrap: wrap; align-items: end; gap: var(--space-close) var(--space-near); }
.picture-which > .note, .picture-size > .note { flex-basis: 100%; margin: 0; }
.picture-ways { flex-basis: 100%; margin: 0; }
.picture-ways legend { float: left; width: 100%; padding: 0; margin-bottom: var(--space-hair); color: var(--soft); }
.picture-guide { padding: var(--space-near) var(--space-apart) var(--space-close); border: var(--stroke-thin) solid var(--rule); border-left: 4px solid var(--measured); background: var(--card); }
.picture-guide p { margin: 0 0 var(--space-tight); }
.picture-next { display: flex; flex-wrap: wrap; align-items: baseline; gap: 0 0.4em; font-size: var(--size-lead); }
.picture-count { margin-left: auto; color: var(--soft); font-size: var(--size-small); }
.picture-how { max-width: 46rem; min-height: 3.1em; }
.picture-hand { display: flex; gap: var(--space-close); margin: 0; padding: 0; border: 0; }
.picture-px { display: inline-flex; align-items: center; gap: var(--space-tight); color: var(--soft); }
.picture-px input { width: 6.2em; }
.picture-work { display: grid; grid-template-columns: minmax(0, 1fr) 20rem; gap: var(--space-near) var(--space-apart); align-items: start; margin: var(--space-near) 0; }
.picture-room { position: relative; height: min(72vh, 46rem); overflow: hidden; border: var(--stroke-thin) solid var(--edge); background: var(--wash); cursor: crosshair; touch-action: none; user-select: none; }
.picture-room > canvas { position: absolute; inset: 0; width: 100%; height: 100%; }
.picture-marks { position: absolute; inset: 0; width: 100%; height: 100%; pointer-events: none; overflow: hidden; }
.picture-marks path, .picture-marks circle, .picture-marks rect { fill: none; }
.picture-marks .halo { stroke: var(--card); stroke-width: 5px; stroke-opacity: 0.75; }
.picture-marks .line, .picture-sample .line { stroke: var(--ink); stroke-width: var(--stroke-strong); }
.picture-marks .line.line { stroke-width: var(--stroke-line); stroke-dasharray: 7 4; }
.picture-marks .length, .picture-marks .angle { stroke: var(--measured); stroke-dasharray: none; }
.picture-marks .line.angle { stroke-width: var(--stroke-line); stroke-dasharray: none; }
.picture-marks .line.length, .picture-marks .line.first { stroke-width: var(--stroke-strong); stroke-dasharray: none; }
.picture-marks .line.second, .picture-sample .second { stroke: var(--brick); stroke-dasharray: 6 5; }
.picture-marks .ring { stroke: var(--ink); stroke-width: var(--stroke-line); }
.picture-marks .chosen .ring { stroke: var(--brick); stroke-width: var(--stroke-strong); }
.picture-marks .middle { fill: var(--ink); }
.picture-words { fill: var(--ink); stroke: var(--card); stroke-width: 4px; stroke-linejoin: round; paint-order: stroke; dominant-baseline: middle; font: 600 var(--size-small)/1 var(--font-label); font-variant-numeric: tabular-nums lining-nums; }
.picture-lens { position: absolute; top: var(--space-close); width: 130px; height: 130px; overflow: hidden; border: var(--stroke-line) solid var(--ink); border-radius: 50%; background: var(--wash); pointer-events: none; }
.picture-lens.left { left: var(--space-close); }
.picture-lens.right { right: var(--space-close); }
.picture-lens canvas, .picture-lens svg { position: absolute; inset: 0; width: 100%; height: 100%; }
.picture-lens path { fill: none; }
.picture-lens .halo { stroke: var(--card); stroke-width: 4px; stroke-opacity: 0.8; }
.picture-lens .cross { stroke: var(--ink); stroke-width: var(--stroke-thin); }
.picture-sides { position: absolute; inset: auto var(--space-close) var(--space-close); display: flex; justify-content: space-between; margin: 0; pointer-events: none; font: 600 var(--size-small)/1.3 var(--font-label); }
.picture-sides span { padding: 0 0.5em; background: color-mix(in srgb, var(--card) 85%, transparent); }
.picture-zoom { display: flex; flex-wrap: wrap; gap: var(--space-close); margin-top: var(--space-close); }
.picture-pad { display: none; gap: var(--space-tight); }
.picture-pad button { min-width: 44px; padding-inline: 0; }
.picture-points { margin: 0; padding: 0; list-style: none; max-height: min(76vh, 48rem); overflow-y: auto; border: var(--stroke-thin) solid var(--rule); background: var(--card); font: var(--size-small)/1.3 var(--font-label); }
.picture-points li { display: flex; align-items: stretch; border-bottom: var(--stroke-thin) solid var(--rule); border-left: 4px solid transparent; }
.picture-points li:last-child { border-bottom: 0; }
.picture-points li.next { border-left-color: var(--measured); }
.picture-points button { border: 0; background: none; outline-offset: -3px; }
.picture-point { flex: 1; display: flex; align-items: center; justify-content: space-between; gap: 0 var(--space-close); text-align: left; }
.picture-point[aria-pressed=true] { background: var(--wash); font-weight: 600; }
.picture-where { color: var(--soft); font-weight: 400; white-space: nowrap; }
.picture-off { padding-inline: var(--space-close); color: var(--soft); text-decoration: underline; text-underline-offset: 0.2em; text-decoration-color: var(--rule); }
.picture-square { max-width: 46rem; padding-left: var(--space-near); border-left: 4px solid var(--steady); }
.picture-square.usable { border-left: 4px dashed var(--unsure); }
.picture-square.oblique { border-left: 6px double var(--beyond); }
.picture-square.unknown { border-left: 4px dotted var(--edge); }
.picture-measures { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 20rem), 1fr)); gap: 0 var(--space-far); margin: var(--space-near) 0; font-family: var(--font-label); }
.picture-measures > div { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 0 var(--space-near); padding: var(--space-tight) 0; border-bottom: var(--stroke-thin) solid var(--rule); }
.picture-measures dt { font-size: var(--size-small); }
.picture-measures dd { margin: 0; font-weight: 600; }
.picture-refused { max-width: 46rem; }
.picture-refused li { margin-bottom: var(--space-close); padding-left: 1.1em; text-indent: -1.1em; font: var(--size-small)/1.45 var(--font-label); }
.picture-refused li::before { content: "– "; }
.picture-enter { margin-top: var(--space-apart); padding: var(--space-near) var(--space-apart); border: var(--stroke-thin) solid var(--edge); background: var(--card); }
.picture-enter p { margin-bottom: var(--space-close); }
.picture-main { min-height: 2.75rem; padding-inline: 1.1rem; border-color: var(--ink); font-weight: 600; }
.picture-main:disabled { border-style: dotted; font-weight: 400; }
.picture-share input { width: min(100%, 26rem); padding: 0; accent-color: var(--measured); }
.picture-both { height: min(60vh, 34rem); margin-top: var(--space-close); cursor: default; touch-action: auto; }
.picture-key { display: flex; flex-wrap: wrap; gap: var(--space-tight) var(--space-apart); margin-top: var(--space-close); font: var(--size-small)/1.4 var(--font-label); }
.picture-sample { width: 36px; height: 10px; vertical-align: middle; }
@media (max-width: 56rem) {
  .picture-work { grid-template-columns: minmax(0, 1fr); }
  .picture-room { height: min(58vh, 34rem); }
  .picture-guide { position: sticky; top: 0; z-index: 2; }
  .picture-how { min-height: 0; }
  .picture-points { max-height: none; }
}
@media (max-width: 30rem) {
  .picture-guide, .picture-enter { padding-inline: var(--space-near); }
}
@media (pointer: coarse) {
  .picture-camera { display: inline-flex; }
  .picture-pad { display: flex; }
  .ways.picture-ways label, .picture-desk .chooser, .picture-px input { min-height: 44px; }
  .picture-point { min-height: 48px; align-items: center; }
}
@media print {
  .picture-zoom, .picture-lens, .picture-off, .picture-choice { display: none !important; }
  .picture-room { height: 110mm; }
  .picture-points { max-height: none; overflow: visible; }
}
`;
