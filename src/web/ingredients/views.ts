import type { BasicsAround } from './basics.js';
import type { DietsAround } from './diets.js';
import type { LabelAround } from './label.js';
import type { IngredientList } from './list.js';
import type { NewIngredient } from './new.js';
import type { PacksAround } from './packs.js';
import type { PartPage } from './part.js';
import type { PlainPage } from './plain.js';
import type { IngredientPage } from './show.js';
import type { SubstitutesAround } from './substitutes.js';
import type { YieldAround } from './yield.js';

type AnyPart = PartPage &
  Partial<BasicsAround & PacksAround & YieldAround & LabelAround & DietsAround & SubstitutesAround>;

/** The models of the ingredient pages. */
export type IngredientViews = {
  'ingredients/list': IngredientList;
  'ingredients/_list': IngredientList;
  'ingredients/new': NewIngredient;
  'ingredients/_new': NewIngredient;
  'ingredients/_offers': NewIngredient;
  'ingredients/_reference': NewIngredient;
  'ingredients/plain': PlainPage;
  'ingredients/show': IngredientPage;
  'ingredients/part': AnyPart;
  'ingredients/_part': AnyPart;
};
