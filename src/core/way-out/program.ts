import type { Aim, Puzzle, Served, Take } from './puzzle.js';

/** What is already settled: a figure that may not be exceeded, and sets of dishes that may not all be made again. */
export type Held = { most: Partial<Record<Aim, number>>; barred: readonly (readonly number[])[] };

const x = (need: number, offer: number) => `x${need}_${offer}`;
const y = (offer: number) => `y${offer}`;

/** Names of columns summed up with whole factors; those of nothing are left out. */
const summed = (terms: readonly (readonly [number, string])[]): string =>
  terms
    .filter(([factor]) => factor !== 0)
    .map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`)
    .join('\n ');

/** The offers of some needs that must be chosen before guests may have them; the others stand on the menu. */
export const chosenOf = ({ offers, needs }: Puzzle, part: readonly number[]): number[] =>
  offersOf(needs, part).filter((at) => offers[at]!.extra === 1 || offers[at]!.work > 0);

const offersOf = (needs: Puzzle['needs'], part: readonly number[]): number[] =>
  [...new Set(part.flatMap((need) => needs[need]!.takes.map(({ offer }) => offer)))].sort((a, b) => a - b);

type Terms = (readonly [number, string])[];

const termsFor = (puzzle: Puzzle, part: readonly number[]): Record<Aim, Terms> => {
  const { offers, needs } = puzzle;
  const chosen = chosenOf(puzzle, part);
  const each = (factor: (take: Take) => number): Terms =>
    part.flatMap((need) => needs[need]!.takes.map((take) => [factor(take), x(need, take.offer)] as const));
  return {
    extra: chosen.map((at) => [offers[at]!.extra, y(at)]),
    unpriced: each(({ cost }) => (cost === null ? 1 : 0)),
    cost: each(({ cost }) => cost ?? 0),
    work: chosen.map((at) => [offers[at]!.work, y(at)]),
  };
};

/**
 * The integer program of some needs in the text form of linear programs (LP format): every guest is given something
 * they can eat, no offer feeds more than it can, nothing is eaten that is not made; one figure is made least while
 * those before it stay as they are. undefined where that figure is always nothing.
 */
export const programFor = (puzzle: Puzzle, part: readonly number[], aim: Aim, held: Held): string => {
  const { offers, needs } = puzzle;
  const terms = termsFor(puzzle, part);
  const chosen = chosenOf(puzzle, part);
  const rows: string[] = [];
  const takers = new Map<number, [number, string][]>();
  for (const need of part) {
    const { guests, takes } = needs[need]!;
    rows.push(`${summed(takes.map(({ offer }) => [1, x(need, offer)]))} = ${guests}`);
    for (const { offer } of takes) {
      takers.set(offer, [...(takers.get(offer) ?? []), [1, x(need, offer)]]);
      if (chosen.includes(offer)) rows.push(`${x(need, offer)} - ${guests} ${y(offer)} <= 0`);
    }
  }
  for (const [offer, who] of takers)
    if (offers[offer]!.feeds !== null) rows.push(`${summed(who)} <= ${offers[offer]!.feeds}`);
  for (const [name, most] of Object.entries(held.most)) {
    const sum = summed(terms[name as Aim]);
    if (sum !== '') rows.push(`${sum} <= ${most}`);
  }
  for (const set of held.barred) rows.push(`${summed(set.map((at) => [1, y(at)]))} <= ${set.length - 1}`);
  const eaten = part.flatMap((need) => needs[need]!.takes.map(({ offer }) => x(need, offer)));
  return [
    'Minimize',
    ` goal: ${summed(terms[aim]) || `0 ${eaten[0]}`}`,
    'Subject To',
    ...rows.map((row, at) => ` r${at}: ${row}`),
    'General',
    ` ${eaten.join('\n ')}`,
    ...(chosen.length > 0 ? ['Binary', ` ${chosen.map(y).join('\n ')}`] : []),
    'End',
    '',
  ].join('\n');
};

/** Whether a figure of some needs can be anything but nothing. */
export const matters = (puzzle: Puzzle, part: readonly number[], aim: Aim): boolean =>
  termsFor(puzzle, part)[aim].some(([factor]) => factor !== 0);

/** The values of a program's columns. */
export type Columns = ReadonlyMap<string, number>;

const nearEnough = 1e-4;

/** Who is given what by a solution, in whole guests; a value that is no whole number is our own mistake and throws. */
export const readServed = ({ needs }: Puzzle, part: readonly number[], columns: Columns): Served[] =>
  part.flatMap((need) =>
    needs[need]!.takes.flatMap(({ offer }) => {
      const value = columns.get(x(need, offer)) ?? 0;
      const guests = Math.round(value);
      if (Math.abs(value - guests) > nearEnough) throw new Error(`${value} guests are no whole number`);
      return guests > 0 ? [{ need, offer, guests }] : [];
    }),
  );
