import type { Cell } from '../../core/allergens.js';
import { addDays, clockOf } from '../../core/calendar.js';
import { daysAheadOf } from '../../core/due.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import type { Rational } from '../../core/quantity/rational.js';
import { inWords, showQuantity } from '../../core/quantity/show.js';
import type { Quantity } from '../../core/quantity/units.js';
import type { DishSummary, EventSummary } from '../../core/sheets/event-summary.js';
import { type Format, formatFor } from '../format.js';
import { type Html, html } from '../html.js';
import { pageOf } from '../links.js';

export type MenuRow = {
  name: string;
  href: string;
  portions: Html;
  size: string;
  allergens: string;
  notKnown: string;
  makes: string;
  aPortion: string;
  starts: string;
};
export type MenuCourse = { key: string; name: string; time: string; dishes: MenuRow[] };

/** The menu of an event as it stands on its page: what is made of each dish, what it holds, costs and when it starts. */
export const menuRows = ({ event, facts, courses }: EventSummary): MenuCourse[] => {
  const { kitchen } = facts;
  const f = formatFor(kitchen);
  const dishRow = (dish: DishSummary): MenuRow => {
    const { recipe } = dish.need;
    return {
      name: recipe.name,
      href: `${pageOf('recipe', recipe.key)}?event=${encodeURIComponent(event.key)}&dish=${encodeURIComponent(dish.need.dish.key)}`,
      portions: portionsShown(dish.need.portions, kitchen),
      size: sizeShown(dish.need.portion, kitchen),
      ...allergenWords(dish.allergens, f),
      makes: dish.trays === undefined ? '' : f.count(dish.trays, 'tray'),
      aPortion: costShown(dish.aPortion, dish.cost.complete, f),
      starts: startShown(dish, event.date, f),
    };
  };
  return courses.map(({ course, dishes }) => ({
    key: course.key,
    name: course.name,
    time: course.dayAfter ? `${course.time}, ${f.dayName(addDays(event.date, 1))}` : course.time,
    dishes: dishes.map(dishRow),
  }));
};

/** Portions without a word: the column says what they are. */
export const portionsShown = (portions: Rational, kitchen: Kitchen): Html => {
  const shown = showQuantity({ value: portions, base: 'each' }, kitchen);
  return formatFor(kitchen).measure(shown);
};

/** What one portion weighs or measures, "90 g"; how many pieces it is, "2"; nothing when that isn't known. */
export const sizeShown = (portion: Quantity | undefined, kitchen: Kitchen): string => {
  if (!portion) return '';
  return inWords(showQuantity(portion, kitchen)).replace(/(?<!,) /g, '\u00a0');
};

/** A cost that is not complete says so, and one of which nothing is known is never nothing. */
export const costShown = (minor: number | undefined, complete: boolean, f: Format): string => {
  if (minor === undefined) return '';
  if (complete) return f.money(minor);
  return minor === 0 ? 'not known' : `${f.money(minor)} so far`;
};

/** What a dish contains and may contain, and what is not known of it, by the short names of the list in force. */
export const allergenWords = (cells: readonly Cell[], f: Format) => {
  const named = (wanted: (cell: Cell) => boolean) =>
    cells.filter(wanted).map(({ item }) => item.short.toLowerCase());
  const contains = named(({ state }) => state === 'contains').join(', ');
  const may = named(({ state }) => state === 'may').join(', ');
  const open = named(({ state, unknown }) => unknown && state !== 'contains');
  const notKnown = open.length > 4 ? f.count(open.length, 'allergen') : open.join(', ');
  const known = [contains, may && `may contain ${may}`].filter(Boolean).join('; ');
  const none = open.length === 0 ? 'none listed on its labels' : '';
  return { allergens: known || none, notKnown: notKnown && `${notKnown} not known` };
};

const startShown = ({ starts, need }: DishSummary, date: string, f: Format): string => {
  if (starts === undefined) return isMadeAhead(need.recipe) ? 'made ahead' : '';
  return `${f.dayName(addDays(date, Math.floor(starts / 1440)))} ${clockOf(starts)}`;
};

const isMadeAhead = (recipe: DishSummary['need']['recipe']): boolean => {
  const days = daysAheadOf(recipe);
  return days.length > 0 && days.every((ahead) => ahead > 0);
};

/** Portions in plain weight, for a column of figures. */
export const portionsPlain = (portions: Rational, kitchen: Kitchen): Html => {
  const { figure, fraction } = showQuantity({ value: portions, base: 'each' }, kitchen);
  return html`${[figure, fraction && html` <span class="fr">${fraction}</span>`]}`;
};
