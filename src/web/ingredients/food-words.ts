import type { Food } from '../../core/foods.js';
import { typedPercent } from '../typed.js';

/** What the reference says of a food: "44 % eaten, 89 g a piece, USDA 11246". */
export const foodInWords = (food: Food): string =>
  [
    food.yield && `${typedPercent(food.yield)} % eaten`,
    ...food.weights.map(({ unit, grams }) => `${grams} g a ${unit === 'each' ? 'piece' : unit}`),
    food.gramsPerMl && `${food.gramsPerMl} g a ml`,
    `USDA ${food.item}`,
  ]
    .filter(Boolean)
    .join(', ');
