import type { CoverageRow } from '../../core/coverage.js';
import { coveredOf, notHeard, notListed } from '../../core/covered.js';
import type { Verdict } from '../../core/diets.js';
import { madeForWords } from '../../core/portions.js';
import type { AllergenMatrix } from '../../core/sheets/allergen-matrix.js';
import type { Format } from '../format.js';
import type { Coverage } from '../marks.js';
import { dishId } from './matrix.js';
import { type Why, whyOf } from './why.js';

/** Whether a guest can eat a dish; undefined where it isn't served to them. */
export type GuestCell = { state: Coverage } | undefined;
export type GuestRow = {
  who: string;
  diets: string;
  cells: GuestCell[];
  covered: string;
  loud: boolean;
  /** Dish by dish what stands against it, and what to mind. */
  why: Why[];
};

const states: Record<Verdict, Coverage> = { yes: 'can', may: 'may', unknown: 'unknown', no: 'no' };

/** Guests by dishes: those with a diet or not heard from, by name or number, and the rest who have not answered. */
export const guestRows = ({ event, rows, coverage }: AllergenMatrix, f: Format): GuestRow[] => {
  const isOver = event.state === 'done';
  const named = coverage.rows.map((row) => {
    const { guest, who, diets, cells } = row;
    const { words, loud } = coveredOf(row, isOver);
    return {
      who: guest && !guest.name && diets.length === 0 ? f.count(row.count, 'guest') : who,
      diets: aboutGuest(row, event),
      cells: rows.map((dish): GuestCell => {
        const cell = cells.find(
          (one) => one.dish === dish.dish && courseName(event, one.course) === dish.course,
        );
        return cell && { state: states[cell.verdict] };
      }),
      covered: words,
      loud,
      why: whyOf(row, event),
    };
  });
  const others = notListed(coverage);
  if (others === 0) return named;
  const unknown: GuestCell = { state: 'unknown' };
  return [
    ...named,
    {
      who: f.count(others, 'guest'),
      diets: 'not answered',
      cells: rows.map(() => unknown),
      covered: notHeard(isOver).words,
      loud: true,
      why: [],
    },
  ];
};

/** What stands beside a guest: the diets of one by name, the group of several by number, or that they have not answered. */
const aboutGuest = ({ guest, diets }: CoverageRow, { groups }: AllergenMatrix['event']): string => {
  if (guest?.answered === false) return 'not answered';
  if (guest?.name) return diets.join(', ');
  const group = groups.length > 1 ? groups.find(({ key }) => key === guest?.group) : undefined;
  return group ? group.name.toLowerCase() : '';
};

const courseName = ({ courses }: AllergenMatrix['event'], key: string): string | undefined =>
  courses.find((course) => course.key === key)?.name;

/** Guests by some of the dishes. */
export type GuestTable = {
  dishes: { id: string; name: string; made: string }[];
  guests: GuestRow[];
  last: boolean;
};

const sideBySide = 12;

const madeFor = ({ course, dish }: AllergenMatrix['rows'][number], { event }: AllergenMatrix): string => {
  const found = event.courses
    .filter(({ name }) => name === course)
    .flatMap(({ dishes }) => dishes)
    .find(({ key }) => key === dish);
  return found ? madeForWords(found, event) : '';
};

/** Guests by dishes, in as many tables as the dishes take; none where there is nobody to show. */
export const guestTables = (matrix: AllergenMatrix, f: Format): GuestTable[] => {
  const guests = guestRows(matrix, f);
  if (guests.length === 0) return [];
  const tables: GuestTable[] = [];
  const count = Math.ceil(matrix.rows.length / sideBySide);
  const wide = Math.ceil(matrix.rows.length / count);
  for (let from = 0; from < matrix.rows.length; from += wide)
    tables.push({
      dishes: matrix.rows.slice(from, from + wide).map((row) => ({
        id: dishId(row),
        name: row.recipe.name,
        made: madeFor(row, matrix),
      })),
      guests: guests.map((guest) => ({ ...guest, cells: guest.cells.slice(from, from + wide) })),
      last: from + wide >= matrix.rows.length,
    });
  return tables;
};
