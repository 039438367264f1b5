import {
  addressOf,
  type Block,
  chosen,
  type DisplayUnits,
  type Finding,
  findingWords,
  footBelow,
  footFront,
  footRear,
  footShape,
  footSide,
  fourFeet,
  type Herd,
  type HerdFinding,
  type HerdPage,
  type Limb,
  latestOccasions,
  linkedHerd,
  type Measure,
  oppositeRows,
  type Ranking,
  rangeSharesChart,
  ranking,
  type State,
  say,
  shownDay,
  twoFeet,
} from '../lib/index.ts';

/** How many findings of a kind are shown before the reader asks for all. */
const first = { raise: 8, unsure: 4, 'on purpose': 4 };

export const page: HerdPage = {
  name: 'herd',
  title: say`The herd`,
  question: say`Which feet are worth a word with the farrier, and why?`,
  blocks: ({ herd, controls, units }) => {
    const ranked = ranking(herd.occasions, herd.ranges);
    const all = chosen(controls, 'all', false);
    const list = (findings: readonly HerdFinding[]) =>
      (all ? findings : findings.slice(0, first[findings[0].state])).map((finding) =>
        findingBlock(finding, herd, units),
      );
    const more = [ranked.raise, ranked.unsure, ranked.onPurpose].some(
      (findings) => findings.length > 0 && findings.length > first[findings[0].state],
    );
    return [
      figures(herd, ranked),
      { kind: 'heading', level: 2, text: say`Worth raising`, id: 'worth-raising' },
      {
        kind: 'prose',
        text: say`Nearly every foot breaks one textbook range or another, so broken ranges aren’t counted here. Listed is what is unusual for this herd **and** for this foot, and has changed by more than the error of measuring. Most unusual first.`,
      },
      ...(ranked.raise.length === 0
        ? [
            {
              kind: 'prose' as const,
              text: say`No foot stands out from this herd and its own past by more than the error of measuring.`,
            },
          ]
        : list(ranked.raise)),
      ...section(
        say`Can’t tell yet`,
        ranked.unsure,
        list,
        say`These are unusual for the herd, but whether the foot has changed can’t be told from what was measured.`,
      ),
      ...section(
        say`Set so on purpose`,
        ranked.onPurpose,
        list,
        say`Vet and farrier have set these feet as they are. They are shown, never ranked.`,
      ),
      ...(more
        ? [
            {
              kind: 'control' as const,
              name: 'all',
              label: say`Show every finding`,
              input: 'yes-no' as const,
              value: all,
            },
          ]
        : []),
      { kind: 'heading', level: 2, text: say`Every horse, four feet`, id: 'feet' },
      drawings(herd, ranked, units),
      { kind: 'heading', level: 2, text: say`Beside the textbook`, id: 'textbook' },
      { kind: 'chart', ...rangeSharesChart(herd.occasions, { units, ranges: herd.ranges }) },
      { kind: 'heading', level: 2, text: say`Choose and compare`, id: 'compare' },
      { kind: 'linked', ...linkedHerd(herd.occasions, { units, column: comparedColumn(herd) }) },
      {
        kind: 'sheet',
        name: 'feet',
        title: say`Every foot, day by day`,
        caption: say`Repeated readings of a foot are averaged. Computed columns are set in italics.`,
        sheet: herd.occasions,
      },
    ];
  },
};

function figures(herd: Herd, { raise, feet, once }: Ranking): Block {
  const date = herd.occasions.column('date').values as Float64Array;
  // A total below the table has a name too, but no foot.
  const measured = new Set(
    (herd.occasions.column('horse_id').values as readonly string[]).filter((name) => name !== ''),
  );
  const last = date.reduce((latest, day) => Math.max(latest, day), Number.NEGATIVE_INFINITY);
  return {
    kind: 'figures',
    items: [
      { label: say`horses measured`, value: String(measured.size) },
      { label: say`feet measured`, value: String(feet), note: once > 0 ? say`${once} of them once so far` : undefined },
      { label: say`worth raising`, value: String(raise.length) },
      { label: say`last measured`, value: Number.isFinite(last) ? shownDay(last) : say`never` },
    ],
  };
}

/** What is compared at first: level from the front, or what of the rest was measured. */
function comparedColumn({ occasions }: Herd): string {
  const known = (name: string) =>
    occasions.names.includes(name) &&
    (occasions.column(name).values as Float64Array).some((value) => !Number.isNaN(value));
  return ['wall_level_mm', 'heel_level_mm', 'toe_angle_deg', 'toe_length_mm'].find(known) ?? 'wall_level_mm';
}

function section(
  text: string,
  findings: readonly HerdFinding[],
  list: (findings: readonly HerdFinding[]) => readonly Block[],
  words: string,
): Block[] {
  if (findings.length === 0) return [];
  return [{ kind: 'heading', level: 2, text }, { kind: 'prose', text: words }, ...list(findings)];
}

function findingBlock(finding: HerdFinding, herd: Herd, units: DisplayUnits): Finding {
  const { foot, measure, row, state } = finding;
  return {
    kind: 'finding',
    id: `${foot.horse}-${foot.limb}`,
    ...findingWords(finding, units),
    state,
    drawing: findingDrawing(measure, row, herd, units),
  };
}

const draw = { side: footSide, front: footFront, rear: footRear, below: footBelow, pair: footBelow, horse: footBelow };

/** What of two feet a difference is of. */
const compared: Readonly<Record<string, 'toeAngle' | 'width' | 'length' | undefined>> = {
  toe_angle_left_minus_right_deg: 'toeAngle',
  foot_width_left_minus_right_mm: 'width',
  foot_length_left_minus_right_mm: 'length',
};

function findingDrawing({ name, view }: Measure, row: number, { occasions }: Herd, units: DisplayUnits) {
  const shape = footShape(occasions, row);
  const opposite = oppositeRows(occasions)[row];
  const partner = opposite < 0 ? undefined : footShape(occasions, opposite);
  const part = compared[name];
  if (shape === undefined) return undefined;
  return part && partner ? twoFeet(shape, partner, part, { units }) : draw[view](shape, { units });
}

function drawings(herd: Herd, ranked: Ranking, units: DisplayUnits): Block {
  const horse = herd.occasions.column('horse_id').values as readonly string[];
  const date = herd.occasions.column('date').values as Float64Array;
  const rows = new Map<string, number[]>();
  for (const row of latestOccasions(herd.occasions)) rows.set(horse[row], [...(rows.get(horse[row]) ?? []), row]);
  const states = new Map<string, Partial<Record<Limb, State>>>();
  for (const { foot, state } of [...ranked.unsure, ...ranked.onPurpose, ...ranked.raise]) {
    states.set(foot.horse, { ...states.get(foot.horse), [foot.limb]: state });
  }
  return {
    kind: 'drawings',
    caption: say`Each print is drawn to one scale from the foot’s own latest width, length, heels and frog; a dashed outline was not measured.`,
    items: [...rows].map(([name, own]) => {
      const shapes = own.map((row) => footShape(herd.occasions, row)).filter((shape) => shape !== undefined);
      const day = own.reduce((latest, row) => Math.max(latest, date[row]), Number.NEGATIVE_INFINITY);
      return {
        title: name,
        note: Number.isFinite(day) ? say`measured ${shownDay(day)}` : undefined,
        drawing: fourFeet(shapes, { horse: name, states: states.get(name), units }),
        href: addressOf('between-visits', { horse: name }),
      };
    }),
  };
}
