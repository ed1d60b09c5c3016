import type { Ingredient } from '../../core/facts/ingredient.js';
import { type Food, figuresOf, foodOf, foodsLike } from '../../core/foods.js';
import { normalName } from '../../core/names.js';
import { referenceOf } from '../../core/own-figures.js';
import { isRead } from '../../core/reading.js';
import { readEdibleYield } from '../../core/reading-measures.js';
import { asWritten } from '../as-written.js';
import { type Form, rows, text } from '../form.js';
import { rowsChanged } from '../rows.js';
import { typedPercent } from '../typed.js';
import { figuresForm, readFigures } from './figures-form.js';
import { foodInWords } from './food-words.js';
import type { Part } from './part.js';

export type YieldAround = { foods: { id: string; name: string; says: string }[]; readAs: string };

/** How much of it is eaten, what it weighs by measure, by the piece and once cooked. */
export const edible: Part<YieldAround> = {
  name: 'yield',
  title: 'Yield and weights',
  button: 'Save yield and weights',
  form: (doc) => figuresForm(doc),
  press: (form) => {
    const [what, id = ''] = text(form, 'do').split(':');
    const food = what === 'fill' ? foodOf(id) : undefined;
    if (food) return { form: { ...form, ...filled(food, form) }, at: 'save' };
    return rowsChanged(form);
  },
  read: (reading, _doc, { kitchen }) => {
    const read = readFigures(reading, kitchen.cup);
    return (before) => asWritten(before, { ...before, ...read });
  },
  around: (doc, form) => ({
    foods: foodsFor(doc).map((food) => ({ id: food.id, name: food.name, says: foodInWords(food) })),
    readAs: readAs(text(form, 'edibleYield.yield')),
  }),
};

/** The food it is held against first, then those of a like name. */
const foodsFor = (doc: Ingredient): Food[] => {
  const own = referenceOf(doc);
  return [...new Set([...(own ? [own] : []), ...foodsLike(doc.name)])].slice(0, 3);
};

const readAs = (typed: string): string => {
  const read = typed.trim() === '' ? undefined : readEdibleYield(typed);
  return read && isRead(read) && !typed.includes('%') ? `${typedPercent(read.value)} %` : '';
};

/** The figures of the reference in place of those typed; what it does not have stays. */
const filled = (food: Food, form: Form): Form => {
  const given = figuresOf(food);
  const made = figuresForm(given);
  return {
    ...(given.edibleYield && { edibleYield: made.edibleYield! }),
    ...(given.density && { density: made.density! }),
    ...joined(form, made, 'weights', 'unit'),
    ...joined(form, made, 'cookedYields', 'name'),
  };
};

/** The rows given, after those typed that none of them stands for; nothing when none is given. */
const joined = (form: Form, made: Form, list: string, by: string): Form => {
  const given = rows(made, list);
  if (given.length === 0) return {};
  const named = given.map((row) => normalName(text(row, by)));
  const others = rows(form, list).filter((row) => {
    const name = normalName(text(row, by));
    return name !== '' && !named.includes(name);
  });
  return { [list]: [...others, ...given] };
};
