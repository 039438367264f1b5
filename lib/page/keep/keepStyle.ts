/** The rules for keeping pages. */
export const keepStyle = `
.keep { max-width: 40rem; margin: var(--space-near) 0; font: var(--size-small)/1.45 var(--font-label); }
.keep p { margin: 0 0 var(--space-close); }
.keep-now { display: flex; flex-wrap: wrap; align-items: center; gap: var(--space-tight) var(--space-near); }
.keep-now button { padding-inline: 1.1rem; border-color: var(--ink); font-weight: 600; }
.keep-now .note { flex: 1 1 18rem; margin: 0; }
.keep [role=status]:empty { display: none; }
.keep h3 { margin: var(--space-apart) 0 var(--space-tight); font: 600 var(--size-small)/1.3 var(--font-label); }
.keep ul { border-top: var(--stroke-thin) solid var(--rule); }
.keep li { display: flex; flex-wrap: wrap; align-items: center; gap: var(--space-tight) var(--space-close); padding: var(--space-tight) 0; border-bottom: var(--stroke-thin) solid var(--rule); }
.keep li > a { flex: 1 1 12rem; padding: 0.3rem 0; overflow-wrap: anywhere; }
.keep li > a[aria-current] { color: var(--ink); font-weight: 600; }
.keep li > form { display: flex; flex: 1 1 100%; flex-wrap: wrap; align-items: center; gap: var(--space-tight) var(--space-close); order: 1; }
.keep li input { width: 18rem; max-width: 100%; margin-left: var(--space-tight); }
@media (pointer: coarse) {
  .keep li > a { display: flex; align-items: center; min-height: 44px; }
}
@media print {
  .keep { display: none; }
}
`;
