import type { z } from 'zod';
import published from '../../../shared/allergens.json' with { type: 'json' };
import type { ingredient } from '../../../src/core/facts/ingredient.js';
import { type Chance, chanceFor } from './chance.js';
import { daysFrom, today } from './days.js';

export type IngredientIn = z.input<typeof ingredient>;

/** How an ingredient is measured out in recipes. */
export type Way = 'weighed' | 'poured' | 'spooned' | 'counted';

const words: Record<Way, readonly string[]> = {
  weighed: [
    'Barley',
    'Beans',
    'Butter',
    'Carrots',
    'Cheese',
    'Chicken',
    'Flour',
    'Leeks',
    'Salmon',
    'Squash',
  ],
  poured: ['Cream', 'Milk', 'Oil', 'Stock base', 'Vinegar', 'Wine'],
  spooned: ['Cumin', 'Mustard', 'Pepper', 'Salt', 'Sugar', 'Yeast'],
  counted: ['Eggs', 'Garlic', 'Lemons', 'Onions', 'Rolls', 'Vine leaves'],
};
const kinds: readonly Way[] = [
  'weighed',
  'weighed',
  'weighed',
  'weighed',
  'weighed',
  'poured',
  'spooned',
  'counted',
];

export const wayOf = (i: number): Way => kinds[i % kinds.length]!;
export const ingredientKey = (i: number): string => `ingredient-${i}`;

/** One ingredient with its packs, its prices over two years and its label; now and then a fact is missing. */
export const ingredientAt = (i: number): IngredientIn => {
  const chance = chanceFor(`ingredient ${i}`);
  const way = wayOf(i);
  const sections = ['produce', 'dairy', 'dry goods', 'fish', 'freezer'];
  return {
    key: ingredientKey(i),
    name: `${chance.pick(words[way])} ${i}`,
    section: chance.pick(sections),
    packs: packsOf(way, chance),
    edibleYield: chance.percent(97) ? { yield: `0.${chance.between(55, 99)}`, source: 'weighed here' } : null,
    density: densityOf(way, chance),
    weights:
      way === 'counted'
        ? [{ unit: 'each', grams: String(chance.between(20, 180)), source: 'weighed here' }]
        : [],
    allergens: labelOf(chance),
    traits: traitsOf(chance),
    keeping: { unopened: chance.between(3, 300), opened: chance.between(1, 14) },
  };
};

const densityOf = (way: Way, chance: Chance) => {
  if (way === 'poured') return { gramsPerMl: `1.0${chance.below(10)}`, source: 'weighed here' };
  return way === 'spooned' ? { gramsPerMl: `0.${chance.between(45, 95)}`, source: 'weighed here' } : null;
};

const packsOf = (way: Way, chance: Chance) => {
  const count = chance.percent(97) ? chance.between(1, 3) : 0;
  const unit = { weighed: 'g', poured: 'ml', spooned: 'g', counted: 'each' }[way];
  const sizes = way === 'counted' ? [1, 6, 12, 30] : [250, 500, 1000, 2500];
  return Array.from({ length: count }, (_, p) => ({
    key: `pack-${p}`,
    supplier: `Supplier ${chance.below(12)}`,
    brand: chance.percent(40) ? `Brand ${chance.below(60)}` : '',
    size: { amount: String(chance.pick(sizes)), unit },
    preferred: p === 0 && count > 1,
    prices: pricesOf(chance),
  }));
};

const pricesOf = (chance: Chance) => {
  const count = chance.between(1, 8);
  return Array.from({ length: count }, (_, i) => ({
    key: `price-${i}`,
    date: daysFrom(today, -90 * (count - i) + chance.below(80)),
    price: chance.between(60, 2400),
    guess: i === count - 1 && chance.percent(5),
  }));
};

/** A label as it is entered: everything the list asks, most of it free; one in twenty was not read, or not all of it. */
const labelOf = (chance: Chance): NonNullable<IngredientIn['allergens']> => {
  const read = { source: 'label', date: daysFrom(today, -chance.between(1, 400)), by: 'The cook' } as const;
  const [unread, partly] = [chance.percent(2), chance.percent(3)];
  if (unread) return {};
  return Object.fromEntries(
    published.substances
      .filter(() => !partly || chance.percent(80))
      .map(({ id }) => [
        id,
        { state: chance.percent(4) ? 'contains' : chance.percent(3) ? 'may' : 'free', ...read },
      ]),
  );
};

const traitsOf = (chance: Chance): NonNullable<IngredientIn['traits']> => {
  if (chance.percent(4)) return {};
  const meat = chance.percent(8);
  const no = {
    fish: 'no',
    shellfish: 'no',
    honey: 'no',
    gelatine: 'no',
    lard: 'no',
    suet: 'no',
    rennet: 'no',
  } as const;
  return { meat: meat ? 'yes' : 'no', ...(meat ? { pork: 'no', beef: 'yes' } : {}), ...no, alcohol: 'no' };
};
