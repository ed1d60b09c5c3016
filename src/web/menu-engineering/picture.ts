import type { Engineered, Engineering, MenuClass } from '../../core/menu-engineering.js';
import { toMinor } from '../../core/money.js';
import type { Format } from '../format.js';
import { type Html, html } from '../html.js';

const width = 760;
const height = 420;
const room = { left: 84, right: 20, top: 30, bottom: 44 };

/** Each class has a shape of its own, so that none is told by colour. */
const shapes: Record<MenuClass, (x: number, y: number) => Html> = {
  star: (x, y) => html`<path class="point star" d="${starAt(x, y)}"/>`,
  plowhorse: (x, y) => html`<rect class="point plowhorse" x="${x - 8}" y="${y - 8}" width="16" height="16"/>`,
  puzzle: (x, y) =>
    html`<path class="point puzzle" d="M${x} ${y - 11}L${x + 11} ${y}L${x} ${y + 11}L${x - 11} ${y}Z"/>`,
  dog: (x, y) => html`<circle class="point dog" cx="${x}" cy="${y}" r="8"/>`,
};

/** The shape of a class by itself, for the table. */
export const classMark = (name: MenuClass): Html =>
  html`<svg class="engineering-mark" viewBox="0 0 28 28" width="24" height="24" aria-hidden="true">${shapes[name](14, 14)}</svg>`;

const starAt = (x: number, y: number): string => {
  const points = Array.from({ length: 10 }, (_, i) => {
    const radius = i % 2 === 0 ? 12 : 5.5;
    const angle = (Math.PI / 5) * i - Math.PI / 2;
    return `${round(x + radius * Math.cos(angle))} ${round(y + radius * Math.sin(angle))}`;
  });
  return `M${points.join('L')}Z`;
};

/** Dishes by how often they are sold and what a portion leaves, numbered as in the table, with the two lines. */
export const engineeringPicture = (
  { dishes, meanMargin, popularFrom }: Engineering,
  f: Format,
): Html | undefined => {
  if (!meanMargin || !popularFrom || dishes.length < 2) return undefined;
  const [midX, midY] = [popularFrom.toNumber(), meanMargin.toNumber()];
  const xs = scale(
    [0, midX, ...dishes.map(({ mix }) => mix.toNumber())],
    room.left,
    width - room.right,
    0.03,
  );
  const ys = scale(
    [midY, ...dishes.map(({ margin }) => margin.toNumber())],
    height - room.bottom,
    room.top,
    0.14,
  );
  const [x, y] = [xs(midX), ys(midY)];
  const [right, floor] = [width - room.right, height - room.bottom];
  return html`<svg class="engineering" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" aria-hidden="true">
<path class="axis" d="M${room.left} ${room.top - 14}V${floor}H${right}"/>
<path class="mean" d="M${room.left} ${y}H${right}M${x} ${room.top - 14}V${floor}"/>
<text class="corner" x="${room.left + 8}" y="${room.top}">puzzles</text><text class="corner last" x="${right}" y="${room.top}">stars</text>
<text class="corner" x="${room.left + 8}" y="${floor - 8}">dogs</text><text class="corner last" x="${right}" y="${floor - 8}">plowhorses</text>
<text class="last" x="${room.left - 8}" y="${y + 5}">${f.money(toMinor(meanMargin))}</text><text class="middle" x="${x}" y="${floor + 18}">${f.percent(popularFrom)}</text>
<text class="last" x="${right}" y="${height - 8}">of all portions sold</text><text x="4" y="${room.top - 12}">margin</text>
${dishes.map((dish, i) => point(dish, i + 1, xs(dish.mix.toNumber()), ys(dish.margin.toNumber())))}</svg>`;
};

const point = ({ class: name }: Engineered, number: number, x: number, y: number): Html =>
  html`${shapes[name](x, y)}<text class="number" x="${x + 14}" y="${y + 5}">${number}</text>`;

/** Figures onto a stretch of the picture, with some air at both ends. */
const scale = (values: readonly number[], from: number, to: number, air: number) => {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const span = most - least || 1;
  return (value: number) => round(from + (air + ((value - least) / span) * (0.92 - air)) * (to - from));
};

const round = (value: number): number => Math.round(value * 10) / 10;
