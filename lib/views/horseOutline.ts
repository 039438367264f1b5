import { lines, type Pen, type Point } from './pen.ts';
import { type SvgNode, svg } from './svg.ts';
import { tissues } from './theme.ts';

/** Landmarks of the horse that is drawn, in mm: x backwards from the chest, y up from the ground. */
export const horseMarks = {
  withers: [790, 1515],
  elbow: [690, 790],
  bladeTop: [800, 1470],
  shoulderPoint: [420, 1060],
  buttockPoint: [1945, 1190],
} as const satisfies Readonly<Record<string, Point>>;

/** A horse from its left side with its feet on the line y = 0, a schematic on which measures of the whole horse are shown. */
export function horseOutline(draw: Pen): SvgNode[] {
  const [eyeX, eyeY] = draw.at([140, 1680]);
  return [
    svg('path', { class: 'far', d: foreleg(draw, 120) + hindleg(draw, -130), fill: tissues.sole, ...lines.fine }),
    svg('path', { class: 'tail', d: tail(draw), fill: tissues.skin, ...lines.fine }),
    svg('path', { class: 'horse', d: body(draw), fill: tissues.skin, ...lines.outline }),
    svg('path', { class: 'hooves', d: hoof(draw, 430) + hoof(draw, 1575), fill: tissues.horn, ...lines.fine }),
    svg('circle', { cx: eyeX, cy: eyeY, r: 1.5, fill: tissues.line }),
  ];
}

function body(draw: Pen): string {
  const head = draw.path`M${[245, 1900]} C${[170, 1850]} ${[50, 1640]} ${[-80, 1440]} C${[-120, 1380]} ${[-100, 1330]} ${[-55, 1325]} C${[0, 1320]} ${[50, 1390]} ${[130, 1440]} C${[220, 1480]} ${[300, 1530]} ${[345, 1610]}`;
  const chest = draw.path`C${[400, 1500]} ${[430, 1330]} ${[405, 1160]} C${[385, 1060]} ${[430, 930]} ${[490, 860]}`;
  const fore = draw.path`C${[500, 720]} ${[505, 580]} ${[505, 480]} C${[515, 400]} ${[515, 270]} ${[500, 190]} C${[490, 140]} ${[460, 90]} ${[430, 0]} L${[560, 0]} C${[560, 60]} ${[560, 120]} ${[575, 190]} C${[575, 270]} ${[575, 380]} ${[590, 470]} C${[600, 580]} ${[640, 700]} ${[690, 790]}`;
  const belly = draw.path`C${[850, 740]} ${[1180, 750]} ${[1400, 890]} C${[1450, 905]} ${[1475, 870]} ${[1500, 825]}`;
  const hind = draw.path`C${[1560, 720]} ${[1650, 630]} ${[1665, 530]} C${[1660, 420]} ${[1655, 280]} ${[1645, 190]} C${[1635, 140]} ${[1605, 90]} ${[1575, 0]} L${[1705, 0]} C${[1705, 60]} ${[1705, 120]} ${[1725, 190]} C${[1730, 300]} ${[1735, 420]} ${[1775, 530]} C${[1785, 560]} ${[1780, 590]} ${[1780, 620]} C${[1790, 730]} ${[1850, 810]} ${[1900, 930]} C${[1945, 1020]} ${[1950, 1110]} ${[1945, 1190]}`;
  const back = draw.path`C${[1945, 1290]} ${[1905, 1360]} ${[1850, 1400]} C${[1730, 1490]} ${[1570, 1500]} ${[1440, 1465]} C${[1290, 1425]} ${[1130, 1405]} ${[1000, 1430]} C${[920, 1450]} ${[870, 1515]} ${[770, 1525]} C${[640, 1550]} ${[560, 1850]} ${[310, 1935]}`;
  const ear = draw.path`C${[320, 1975]} ${[300, 2020]} ${[275, 2040]} C${[250, 2000]} ${[235, 1950]} ${[245, 1900]} Z`;
  return head + chest + fore + belly + hind + back + ear;
}

function foreleg(draw: Pen, by: number): string {
  const p = (x: number, y: number): Point => [x + by, y];
  return draw.path`M${p(490, 880)} C${p(500, 720)} ${p(505, 580)} ${p(505, 480)} C${p(515, 400)} ${p(515, 270)} ${p(500, 190)} C${p(490, 140)} ${p(460, 90)} ${p(430, 0)} L${p(560, 0)} C${p(560, 60)} ${p(560, 120)} ${p(575, 190)} C${p(575, 270)} ${p(575, 380)} ${p(590, 470)} C${p(600, 580)} ${p(640, 700)} ${p(660, 880)} Z`;
}

function hindleg(draw: Pen, by: number): string {
  const p = (x: number, y: number): Point => [x + by, y];
  return draw.path`M${p(1620, 960)} C${p(1600, 760)} ${p(1655, 640)} ${p(1665, 530)} C${p(1660, 420)} ${p(1655, 280)} ${p(1645, 190)} C${p(1635, 140)} ${p(1605, 90)} ${p(1575, 0)} L${p(1705, 0)} C${p(1705, 60)} ${p(1705, 120)} ${p(1725, 190)} C${p(1730, 300)} ${p(1735, 420)} ${p(1775, 530)} C${p(1790, 700)} ${p(1850, 800)} ${p(1880, 960)} Z`;
}

function hoof(draw: Pen, x: number): string {
  return draw.path`M${[x, 0]} L${[x + 36, 78]} L${[x + 131, 50]} L${[x + 130, 0]} Z`;
}

function tail(draw: Pen): string {
  return draw.path`M${[1880, 1370]} C${[1990, 1370]} ${[2030, 1200]} ${[2030, 980]} C${[2035, 820]} ${[2060, 700]} ${[2010, 560]} C${[1960, 660]} ${[1930, 820]} ${[1930, 1000]} Z`;
}
