import type { EntityName } from '../../core/facts/facts.js';
import { eventShape } from './event.js';
import { ingredientShape } from './ingredient.js';
import { kitchenShape } from './kitchen.js';
import { placeShape } from './place.js';
import { recipeShape } from './recipe.js';
import type { Shape } from './shape.js';

export { kitchenKey } from './kitchen.js';

const shapes: { [N in EntityName]: Shape<N> } = {
  kitchen: kitchenShape,
  place: placeShape,
  ingredient: ingredientShape,
  recipe: recipeShape,
  event: eventShape,
};

/** How an entity's documents are kept. */
export const shapeOf = <N extends EntityName>(entity: N): Shape<N> => shapes[entity] as unknown as Shape<N>;

/** Every entity, each after those it refers to. */
export const entityNames = ['kitchen', 'place', 'ingredient', 'recipe', 'event'] as const;
