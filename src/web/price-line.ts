import { daysBetween } from '../core/calendar.js';
import { toMinor } from '../core/money.js';
import type { PackPrices, PriceLine } from '../core/price-history.js';
import type { Format } from './format.js';
import { type Html, html } from './html.js';

const width = 640;
const room = { left: 74, right: 150, top: 16, bottom: 34 };
const height = 220;
const strokes = ['solid', 'dashed', 'dotted'] as const;
const apart = 17;

type Point = { x: number; y: number; guess: boolean };
type Drawn = { name: string; points: Point[]; stroke: string };

/** What an ingredient cost over time, a line for each pack: each price stands until the next; a guess is a ring. */
export const priceLine = (
  { packs }: PriceLine,
  today: string,
  nameOf: (pack: PackPrices['pack']) => string,
  f: Format,
): Html => {
  const all = packs.flatMap(({ points }) => points);
  const dates = [today, ...all.map(({ price }) => price.date)].sort();
  const figures = all.map(({ each }) => each.toNumber());
  const [least, most] = [Math.min(...figures), Math.max(...figures)];
  const span = Math.max(1, daysBetween(dates[0]!, dates.at(-1)!));
  const x = (date: string) =>
    round(room.left + (daysBetween(dates[0]!, date) / span) * (width - room.left - room.right));
  const y = (figure: number) =>
    round(room.top + (1 - (figure - least) / (most - least || 1)) * (height - room.top - room.bottom));
  const drawn = packs.map(({ pack, points }, i) => ({
    name: nameOf(pack),
    stroke: strokes[i % strokes.length]!,
    points: points.map(({ price, each }) => ({
      x: x(price.date),
      y: y(each.toNumber()),
      guess: price.guess,
    })),
  }));
  const end = width - room.right;
  const ticks = most === least ? [all[0]!] : [lowest(all, least), lowest(all, most)];
  return html`<svg class="price-line" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" aria-hidden="true">
<path class="axis" d="M${room.left} ${height - room.bottom}H${end}"/>
${ticks.map(({ each }) => html`<text class="figure-at" x="${room.left - 10}" y="${y(each.toNumber()) + 5}">${f.money(toMinor(each))}</text><path class="level" d="M${room.left} ${y(each.toNumber())}H${end}"/>`)}
<text class="day" x="${room.left}" y="${height - 10}">${f.dateYear(dates[0]!)}</text><text class="day last" x="${end}" y="${height - 10}">${f.dateYear(dates.at(-1)!)}</text>
${drawn.map(oneLine(end))}${labels(drawn, end)}</svg>`;
};

const lowest = <T extends { each: { toNumber(): number } }>(all: readonly T[], figure: number): T =>
  all.find(({ each }) => each.toNumber() === figure)!;

const oneLine =
  (end: number) =>
  ({ points, stroke }: Drawn): Html => {
    const steps = points.map(({ x, y }, i) => (i === 0 ? `M${x} ${y}` : `H${x}V${y}`)).join('');
    return html`<path class="price ${stroke}" d="${steps}H${end}"/>${points.map(
      ({ x, y, guess }) => html`<circle class="${guess ? 'guessed' : 'paid'}" cx="${x}" cy="${y}" r="5"/>`,
    )}`;
  };

/** Which line is which, at its end; none stands on another. */
const labels = (drawn: readonly Drawn[], end: number): Html[] => {
  let free = 0;
  return [...drawn]
    .sort((a, b) => a.points.at(-1)!.y - b.points.at(-1)!.y)
    .map(({ name, points }) => {
      const at = Math.max(free, points.at(-1)!.y + 5);
      free = at + apart;
      return html`<text class="name" x="${end + 8}" y="${at}">${short(name)}</text>`;
    });
};

const longest = 22;
const short = (name: string): string => (name.length > longest ? `${name.slice(0, longest - 1)}…` : name);

const round = (value: number): number => Math.round(value * 10) / 10;
