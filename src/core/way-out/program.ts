import type { Aim, Puzzle, Served, Take } from './puzzle.js';

/** What is already settled: a figure that may not be exceeded, and sets of dishes that may not all be made again. */
export type Held = { most: Partial<Record<Aim, number>>; barred: readonly (readonly number[])[] };

const x = (need: number, offer: number) => `x${need}_${offer}`;
const y = (offer: number) => `y${offer}`;

/** Names of columns summed up with whole factors; those of nothing are left out. */
const summed = (terms: Terms): string =>
  terms
    .filter(([factor]) => factor !== 0)
    .map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`)
    .join('\n ');

type Terms = readonly (readonly [number, string])[];

type Part = {
  needs: { at: number; guests: number; takes: Take[] }[];
  /** Offers that must be chosen before guests may have them; the others stand on the menu. */
  chosen: ReadonlySet<number>;
  /** Offers that feed only so many. */
  scarce: ReadonlySet<number>;
};

const partOf = ({ offers, needs }: Puzzle, part: readonly number[]): Part => {
  const all = new Set(part.flatMap((at) => needs[at]!.takes.map(({ offer }) => offer)));
  return {
    needs: part.map((at) => ({ at, ...needs[at]! })),
    chosen: new Set([...all].filter((at) => offers[at]!.extra === 1 || offers[at]!.work > 0)),
    scarce: new Set([...all].filter((at) => offers[at]!.feeds !== null)),
  };
};

const termsFor = ({ offers }: Puzzle, { needs, chosen }: Part): Record<Aim, Terms> => {
  const each = (factor: (take: Take) => number): Terms =>
    needs.flatMap(({ at, takes }) => takes.map((take) => [factor(take), x(at, take.offer)] as const));
  return {
    extra: [...chosen].map((at) => [offers[at]!.extra, y(at)]),
    unpriced: each(({ cost }) => (cost === null ? 1 : 0)),
    cost: each(({ cost }) => cost ?? 0),
    work: [...chosen].map((at) => [offers[at]!.work, y(at)]),
  };
};

/**
 * The integer program of some needs in the text form of linear programs (LP format): every guest is given something
 * they can eat, no offer feeds more than it can, nothing is eaten that is not made; one figure is made least while
 * those before it stay as they are.
 */
export const programFor = (puzzle: Puzzle, among: readonly number[], aim: Aim, held: Held): string => {
  const part = partOf(puzzle, among);
  const terms = termsFor(puzzle, part);
  const rows = aim === 'extra' ? coverRows(part) : givenRows(part);
  for (const offer of part.scarce) {
    const takers = part.needs.filter(({ takes }) => takes.some((take) => take.offer === offer));
    rows.push(`${summed(takers.map(({ at }) => [1, x(at, offer)]))} <= ${puzzle.offers[offer]!.feeds}`);
  }
  for (const [name, most] of Object.entries(held.most)) {
    const sum = summed(terms[name as Aim]);
    if (sum !== '') rows.push(`${sum} <= ${most}`);
  }
  for (const set of held.barred) rows.push(`${summed(set.map((at) => [1, y(at)]))} <= ${set.length - 1}`);
  const whole = part.needs.flatMap(({ at, takes }) =>
    takes.flatMap(({ offer }) => (part.scarce.has(offer) ? [x(at, offer)] : [])),
  );
  return [
    'Minimize',
    ` goal: ${summed(terms[aim]) || '0 none'}`,
    'Subject To',
    ...[...new Set(rows)].map((row, at) => ` r${at}: ${row}`),
    ...(whole.length > 0 ? ['General', ` ${whole.join('\n ')}`] : []),
    ...(part.chosen.size > 0 ? ['Binary', ` ${[...part.chosen].map(y).join('\n ')}`] : []),
    'End',
    '',
  ].join('\n');
};

/** Each guest is given something. What feeds any number needs no whole numbers: the cheapest of it that is made does. */
const givenRows = ({ needs, chosen }: Part): string[] =>
  needs.flatMap(({ at, guests, takes }) => [
    `${summed(takes.map(({ offer }) => [1, x(at, offer)]))} = ${guests}`,
    ...takes.flatMap(({ offer }) =>
      chosen.has(offer) ? [`${x(at, offer)} - ${guests} ${y(offer)} <= 0`] : [],
    ),
  ]);

/** The same where only the dishes count: something that feeds any number is made, or the scarce dishes go round. */
const coverRows = ({ needs, chosen, scarce }: Part): string[] =>
  needs.flatMap(({ at, guests, takes }) => {
    const ample = takes.filter(({ offer }) => !scarce.has(offer));
    const few = takes.filter(({ offer }) => scarce.has(offer));
    const limits = few.flatMap(({ offer }) =>
      chosen.has(offer) ? [`${x(at, offer)} - ${guests} ${y(offer)} <= 0`] : [],
    );
    if (ample.some(({ offer }) => !chosen.has(offer))) return limits;
    const fed: Terms = [
      ...ample.map(({ offer }): [number, string] => [few.length > 0 ? guests : 1, y(offer)]),
      ...few.map(({ offer }): [number, string] => [1, x(at, offer)]),
    ];
    return [`${summed(fed)} >= ${few.length > 0 ? guests : 1}`, ...limits];
  });

/** Whether a figure of some needs can be anything but nothing. */
export const matters = (puzzle: Puzzle, among: readonly number[], aim: Aim): boolean =>
  termsFor(puzzle, partOf(puzzle, among))[aim].some(([factor]) => factor !== 0);

/** The values of a program's columns. */
export type Columns = ReadonlyMap<string, number>;

const nearEnough = 1e-4;

const wholeIn = (columns: Columns, name: string): number => {
  const value = columns.get(name) ?? 0;
  const whole = Math.round(value);
  if (Math.abs(value - whole) > nearEnough) throw new Error(`${name} is ${value}, no whole number`);
  return whole;
};

/**
 * Who is given what by a solution, in whole guests: scarce offers as it shares them out, and the rest of each need the
 * cheapest of what is made and feeds any number. A value that is no whole number is our own mistake and throws.
 */
export const readServed = (puzzle: Puzzle, among: readonly number[], columns: Columns): Served[] => {
  const { needs, chosen, scarce } = partOf(puzzle, among);
  return needs.flatMap(({ at, guests, takes }) => {
    const served: Served[] = [];
    let left = guests;
    for (const { offer } of takes) {
      const some = scarce.has(offer) ? Math.min(left, wholeIn(columns, x(at, offer))) : 0;
      if (some > 0) served.push({ need: at, offer, guests: some });
      left -= some;
    }
    if (left === 0) return served;
    const made = takes.filter(
      ({ offer }) => !scarce.has(offer) && (!chosen.has(offer) || wholeIn(columns, y(offer)) === 1),
    );
    const [best] = made.sort((a, b) => (a.cost ?? Infinity) - (b.cost ?? Infinity) || a.offer - b.offer);
    if (!best) throw new Error(`need ${at} is left without`);
    return [...served, { need: at, offer: best.offer, guests: left }];
  });
};
