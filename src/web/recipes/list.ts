import { list, type RecipeRow } from '../../store/recipes.js';
import { type Format, formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { pageOf } from '../links.js';
import { type Listing, listing } from '../listing.js';
import { page } from '../page.js';
import { measureInWords, typedAmount } from '../typed.js';

export type ListedRecipe = { name: string; href: string; makes: string; second: string };
export type RecipeList = Listing<ListedRecipe> & { archived: boolean; hidden: number; next: string };

/** The recipes by name, or those that are archived; a part of a name narrows them. */
export const listRecipes: Answerer = async (request, reply) => {
  const { kitchen, server } = request;
  const archived = query(request, 'archived') !== '';
  const all = await list(server.house.db);
  const f = formatFor(kitchen);
  const wanted = all.filter((row) => row.archived === archived);
  const { rows, ...counts } = listing(wanted, {
    asked: query(request, 'q').trim(),
    from: query(request, 'from'),
    locale: kitchen.locale,
  });
  const model: RecipeList = {
    ...counts,
    rows: rows.map((row) => listed(row, f)),
    archived,
    hidden: all.length - wanted.length,
    next: nextPage(counts, archived),
  };
  return page(
    reply,
    'recipes/list',
    { title: 'Recipes', nav: 'Recipes', form: { q: model.asked }, ...model },
    'recipes/_list',
  );
};

const listed = (
  { key, name, yield: makes, inRecipes, inEvents, lines, variantOf }: RecipeRow,
  f: Format,
) => ({
  name,
  href: pageOf('recipe', key),
  makes: makes.portions
    ? `${typedAmount(makes.portions)} portions`
    : measureInWords((makes.weight ?? makes.volume)!),
  second: [
    variantOf ? 'variant' : '',
    lines === 0 ? 'no lines yet' : '',
    inRecipes ? `in ${f.count(inRecipes, 'recipe')}` : '',
    inEvents ? `on ${f.count(inEvents, 'menu')}` : '',
  ]
    .filter(Boolean)
    .join(', '),
});

const nextPage = ({ asked, from, more }: Omit<Listing<unknown>, 'rows'>, archived: boolean): string => {
  if (more === 0) return '';
  const said = { ...(asked && { q: asked }), ...(archived && { archived: 'yes' }), from: String(from + 200) };
  return `/recipes?${new URLSearchParams(said)}`;
};
