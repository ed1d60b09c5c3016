import { type Html, html } from '../html.js';
import { type Frame, frameFor } from './curve-frame.js';
import { type Label, type Places, placed, type Spot } from './curve-labels.js';

/** A head-count as it is drawn; money in minor units, for drawing only. */
type DrawnPoint = {
  guests: number;
  aGuest: number;
  /** What steps up here, in few words; undefined where nothing does. */
  jump: string | undefined;
};

export type Drawing = {
  points: readonly DrawnPoint[];
  now: { guests: number; words: string };
  /** What a guest brings and what may be spent on one, at each point, with the words at the line. */
  price: { at: readonly number[]; words: string } | undefined;
  keeps: { at: readonly number[]; words: string } | undefined;
  money: (minor: number) => string;
};

/** The step curve of what one guest costs: solid runs, dotted jumps, words at what jumps. */
export const curveSvg = (drawing: Drawing, width: number): Html => {
  const { points, price, keeps, now } = drawing;
  const figures = [points.map(({ aGuest }) => aGuest), price?.at ?? [], keeps?.at ?? []].flat();
  const frame = frameFor(width, {
    from: points[0]!.guests,
    to: points.at(-1)!.guests,
    least: Math.min(...figures),
    most: Math.max(...figures),
  });
  const cost = points.map(({ guests, aGuest }) => ({ x: frame.x(guests), y: frame.y(aGuest) }));
  const level = (at: readonly number[]) => at.map((minor, i) => ({ x: cost[i]!.x, y: frame.y(minor) }));
  const [bring, may] = [level(price?.at ?? []), level(keeps?.at ?? [])];
  const here = cost[points.findIndex(({ guests }) => guests === now.guests)];
  const needle: Spot[] = here
    ? [
        { x: here.x - 0.1, y: here.y },
        { x: here.x + 0.1, y: frame.bottom },
      ]
    : [];
  const labels = placed(
    frame,
    [
      ...atLine(price?.words, 'price', bring, ['end', 'start']),
      ...atLine(keeps?.words, 'keeps', may, ['start', 'end']),
      ...(here ? [atNow(now.words, here, frame)] : []),
      ...jumpsOf(points, cost),
    ],
    [cost, bring, may, needle],
    width < 500 ? 3 : 6,
  );
  return html`<svg class="curve" viewBox="0 0 ${width} ${frame.height}" width="${width}" height="${frame.height}" aria-hidden="true">${axes(frame, drawing)}<path class="price" d="${path(bring)}"/><path class="keeps" d="${path(may)}"/>${here && html`<path class="needle" d="M${here.x} ${here.y}V${frame.bottom}"/>`}<path class="run" d="${runs(points, cost, false)}"/><path class="jump" d="${runs(points, cost, true)}"/>${here && html`<circle class="now" cx="${here.x}" cy="${here.y}" r="7"/>`}${labels.map(text)}</svg>`;
};

const text = ({ words, kind, x, y, anchor }: Label): Html =>
  html`<text class="${kind}" x="${x}" y="${y}" text-anchor="${anchor}">${words}</text>`;

const path = (spots: readonly Spot[]): string =>
  spots.map(({ x, y }, i) => `${i ? 'L' : 'M'}${x} ${y}`).join('');

/** Either the runs between jumps or the jumps: a piece that goes up to where something steps is a jump. */
const runs = (points: readonly DrawnPoint[], spots: readonly Spot[], jumps: boolean): string => {
  let d = '';
  let open = false;
  for (let i = 1; i < spots.length; i += 1) {
    const wanted = (points[i]!.jump !== undefined) === jumps;
    if (wanted && !open) d += `M${spots[i - 1]!.x} ${spots[i - 1]!.y}`;
    if (wanted) d += `L${spots[i]!.x} ${spots[i]!.y}`;
    open = wanted;
  }
  return d;
};

const axes = ({ left, right, bottom, x, y, money, guests, height }: Frame, drawing: Drawing): Html =>
  html`<path class="axis" d="M${left} ${bottom}H${right}${guests.map((at) => `M${x(at)} ${bottom}v5`).join('')}${money.map((at) => `M${left - 6} ${y(at)}h6`).join('')}"/>${money.map((at) => text({ words: drawing.money(at), kind: 'scale', x: left - 10, y: y(at) + 5, anchor: 'end' }))}${guests.map((at) => text({ words: String(at), kind: 'scale', x: x(at), y: bottom + 21, anchor: 'middle' }))}${text({ words: 'guests', kind: 'unit', x: right, y: height - 8, anchor: 'end' })}`;

/** Words at a level line: at its ends, above it or below, else wherever along it they fit. */
const atLine = (
  words: string | undefined,
  kind: string,
  line: readonly Spot[],
  ends: readonly ('start' | 'end')[],
): Places[] => {
  if (!words || line.length === 0) return [];
  const sides = kind === 'price' ? [-7, 18] : [18, -7];
  const atEnds = ends.map((anchor) => {
    const { x, y } = anchor === 'start' ? line[0]! : line.at(-1)!;
    return { x: anchor === 'start' ? x + 8 : x, y, anchor };
  });
  const along = Array.from({ length: 24 }, (_, i) => {
    const { x, y } = line[Math.floor(((i + 0.5) * line.length) / 24)]!;
    return { x, y, anchor: 'middle' as const };
  });
  return [
    {
      words,
      kind,
      at: [...atEnds, ...along].flatMap((place) => sides.map((off) => ({ ...place, y: place.y + off }))),
    },
  ];
};

const atNow = (words: string, { x, y }: Spot, { bottom }: Frame): Places => {
  const heights = [bottom - 10, bottom - 30, y - 14, y + 26];
  const sides = [
    { x: x + 9, anchor: 'start' as const },
    { x: x - 9, anchor: 'end' as const },
  ];
  return { words, kind: 'now', at: heights.flatMap((at) => sides.map((side) => ({ ...side, y: at }))) };
};

/** Jumps with their words, the highest first, each above its step or below it. */
const jumpsOf = (points: readonly DrawnPoint[], spots: readonly Spot[]): Places[] =>
  points
    .flatMap(({ jump, guests, aGuest }, i) =>
      jump === undefined || i === 0
        ? []
        : [{ i, words: `${guests}: ${jump}`, rise: aGuest - points[i - 1]!.aGuest }],
    )
    .sort((a, b) => b.rise - a.rise)
    .map(({ i, words }) => {
      const { x, y } = spots[i]!;
      const above = [-10, -24, -38].flatMap((off) =>
        (['start', 'middle', 'end'] as const).map((anchor) => ({ x, y: y + off, anchor })),
      );
      const below = [22, 36].flatMap((off) =>
        (['start', 'end', 'middle'] as const).map((anchor) => ({ x, y: y + off, anchor })),
      );
      return { words, kind: 'jump', at: [...above, ...below] };
    });
