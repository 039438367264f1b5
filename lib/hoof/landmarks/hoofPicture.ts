import type { Point } from '../../geometry/points.ts';
import type { HoofScene, Patch } from './hoofScene.ts';

type Colour = readonly [red: number, green: number, blue: number];

/** Earthy, as in a yard; nothing is told by them. */
const colours: Readonly<Record<Patch['of'], Colour>> = {
  horn: [158, 134, 102],
  hair: [98, 72, 52],
  skin: [120, 88, 62],
  sole: [216, 203, 176],
  wall: [160, 140, 110],
  bar: [188, 168, 134],
  frog: [122, 110, 98],
  furrow: [72, 64, 56],
  ground: [172, 168, 160],
  board: [248, 246, 240],
  bar_scale: [248, 246, 240],
};

const backdrop: Colour = [206, 208, 204];

/**
 * An invented picture as an SVG document, which a browser shows like a photograph.
 * @param scene of any view
 * @returns the text of the document, as wide and high as the picture in pixels
 * @example hoofPicture(hoofScene(parametricHoof('LF'), 'side')).slice(0, 4) // '<svg'
 */
export function hoofPicture({ width_px, height_px, patches }: HoofScene): string {
  const mark = width_px / 400;
  const drawn = patches.map((patch) => {
    const fill = paint(colours[patch.of], patch.light);
    // A line of its own colour closes the hairbreadth between neighbours.
    const edge = isScale(patch) ? paint(backdrop, 0.2) : fill;
    return `<path d="${way(patch.points)}" fill="${fill}" stroke="${edge}" stroke-width="${tidy(mark / 4)}"/>`;
  });
  const spots = patches
    .filter(isScale)
    .flatMap(({ of, points }) => (of === 'board' ? points.map((at) => spot(at, mark)) : []));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width_px}" height="${height_px}" viewBox="0 0 ${width_px} ${height_px}" stroke-linejoin="round">`,
    `<rect width="${width_px}" height="${height_px}" fill="${paint(backdrop, 1)}"/>`,
    ...drawn,
    ...spots,
    '</svg>',
    '',
  ].join('\n');
}

function isScale({ of }: Patch): boolean {
  return of === 'board' || of === 'bar_scale';
}

function way(points: readonly Point[]): string {
  return `M${points.map(([x, y]) => `${tidy(x)} ${tidy(y)}`).join('L')}Z`;
}

/** A quarter disc's worth of ink round a corner of the board, so that it is found again. */
function spot([x, y]: Point, mark: number): string {
  return `<circle cx="${tidy(x)}" cy="${tidy(y)}" r="${tidy(mark)}" fill="none" stroke="#8c2d24" stroke-width="${tidy(mark / 3)}"/>`;
}

function paint(colour: Colour, light: number): string {
  return `rgb(${colour.map((value) => Math.round(value * light)).join(' ')})`;
}

function tidy(value: number): string {
  return String(Math.round(value * 100) / 100);
}
