import { parse, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { type Config, compile, type TopLevelSpec } from 'vega-lite';
import { fonts } from '../../views/theme.ts';
import { say } from '../../words/say.ts';
import type { LinkedCharts } from '../blocks.ts';

const monthsAs = (style: 'short' | 'long') => {
  const format = new Intl.DateTimeFormat(say`en`, { month: style, timeZone: 'UTC' });
  return Array.from({ length: 12 }, (_, month) => format.format(Date.UTC(2026, month)));
};

const daysAs = (style: 'short' | 'long') => {
  const format = new Intl.DateTimeFormat(say`en`, { weekday: style, timeZone: 'UTC' });
  // The fourth of January 2026 is a Sunday.
  return Array.from({ length: 7 }, (_, day) => format.format(Date.UTC(2026, 0, 4 + day)));
};

/** How axes and tooltips write numbers and dates: by the reader's language. */
const locale = {
  number: {
    decimal: say`.`,
    thousands: new Intl.NumberFormat(say`en`).formatToParts(1e6).find(({ type }) => type === 'group')?.value ?? '',
    grouping: [3],
    currency: ['', ''],
  },
  time: {
    ...{ dateTime: '%x %X', date: '%Y-%m-%d', time: '%H:%M:%S', periods: ['AM', 'PM'] },
    ...{ days: daysAs('long'), shortDays: daysAs('short'), months: monthsAs('long'), shortMonths: monthsAs('short') },
  },
} as Config['locale'];

/** What a specification leaves open is as in the rest of the notebook. */
const config: Config = { background: 'transparent', font: fonts.label, aria: false, locale };

/** A view that interprets its expressions, so that it runs where generated code is forbidden. */
function viewOf(block: LinkedCharts, container?: HTMLElement): View {
  const { spec } = compile(block.specification as TopLevelSpec, { config });
  return new View(parse(spec, undefined, { ast: true }), {
    expr: expressionInterpreter,
    renderer: container ? 'svg' : 'none',
    container,
    hover: container !== undefined,
  });
}

/**
 * Draws charts that select each other into an element, charts below each other as wide as it is.
 * @returns how to take them away again
 */
export async function drawLinked(element: HTMLElement, block: LinkedCharts): Promise<() => void> {
  const view = await viewOf(block, element).runAsync();
  const spare = () => element.clientWidth - Number(element.querySelector('svg')?.getAttribute('width'));
  const fit = new ResizeObserver(async () => {
    if (view.width() > 0 && spare() !== 0) await view.width(Math.max(200, view.width() + spare())).runAsync();
    nameOnce(element, `${block.title}. ${block.summary}`);
  });
  fit.observe(element);
  return () => {
    fit.disconnect();
    view.finalize();
    element.replaceChildren();
  };
}

/** One name for the whole picture, and none for its hundreds of marks. */
function nameOnce(element: HTMLElement, name: string): void {
  element.removeAttribute('aria-roledescription');
  const picture = element.querySelector('svg');
  picture?.setAttribute('role', 'img');
  picture?.setAttribute('aria-label', name);
  for (const inner of picture?.querySelectorAll('[role]') ?? []) {
    inner.removeAttribute('aria-roledescription');
    inner.setAttribute('role', 'presentation');
  }
}

/** The same charts before anything is selected, as SVG text without roles of its own; needs no document. */
export async function linkedToSvg(block: LinkedCharts): Promise<string> {
  const drawn = await viewOf(block).toSVG();
  return drawn.replace(/<[^>]*>/g, (tag) => tag.replace(/ (?:role|aria-\w+)="[^"]*"/g, ''));
}
