import type { Ingredient } from './facts/ingredient.js';
import { figuresOf, foodsLike } from './foods.js';
import type { Gap } from './line-weight.js';
import { normalName } from './names.js';

type Figures = ReturnType<typeof figuresOf>;

/** What the figures of a food say about a gap, with the source; undefined where they say nothing. */
const told = (figures: Figures, gap: Gap, cooked: string): { words: string; source: string } | undefined => {
  const { edibleYield, density, weights, cookedYields } = figures;
  if (gap.missing === 'yield')
    return edibleYield ? { words: `an edible yield of ${edibleYield.yield}`, ...edibleYield } : undefined;
  if (gap.missing === 'density')
    return density ? { words: `${density.gramsPerMl} g in one ml`, ...density } : undefined;
  if (gap.missing === 'weight') {
    const weight = weights.find(({ unit }) => unit === gap.unit);
    const one = gap.unit === 'each' ? 'piece' : gap.unit;
    return weight && { words: `${weight.grams} g for one ${one}`, ...weight };
  }
  const own = cookedYields.find(({ name }) => normalName(name) === normalName(cooked)) ?? cookedYields[0];
  return own && { words: `${own.yield} of the weight ${own.from} once ${own.name}`, ...own };
};

/**
 * The published figure for a fact that an ingredient lacks, in words with its source, of the food whose name is the
 * likeliest; nothing where the reference has none. `cooked` is how it is cooked.
 */
export const offerFor = (ingredient: Ingredient, gap: Gap, cooked = ''): string => {
  const [food] = foodsLike(ingredient.name, 1);
  const found = food && told(figuresOf(food), gap, cooked);
  return found ? `The reference has ${found.words}: ${food.name} (${found.source}).` : '';
};
