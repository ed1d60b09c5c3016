/** The paper a curve is drawn on: where guests and money stand on it, in whole and half pixels. */
export type Frame = {
  width: number;
  height: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
  x(guests: number): number;
  y(minor: number): number;
  /** Round sums, and round head-counts between the ends, that are written at the sides. */
  money: number[];
  guests: number[];
};

export type Ends = { from: number; to: number; least: number; most: number };

/** A step of 1, 2 or 5 with noughts, of which so many at most fit. */
const roundStep = (span: number, most: number): number => {
  let step = 1;
  for (let i = 0; span / step > most; i += 1) step *= i % 3 === 1 ? 2.5 : 2;
  return step;
};

const multiples = (step: number, from: number, to: number): number[] => {
  const list: number[] = [];
  for (let at = Math.ceil(from / step) * step; at <= to; at += step) list.push(at);
  return list;
};

const tenths = (value: number): number => Math.round(value * 10) / 10;

/** A frame of this width for a curve between these ends. */
export const frameFor = (width: number, { from, to, least, most }: Ends): Frame => {
  const narrow = width < 500;
  const [height, left, right, top, bottom] = [narrow ? 300 : 280, 52, width - 14, 28, narrow ? 252 : 232];
  // Some air above and below, so that no label stands outside; and not all of it air where nothing changes.
  const air = Math.max((most - least) * 0.12, most * 0.02, 1);
  const [floor, ceiling] = [Math.max(0, least - air), most + air];
  const x = (guests: number) => tenths(left + ((guests - from) / Math.max(1, to - from)) * (right - left));
  const y = (minor: number) => tenths(bottom - ((minor - floor) / (ceiling - floor)) * (bottom - top));
  const inner = multiples(roundStep(to - from, narrow ? 5 : 8), from + 1, to - 1);
  const room = narrow ? 26 : 24;
  const clear = inner.filter((guests) => x(guests) - left >= room && right - x(guests) >= room);
  return {
    width,
    height,
    left,
    right,
    top,
    bottom,
    x,
    y,
    money: multiples(roundStep(ceiling - floor, 6), floor, ceiling),
    guests: [...new Set([from, ...clear, to])],
  };
};
