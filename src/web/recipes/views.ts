import type { RecipeChange } from './draw.js';
import type { LabelPage } from './label.js';
import type { RecipeList } from './list.js';
import type { RecipePage } from './page-model.js';

/** The models of the recipe pages. */
export type RecipeViews = {
  'recipes/list': RecipeList;
  'recipes/_list': RecipeList;
  'recipes/label': LabelPage;
  'recipes/show': RecipePage;
  'recipes/show-update': RecipePage;
  'recipes/change': RecipeChange;
  'recipes/_form': RecipeChange;
  'recipes/_preview': RecipeChange;
};
