import type { CourseCover, Coverage, CoverageRow } from './coverage.js';
import type { Verdict } from './diets.js';

/** What a guest is left with over all courses, in a few words; loud where somebody must act. */
export type Covered = { words: string; loud: boolean };

const loud = (words: string): Covered => ({ words, loud: true });
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** What is to do about a guest who has not answered; once the party is over, there is no more to ask. */
export const notHeard = (isOver: boolean): Covered => loud(isOver ? 'Not known' : 'Ask today');

/**
 * The courses a guest has nothing in come first, then those whose portions do not reach, those to be kept apart, those
 * not known, then those with only a may-contain.
 */
export const coveredOf = ({ guest, cells, courses, cautions }: CoverageRow, isOver = false): Covered => {
  if (guest && !guest.answered) return notHeard(isOver);
  if (courses.length === 0) return { words: 'No menu yet', loud: false };
  const having = (wanted: Verdict, more: (course: CourseCover) => boolean = () => true) =>
    named(courses.filter((one) => one.byDiets === wanted && !one.short && more(one)));
  const nothing = having('no').map((name) => `no ${name}`);
  const short = named(courses.filter((one) => one.short)).map((name) => `${name} made for too few`);
  const apart = having('unknown', (one) => one.apart.length > 0).map((name) => `${name} not kept apart`);
  const unknown = having('unknown', (one) => one.apart.length === 0).map((name) => `${name} not known`);
  const may = having('may').map((name) => `${name} only with a may contain`);
  const judge = guest?.other ? ['yours to judge'] : [];
  const open = [...nothing, ...short, ...apart, ...unknown, ...judge, ...may];
  if (open.length > 0) return loud(capital(open.join(', ')));
  const dishes = cells.filter(({ verdict }) => verdict === 'yes').length;
  const by = dishes === cells.length ? '' : `, by ${dishes} ${dishes === 1 ? 'dish' : 'dishes'}`;
  return { words: `Covered${by}${cautions.length > 0 ? '; mind the caution' : ''}`, loud: false };
};

const named = (courses: readonly CourseCover[]): string[] => courses.map(({ name }) => name.toLowerCase());

/** How many guests have not answered beside those that are listed by name or number; never below zero. */
export const notListed = ({ rows, notAnswered }: Coverage): number =>
  Math.max(
    0,
    rows.reduce((n, { guest, count }) => (guest?.answered === false ? n - count : n), notAnswered),
  );
