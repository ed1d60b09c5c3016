import type { Coverage, CoverageRow } from './coverage.js';
import type { Verdict } from './diets.js';

/** What a guest is left with over all courses, in a few words; loud where somebody must act. */
export type Covered = { words: string; loud: boolean };

const loud = (words: string): Covered => ({ words, loud: true });
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** What is to do about a guest who has not answered; once the party is over, there is no more to ask. */
export const notHeard = (isOver: boolean): Covered => loud(isOver ? 'Not known' : 'Ask today');

/** The courses a guest has nothing in come first, then those not known, then those with only a may-contain. */
export const coveredOf = ({ guest, cells, courses }: CoverageRow, isOver = false): Covered => {
  if (guest && !guest.answered) return notHeard(isOver);
  if (courses.length === 0) return { words: 'No menu yet', loud: false };
  const having = (wanted: Verdict) =>
    courses.filter(({ byDiets }) => byDiets === wanted).map(({ name }) => name.toLowerCase());
  const nothing = having('no').map((name) => `no ${name}`);
  const unknown = having('unknown').map((name) => `${name} not known`);
  const may = having('may').map((name) => `${name} only with a may contain`);
  const judge = guest?.other ? ['yours to judge'] : [];
  const open = [...nothing, ...unknown, ...judge, ...may];
  if (open.length > 0) return loud(capital(open.join(', ')));
  const dishes = cells.filter(({ verdict }) => verdict === 'yes').length;
  if (dishes === cells.length) return { words: 'Covered', loud: false };
  return { words: `Covered, by ${dishes} ${dishes === 1 ? 'dish' : 'dishes'}`, loud: false };
};

/** How many guests have not answered beside those that are listed by name or number; never below zero. */
export const notListed = ({ rows, notAnswered }: Coverage): number =>
  Math.max(
    0,
    rows.reduce((n, { guest, count }) => (guest?.answered === false ? n - count : n), notAnswered),
  );
