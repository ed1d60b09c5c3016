import type { Ingredient } from '../../core/facts/ingredient.js';
import { type Food, figuresOf, foodOf, foodsLike } from '../../core/foods.js';
import { isRead, type Read, readMoreThanZero, readUnitWord } from '../../core/reading.js';
import { readDensity } from '../../core/reading-density.js';
import { readEdibleYield } from '../../core/reading-measures.js';
import { asWritten } from '../as-written.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import { rowsChanged } from '../rows.js';
import { typedAmount, typedPercent, typedYield } from '../typed.js';
import { foodInWords } from './food-words.js';
import type { Part } from './part.js';

export type YieldAround = { foods: { id: string; name: string; says: string }[]; readAs: string };

/** How much of it is eaten, what it weighs by measure and by the piece. */
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
    const read = {
      edibleYield: readYield(reading),
      density: readOneMl(reading, kitchen.cup),
      weights: rows(reading.form, 'weights').flatMap((row, i) => readWeight(reading, row, `weights[${i}]`)),
    };
    return (before) => asWritten(before, { ...before, ...read });
  },
  around: (doc, form) => ({
    foods: foodsLike(doc.name).map((food) => ({ id: food.id, name: food.name, says: foodInWords(food) })),
    readAs: readAs(text(form, 'edibleYield.yield')),
  }),
};

type Figures = Pick<Ingredient, 'edibleYield' | 'density' | 'weights'>;

const figuresForm = ({ edibleYield, density, weights }: Figures): Form => ({
  edibleYield: { yield: edibleYield ? typedYield(edibleYield.yield) : '', source: edibleYield?.source ?? '' },
  density: { gramsPerMl: typedAmount(density?.gramsPerMl ?? ''), source: density?.source ?? '' },
  weights: weights.map(({ unit, grams, of, source }) => ({ unit, grams: typedAmount(grams), of, source })),
});

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
    ...(given.weights.length > 0 && { weights: [...others(form, given.weights), ...rows(made, 'weights')] }),
  };
};

const others = (form: Form, weights: Ingredient['weights']): Form[] =>
  rows(form, 'weights').filter((row) => {
    const unit = text(row, 'unit').trim();
    return unit !== '' && !weights.some((weight) => weight.unit === unit);
  });

const readYield = (reading: Reading): Ingredient['edibleYield'] => {
  const value = reading.maybe('edibleYield.yield', 'Edible yield', readEdibleYield);
  return value === null ? null : { yield: value, source: reading.text('edibleYield.source') };
};

const readOneMl = (reading: Reading, cup: Parameters<typeof readDensity>[1]): Ingredient['density'] => {
  const value = reading.maybe('density.gramsPerMl', 'Weight of one ml', (typed) => readDensity(typed, cup));
  return value === null ? null : { gramsPerMl: value, source: reading.text('density.source') };
};

const readWeight = (reading: Reading, row: Form, at: string): Ingredient['weights'] => {
  if (text(row, 'unit').trim() === '' && text(row, 'grams').trim() === '') return [];
  const grams = reading.take(
    `${at}.grams`,
    'Weight of a piece',
    (typed): Read<string> => readMoreThanZero(typed.replace(/\s*g\s*$/i, '')),
    '1',
  );
  const unit = reading.take(`${at}.unit`, 'What is counted', readUnitWord, 'each');
  const of = reading.oneOf(`${at}.of`, ['prepared', 'bought'], 'prepared');
  return [{ unit, grams, of, source: reading.text(`${at}.source`) }];
};
