import { type EatenAverage, shareFrom } from '../../core/averages.js';
import { normalName } from '../../core/names.js';
import { partiesInWords, ranOutWords } from '../averages/words.js';
import { type Form, rows, text, texts } from '../form.js';
import type { Format } from '../format.js';
import type { Named } from './menu-form.js';
import type { Pressed } from './menu-rows.js';

/** What guests ate of a dish at the last parties, and the share of the guests it may be planned for, if it is one. */
export type EatenOffer = { words: string; share: number | undefined };

type Known = { eaten: ReadonlyMap<string, EatenAverage>; recipes: readonly Named[] };

/** What the last parties offer for the dishes of a menu's form, row by row; it fills nothing by itself. */
export const eatenOffers = (form: Form, known: Known, f: Format): (EatenOffer | undefined)[][] =>
  rows(form, 'courses').map((course) => rows(course, 'dishes').map((row) => offerOf(row, known, f)));

const offerOf = (row: Form, known: Known, f: Format): EatenOffer | undefined => {
  const average = averageOf(row, known);
  if (!average) return undefined;
  const parties = partiesInWords(average.parties, f);
  const ranOut = ranOutWords(average, f);
  return {
    words: `${parties.charAt(0).toUpperCase()}${parties.slice(1)}: ${average.aGuest.toFixed(2)} portions a guest eaten${ranOut && `; ${ranOut}`}.`,
    share: shareFrom(average),
  };
};

const averageOf = (row: Form, { eaten, recipes }: Known): EatenAverage | undefined => {
  const name = normalName(text(row, 'recipe'));
  const recipe = name && recipes.find((one) => normalName(one.name) === name);
  return recipe ? eaten.get(recipe.key) : undefined;
};

/** Fills in who eats a dish by what was eaten before, where `do=eaten:1:2` asks for that; undefined for any other. */
export const eatenPressed = (form: Form, known: Known): Pressed | undefined => {
  const [, i, j] = /^eaten:(\d{1,3}):(\d{1,3})$/.exec(text(form, 'do')) ?? [];
  if (i === undefined) return undefined;
  const courses = rows(form, 'courses');
  const course = courses[Number(i)];
  const row = course && rows(course, 'dishes')[Number(j)];
  const average = row && averageOf(row, known);
  const share = average && shareFrom(average);
  if (row && share !== undefined) {
    row.who = 'shares';
    for (const k of texts(form, 'groups').keys()) row[`part${k}`] = String(share);
  }
  return { form, at: `courses[${i}].dishes[${j}]` };
};
