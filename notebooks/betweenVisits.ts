import { betweenVisits, chosen, type HerdPage, intervalSlopes, say } from '../lib/index.ts';

const outcomes = [
  { value: 'toe_length_mm', label: say`Toe length` },
  { value: 'toe_angle_deg', label: say`Toe angle` },
  { value: 'wall_level_mm', label: say`Level, from the front` },
  { value: 'heel_level_mm', label: say`Level, from behind` },
];
const everyHorse = '';

export const page: HerdPage = {
  name: 'between-visits',
  title: say`Between visits`,
  question: say`How does each foot change from the farrier’s work to the next visit?`,
  blocks: ({ herd, controls, units }) => {
    const horse = herd.intervals.column('horse_id').values as readonly string[];
    const names = [...new Set(horse)].sort((a, b) => a.localeCompare(b));
    const asked = chosen(controls, 'horse', everyHorse);
    const only = names.includes(asked) ? asked : everyHorse;
    const wanted = chosen(controls, 'outcome', outcomes[0].value);
    const column = outcomes.find(({ value }) => value === wanted)?.value ?? outcomes[0].value;
    const rows = Uint32Array.from(horse.keys()).filter((row) => only === everyHorse || horse[row] === only);
    const charts = betweenVisits(herd.intervals, { column, units, rows, visits: herd.visits });
    return [
      {
        kind: 'prose',
        text: say`An interval runs from what was measured **after** the farrier’s work to what was measured **before** the next; where one of them is missing it runs between like moments, and the column **Compared** says so. Toe length and angle drift back between visits in every foot; what matters is how fast, and whether level goes with it.`,
      },
      { kind: 'control', name: 'outcome', label: say`What changes`, input: 'choice', options: outcomes, value: column },
      {
        kind: 'control',
        name: 'horse',
        label: say`Which horse`,
        input: 'choice',
        options: [
          { value: everyHorse, label: say`Every horse` },
          ...names.map((name) => ({ value: name, label: name })),
        ],
        value: only,
      },
      { kind: 'chart', ...intervalSlopes(herd.intervals, { column, units, rows }) },
      { kind: 'heading', level: 2, text: say`From work to work` },
      { kind: 'group', layout: 'side by side', blocks: charts.map((chart) => ({ kind: 'chart', ...chart })) },
      { kind: 'sheet', name: 'intervals', title: say`Every interval`, sheet: herd.intervals, rows },
    ];
  },
};
