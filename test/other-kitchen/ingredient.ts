import allergens from '../../shared/allergens.json' with { type: 'json' };
import foods from '../../shared/foods.json' with { type: 'json' };
import { traits } from '../../src/core/facts/ingredient.js';
import { type Choices, keyOf, span } from './choices.js';
import type { Written } from './written.js';

type Food = {
  name: string;
  item: string;
  yield?: string;
  gramsPerMl?: string;
  weights: { unit: string; grams: string }[];
};

/** The next food, bought, weighed and labelled by chance; with gaps some of that is missing. */
export const ingredientAt = (
  i: number,
  { upTo, pick, once }: Choices,
  gaps: boolean,
): Written['ingredients'][number] => {
  const food = foods[i % foods.length]! as Food;
  const source = `USDA SR28 ${food.item}`;
  const gap = () => gaps && once(8);
  const unread = gaps && once(10);
  const ids = allergens.lists.find((list) => list.id === 'us')!.items.flatMap((item) => item.members);
  const stated = ids.filter(() => !unread && !(gaps && once(3)));
  const size = pick([
    { amount: '1', unit: 'lb' },
    { amount: '5', unit: 'lb' },
    { amount: '12', unit: 'oz' },
  ]);
  const prices = span(1 + upTo(2)).map((n) => ({
    key: `price-${n}`,
    date: `2027-0${1 + upTo(2)}-1${n}`,
    price: 40 + upTo(9000),
    guess: once(10),
  }));
  return {
    key: keyOf('ingredient', i),
    name: i < foods.length ? food.name : `${food.name} ${i}`,
    section: pick(['Produce', 'Dairy', 'Pantry']),
    packs: [{ key: 'pack', size, preferred: true, prices: gap() ? [] : prices }],
    edibleYield: gap() ? null : { yield: food.yield ?? '1', source },
    cookedYields: once(50)
      ? [{ name: 'stewed', yield: pick(['0.62', '2/3', '2.4']), from: pick(['bought', 'prepared'] as const) }]
      : [],
    density: gap() ? null : { gramsPerMl: food.gramsPerMl ?? '0.95', source },
    weights: food.weights.map(({ unit, grams }) => ({ unit, grams, source })),
    allergens: Object.fromEntries(
      stated.map((id) => [
        id,
        { state: pick(['free', 'free', 'free', 'may', 'contains'] as const), date: '2027-01-20', by: 'K.' },
      ]),
    ),
    traits: Object.fromEntries(
      traits.map((trait) => [trait, unread ? 'unknown' : once(6) ? 'yes' : 'no'] as const),
    ),
  };
};
