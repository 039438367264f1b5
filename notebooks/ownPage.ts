import {
  asProse,
  type Block,
  type ChosenChart,
  chosen,
  chosenChart,
  columnTitle,
  type HerdPage,
  type KeptPage,
  midSentence,
  type Sheet,
  say,
} from '../lib/index.ts';

const tables = [
  { value: 'occasions', label: say`Feet, day by day` },
  { value: 'intervals', label: say`Intervals between visits` },
  { value: 'horses', label: say`Horses` },
] as const;
type TableOf = (typeof tables)[number]['value'];

const kinds = [
  { value: 'spread', label: say`How values spread` },
  { value: 'over time', label: say`Over time` },
  { value: 'against', label: say`Against another column` },
] as const;

const nothing = '';

export const page: HerdPage = {
  name: 'own-page',
  title: say`A page of your own`,
  short: say`Own page`,
  question: say`Which column do you want to see, parted how, and drawn in which way?`,
  blocks: ({ herd, controls, units }) => {
    const asked = chosen(controls, 'table', 'occasions');
    const table = tables.find(({ value }) => value === asked)?.value ?? 'occasions';
    const sheet = herd[table];
    const { numbers, groups, dated } = columnsOf(sheet);
    if (numbers.length === 0)
      return [tableControl(table), { kind: 'prose', text: say`This table has no column of numbers.` }, keepBlock()];
    const missing: string[] = [];
    const pick = (name: string, names: readonly string[], first: string) => {
      const wanted = chosen(controls, name, first);
      if (names.includes(wanted)) return wanted;
      missing.push(wanted);
      return first;
    };
    const kindNames = kinds.filter(({ value }) => dated || value !== 'over time');
    const askedKind = chosen(controls, 'kind', 'spread');
    const kind = kindNames.find(({ value }) => value === askedKind)?.value ?? 'spread';
    const column = pick('column', numbers, numbers.find((name) => name === 'toe_angle_deg') ?? numbers[0]);
    const second = numbers.find((name) => name !== column) ?? column;
    const other = kind === 'against' ? pick('other', numbers, second) : undefined;
    const asTitled = missing.length === 0;
    const by = pick('by', [nothing, ...groups], groups.includes('limb') ? 'limb' : nothing);
    const title = chosen(controls, 'title', '').trim();
    const chart: Omit<ChosenChart, 'units'> = {
      kind,
      column,
      ...(other !== undefined && { other }),
      ...(by !== nothing && { by }),
    };
    const code = pageCode(table, chart, title);
    const option = (name: string) => ({ value: name, label: sheet.describe(name).title });
    return [
      {
        kind: 'prose',
        text: say`Choose, and the chart follows. What you want to see again is kept in the record, and stands under the other pages at the top from then on. The choice stands in this page’s address too: a link shows it to someone with the same tables. The same page as TypeScript stands below.`,
      },
      {
        kind: 'group',
        layout: 'side by side',
        blocks: [
          tableControl(table),
          { kind: 'control', name: 'kind', label: say`Drawn`, input: 'choice', options: kindNames, value: kind },
          {
            kind: 'control',
            name: 'column',
            label: say`Column`,
            input: 'choice',
            options: numbers.map(option),
            value: column,
          },
          ...(other !== undefined
            ? [
                {
                  kind: 'control' as const,
                  name: 'other',
                  label: say`Against`,
                  input: 'choice' as const,
                  options: numbers.map(option),
                  value: other,
                },
              ]
            : []),
          {
            kind: 'control',
            name: 'by',
            label: say`Parted by`,
            input: 'choice',
            options: [{ value: nothing, label: say`nothing` }, ...groups.map(option)],
            value: by,
          },
          { kind: 'control', name: 'title', label: say`Your title`, input: 'text', value: title },
        ],
      },
      keepBlock({ title: title || defaultTitle(sheet, chart), controls: { table, by: nothing, ...chart } }),
      ...(missing.length === 0 ? [] : [{ kind: 'prose' as const, text: missingWords(missing) }]),
      ...(title === '' || !asTitled ? [] : [{ kind: 'heading' as const, level: 2 as const, text: title, id: 'own' }]),
      { kind: 'chart', ...chosenChart(sheet, { ...chart, units }) },
      { kind: 'heading', level: 2, text: say`The same page in TypeScript`, id: 'code' },
      {
        kind: 'code',
        name: 'own-page',
        title: say`Save this as a file in notebooks/ and add it to notebooks/index.ts`,
        text: code,
      },
      {
        kind: 'download',
        label: say`The page as TypeScript`,
        filename: 'myPage.ts',
        type: 'text/plain',
        contents: () => code,
      },
    ];
  },
};

function keepBlock(page?: KeptPage): Block {
  return { kind: 'keep', name: 'own', page, keeper: async () => (await import('./shell/keeper.ts')).keeper };
}

/** @example defaultTitle(sheet, { kind: 'spread', column: 'toe_angle_deg', by: 'limb' }) // 'Toe angle, by limb' */
function defaultTitle(sheet: Sheet, { kind, column, other, by }: ChosenChart): string {
  const titleOf = (name: string) => sheet.describe(name).title;
  const what = titleOf(column);
  const drawn =
    other !== undefined
      ? say`${what} against ${midSentence(titleOf(other))}`
      : kind === 'over time'
        ? say`${what} over time`
        : what;
  return by === undefined ? drawn : say`${drawn}, by ${midSentence(titleOf(by))}`;
}

/** A kept page may outlive a column. */
function missingWords(names: readonly string[]): string {
  const said = names.map((name) => `“${asProse(columnTitle(name))}”`).join(say` and `);
  return say`**${said} can’t be shown from this table.** It may have been renamed or removed, be empty, or hold too many different words. The rest of the page is as it was asked for: choose something else above, and keep it.`;
}

function tableControl(table: TableOf): Block {
  return { kind: 'control', name: 'table', label: say`Table`, input: 'choice', options: tables, value: table };
}

/** Most groups that a row or a shape each can still tell apart. */
const mostGroups = 60;

function columnsOf(sheet: Sheet) {
  const all = sheet.names.map((name) => sheet.describe(name));
  const few = (name: string) => {
    const column = sheet.column(name);
    return column.kind === 'text' && column.levels.length <= mostGroups && column.levels.length > 0;
  };
  return {
    numbers: all.filter(({ kind, name }) => kind === 'number' && hasAny(sheet, name)).map(({ name }) => name),
    groups: all
      .filter(({ kind, name }) => (kind === 'boolean' && hasAny(sheet, name)) || (kind === 'text' && few(name)))
      .map(({ name }) => name),
    dated: all.some(({ kind }) => kind === 'date'),
  };
}

function hasAny(sheet: Sheet, name: string): boolean {
  return (sheet.column(name).values as Float64Array).some((value) => !Number.isNaN(value));
}

/** A page that shows the same: a name is written as JSON, so that no text of a reader's becomes code. */
export function pageCode(table: TableOf, chart: ChosenChart, title: string): string {
  const options = Object.entries(chart).map(([name, value]) => `${name}: ${JSON.stringify(value)}`);
  return `import { chosenChart, type HerdPage } from '../lib/index.ts';

export const page: HerdPage = {
  name: 'my-page',
  title: ${JSON.stringify(title === '' ? say`My page` : title)},
  question: 'What do the records show?',
  blocks: ({ herd, units }) => [
    { kind: 'chart', ...chosenChart(herd.${table}, { ${options.join(', ')}, units }) },
  ],
};
`;
}
