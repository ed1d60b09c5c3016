import type { FastifyRequest } from 'fastify';
import { KitchenNames, type Match } from '../../core/exchange/draft/kitchen-names.js';
import type { Ingredient } from '../../core/facts/ingredient.js';
import { figuresOf, foodOf } from '../../core/foods.js';
import { folded } from '../../core/near-names.js';
import { load } from '../../store/documents.js';
import { namesOf } from '../../store/names.js';
import { type Form, rows, text } from '../form.js';

/** What a line's food means: something the kitchen has, or an ingredient that is new with this draft. */
export type Meaning = { match: Match; fresh?: { name: string; food: string } };

/** The kitchen as a draft needs it: its names, and the ingredients its lines are matched to. */
export type Around = {
  names: KitchenNames;
  taken: { recipes: ReadonlySet<string>; ingredients: ReadonlySet<string> };
  meaning: (row: Form) => Meaning;
  ingredient: (row: Form) => WeighedIngredient | undefined;
};
export type WeighedIngredient = Pick<Ingredient, 'name' | 'weights' | 'density' | 'packs' | 'edibleYield'>;

export const kitchenNames = async ({ server }: FastifyRequest) => {
  const names = await namesOf(server.house.db);
  const keys = (list: readonly { key: string }[]) => new Set(list.map(({ key }) => key));
  return {
    names: new KitchenNames(names),
    taken: { recipes: keys(names.recipes), ingredients: keys(names.ingredients) },
  };
};

/** What the lines of a form mean in the kitchen as it stands. */
export const aroundForm = async (request: FastifyRequest, form: Form): Promise<Around> => {
  const { names, taken } = await kitchenNames(request);
  const lines = rows(form, 'lines');
  const fresh = new Map(lines.filter(isFresh).map((row) => [folded(text(row, 'item')), row]));
  const meaning = (row: Form): Meaning => {
    const match = names.match(text(row, 'item'));
    const made = match.kind === 'exact' ? undefined : fresh.get(folded(text(row, 'item')));
    return made ? { match, fresh: { name: text(made, 'item').trim(), food: text(made, 'food') } } : { match };
  };
  const keys = lines.flatMap((row) => ingredientIn(meaning(row)) ?? []);
  const docs = await load(request.server.house.db, 'ingredient', {
    keys: [...new Set(keys)],
    latestPrices: true,
  });
  const known = new Map(docs.map(({ key, doc }) => [key, doc]));
  const ingredient = (row: Form): WeighedIngredient | undefined => {
    const meant = meaning(row);
    return meant.fresh ? begun(meant.fresh) : known.get(ingredientIn(meant) ?? '');
  };
  return { names, taken, meaning, ingredient };
};

/** Whether the cook asked to make the ingredient that a row names. */
export const isFresh = (row: Form): boolean =>
  text(row, 'fresh') !== '' && folded(text(row, 'fresh')) === folded(text(row, 'item'));

const ingredientIn = ({ match, fresh }: Meaning): string | undefined =>
  !fresh && match.kind === 'exact' && 'ingredient' in match.known.item
    ? match.known.item.ingredient
    : undefined;

const begun = ({ name, food }: { name: string; food: string }): WeighedIngredient => {
  const figures = foodOf(food);
  return {
    name,
    weights: [],
    density: null,
    packs: [],
    edibleYield: null,
    ...(figures ? figuresOf(figures) : {}),
  };
};
