/**
 * The look, decided in one place: colours, font stacks, sizes, spacing, strokes. Everything that draws reads it here,
 * the style sheet through `cssVariables`. Why each is as it is stands in `docs/look.md`; `tests/views/theme.test.ts`
 * measures contrast and tells the colours apart under three kinds of colour blindness.
 */

/** Grounds, from the page up. */
export const grounds = { paper: '#f8f5ee', card: '#fffdf9', wash: '#efe9dc' } as const;

/** Text and lines. `ink` and `soft` are for words, `edge` for borders that mean something, `rule` only parts things. */
export const inks = { ink: '#2b2a27', soft: '#5f5a51', edge: '#8d8576', rule: '#d8d0c0' } as const;

/** The few colours that carry meaning; none does so alone, a shape, a line pattern or a word stands beside it. */
export const accents = {
  pond: '#1a5a6b',
  ochre: '#ad6712',
  brick: '#8c2d24',
  heather: '#5b4590',
  stone: '#7d7a72',
} as const;

/** What a foot is made of, for the drawings: pale, so that lines and numbers stand out. */
export const tissues = {
  horn: '#e2d4b9',
  sole: '#f3ecdd',
  frog: '#cbb491',
  skin: '#ece4d6',
  line: '#6b5f4d',
} as const;

/** Which accent stands for what. */
export const roles = {
  front: accents.pond,
  hind: accents.ochre,
  raise: accents.brick,
  unsure: accents.ochre,
  steady: accents.stone,
  onPurpose: accents.heather,
  /** What a drawing or chart wants looked at: the measured line, the fitted line. */
  measured: accents.pond,
  beyond: accents.brick,
  link: accents.pond,
  focus: accents.heather,
} as const;

/** System fonts only: nothing is fetched. Prose is read in `text`; tables, charts and drawings share `label`. */
export const fonts = {
  text: '"Iowan Old Style", "Palatino Linotype", Palatino, "URW Palladio L", P052, Georgia, serif',
  label: '"Avenir Next", Avenir, "Segoe UI", "Noto Sans", "Liberation Sans", Arial, sans-serif',
  formula: '"SFMono-Regular", Menlo, Consolas, "DejaVu Sans Mono", "Liberation Mono", monospace',
} as const;

/** Font sizes in px at the browser's usual 16; the style sheet gets them in rem. `mark` is the least that is drawn. */
export const sizes = { mark: 12, label: 13, small: 14, body: 17, lead: 20, heading: 24, title: 32 } as const;

/** Distances in px. */
export const spaces = { hair: 2, tight: 4, close: 8, near: 12, apart: 20, far: 32, wide: 52 } as const;

/** Stroke widths in px. */
export const strokes = { hair: 0.75, thin: 1, line: 1.5, strong: 2.25 } as const;

/** Dash patterns. `missing`: what was not measured. `level`: a reference to hold against. */
export const dashes = { missing: '2 3', level: '7 4', left: 'none', right: '5 3' } as const;

/** How many millimetres of foot one px of a drawing shows. Every drawing side by side uses the same one. */
export const drawingScales = { large: 0.6, usual: 0.8, small: 2.2 } as const;

/** Least widths of a chart in px, and the height of one of its rows. */
export const chartSizes = { width: 680, height: 380, panel: 210, row: 34 } as const;

/**
 * The theme as custom properties for a style sheet.
 * @returns lines of `--name: value;`, colours as `#rrggbb`, font sizes in rem, spaces in px
 * @example cssVariables().includes('--paper: #f8f5ee;') // true
 */
export function cssVariables(): string {
  const lines: string[] = [];
  const put = (prefix: string, values: Record<string, string | number>, unit: (value: string | number) => string) => {
    for (const [name, value] of Object.entries(values)) lines.push(`--${prefix}${dashed(name)}: ${unit(value)};`);
  };
  const plain = String;
  put('', grounds, plain);
  put('', inks, plain);
  put('', accents, plain);
  put('', tissues, plain);
  put('', roles, plain);
  put('font-', fonts, plain);
  put('size-', sizes, (px) => `${Number(px) / 16}rem`);
  put('space-', spaces, (px) => `${px}px`);
  put('stroke-', strokes, (px) => `${px}px`);
  return `${lines.join('\n')}\n`;
}

function dashed(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
