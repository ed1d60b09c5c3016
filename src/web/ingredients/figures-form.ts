import type { Ingredient } from '../../core/facts/ingredient.js';
import { honestSource } from '../../core/own-figures.js';
import { type Read, readMoreThanZero, readUnitWord } from '../../core/reading.js';
import { readDensity } from '../../core/reading-density.js';
import { readCookedYield, readEdibleYield } from '../../core/reading-measures.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import { typedAmount, typedYield } from '../typed.js';

export type Figures = Pick<Ingredient, 'edibleYield' | 'density' | 'weights' | 'cookedYields'>;

/** Yields, density and weights as a form holds them. */
export const figuresForm = ({ edibleYield, density, weights, cookedYields }: Figures): Form => ({
  edibleYield: { yield: edibleYield ? typedYield(edibleYield.yield) : '', source: edibleYield?.source ?? '' },
  density: { gramsPerMl: typedAmount(density?.gramsPerMl ?? ''), source: density?.source ?? '' },
  weights: weights.map(({ unit, grams, of, source }) => ({ unit, grams: typedAmount(grams), of, source })),
  cookedYields: cookedYields.map(({ name, yield: share, from, source }) => ({
    name,
    yield: typedYield(share),
    from,
    source,
  })),
});

/** The same read back; rows left empty are left out. */
export const readFigures = (reading: Reading, cup: Parameters<typeof readDensity>[1]): Figures => ({
  edibleYield: readYield(reading),
  density: readOneMl(reading, cup),
  weights: rows(reading.form, 'weights').flatMap((row, i) => readWeight(reading, row, `weights[${i}]`)),
  cookedYields: rows(reading.form, 'cookedYields').flatMap((row, i) =>
    readCooked(reading, row, `cookedYields[${i}]`),
  ),
});

const sourced = (reading: Reading, name: string, figure: string, at: string): string =>
  honestSource(reading.text(name), figure, at);

const readYield = (reading: Reading): Figures['edibleYield'] => {
  const value = reading.maybe('edibleYield.yield', 'Edible yield', readEdibleYield);
  if (value === null) return null;
  return { yield: value, source: sourced(reading, 'edibleYield.source', value, 'edibleYield') };
};

const readOneMl = (reading: Reading, cup: Parameters<typeof readDensity>[1]): Figures['density'] => {
  const value = reading.maybe('density.gramsPerMl', 'Weight of one ml', (typed) => readDensity(typed, cup));
  if (value === null) return null;
  return { gramsPerMl: value, source: sourced(reading, 'density.source', value, 'density') };
};

const isEmpty = (row: Form, ...names: string[]): boolean =>
  names.every((name) => text(row, name).trim() === '');

const readWeight = (reading: Reading, row: Form, at: string): Figures['weights'] => {
  if (isEmpty(row, 'unit', 'grams')) return [];
  const grams = reading.take(
    `${at}.grams`,
    'Weight of a piece',
    (typed): Read<string> => readMoreThanZero(typed.replace(/\s*g\s*$/i, '')),
    '1',
  );
  const unit = reading.take(`${at}.unit`, 'What is counted', readUnitWord, 'each');
  const of = reading.oneOf(`${at}.of`, ['prepared', 'bought'], 'prepared');
  return [{ unit, grams, of, source: sourced(reading, `${at}.source`, grams, `weights/${unit}`) }];
};

const readCooked = (reading: Reading, row: Form, at: string): Figures['cookedYields'] => {
  if (isEmpty(row, 'name', 'yield')) return [];
  const name = reading.take(`${at}.name`, 'How it is cooked', readWay, 'cooked');
  const value = reading.take(`${at}.yield`, 'Cooked yield', readCookedYield, '1');
  const from = reading.oneOf(`${at}.from`, ['bought', 'prepared'], 'bought');
  const source = sourced(reading, `${at}.source`, value, `cookedYields/${name}`);
  return [{ name, yield: value, from, source }];
};

const readWay = (typed: string): Read<string> => {
  const name = typed.trim();
  if (name === '') return { sentence: 'Enter how it is cooked, such as roasted, boiled or steeped.' };
  if (name.length <= 60) return { value: name };
  return { sentence: 'Enter how it is cooked in 60 letters at most, such as roasted, off the bone.' };
};
