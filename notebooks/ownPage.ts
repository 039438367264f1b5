import {
  type Block,
  type ChosenChart,
  chosen,
  chosenChart,
  type Herd,
  type HerdPage,
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
      return [tableControl(table), { kind: 'prose', text: say`This table has no column of numbers.` }];
    const pick = (name: string, names: readonly string[], first: string) => {
      const wanted = chosen(controls, name, first);
      return names.includes(wanted) ? wanted : first;
    };
    const kindNames = kinds.filter(({ value }) => dated || value !== 'over time');
    const kind = pick(
      'kind',
      kindNames.map(({ value }) => value),
      'spread',
    ) as ChosenChart['kind'];
    const column = pick('column', numbers, numbers.find((name) => name === 'toe_angle_deg') ?? numbers[0]);
    const other = pick('other', numbers, numbers.find((name) => name !== column) ?? column);
    const by = pick('by', [nothing, ...groups], groups.includes('limb') ? 'limb' : nothing);
    const title = chosen(controls, 'title', '').trim();
    const chart: ChosenChart = {
      kind,
      column,
      ...(kind === 'against' && { other }),
      ...(by !== nothing && { by }),
    };
    const option = (name: string) => ({ value: name, label: sheet.describe(name).title });
    return [
      {
        kind: 'prose',
        text: say`Choose, and the chart follows. The choice stands in this page’s address: a bookmark keeps it, and a link shows it to someone with the same tables. The same page as TypeScript stands below, to be taken into the notebook for good.`,
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
          ...(kind === 'against'
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
            options: [{ value: nothing, label: 'nothing' }, ...groups.map(option)],
            value: by,
          },
          { kind: 'control', name: 'title', label: say`Your title`, input: 'text', value: title },
        ],
      },
      ...(title === '' ? [] : [{ kind: 'heading' as const, level: 2 as const, text: title, id: 'own' }]),
      { kind: 'chart', ...chosenChart(sheet, { ...chart, units }) },
      { kind: 'heading', level: 2, text: say`The same page in TypeScript`, id: 'code' },
      {
        kind: 'code',
        name: 'own-page',
        title: say`Save this as a file in notebooks/ and add it to notebooks/index.ts`,
        text: pageCode(table, chart, title),
      },
      {
        kind: 'download',
        label: say`The page as TypeScript`,
        filename: 'myPage.ts',
        type: 'text/plain',
        contents: () => pageCode(table, chart, title),
      },
    ];
  },
};

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
export function pageCode(table: keyof Pick<Herd, TableOf>, chart: ChosenChart, title: string): string {
  const options = Object.entries(chart).map(([name, value]) => `${name}: ${JSON.stringify(value)}`);
  return say`import { chosenChart, type HerdPage } from '../lib/index.ts';

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
