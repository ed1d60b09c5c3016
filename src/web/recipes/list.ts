import type { KitchenCosts } from '../../core/kitchen-costs.js';
import type { Shown } from '../../core/quantity/show.js';
import { list, type RecipeRow } from '../../store/recipes.js';
import { costsNow, eachInWords } from '../costs.js';
import { type Format, formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { type Html, html } from '../html.js';
import { pageOf } from '../links.js';
import { type Listing, listing } from '../listing.js';
import { page } from '../page.js';
import { typedAmount, typedUnit } from '../typed.js';

export type ListedRecipe = { name: string; href: string; makes: Html; second: Html };
export type RecipeList = Listing<ListedRecipe> & { archived: boolean; hidden: number; next: string };

/** The recipes by name, or those that are archived, each with what a portion costs; a part of a name narrows them. */
export const listRecipes: Answerer = async (request, reply) => {
  const { kitchen, server } = request;
  const archived = query(request, 'archived') !== '';
  const all = await list(server.house.db);
  const costs = await costsNow(server.house.db);
  const f = formatFor(kitchen);
  const wanted = all.filter((row) => row.archived === archived);
  const { rows, ...counts } = listing(wanted, {
    asked: query(request, 'q').trim(),
    from: query(request, 'from'),
    locale: kitchen.locale,
  });
  const model: RecipeList = {
    ...counts,
    rows: rows.map((row) => listed(row, costs, f)),
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
  costs: KitchenCosts,
  f: Format,
): ListedRecipe => {
  const uses = [
    variantOf ? 'variant' : '',
    inRecipes ? `in ${f.count(inRecipes, 'recipe')}` : '',
    inEvents ? `on ${f.count(inEvents, 'menu')}` : '',
  ].filter(Boolean);
  const cost = lines === 0 ? html`no lines yet` : eachInWords(costs, key, f);
  return {
    name,
    href: pageOf('recipe', key),
    makes: f.measure(shownYield(makes)),
    second: html`${cost}${uses.map((words) => `, ${words}`)}`,
  };
};

/** What one batch makes, as it was entered: portions where they are said. */
const shownYield = ({ portions, weight, volume }: RecipeRow['yield']): Shown => {
  if (portions) return { figure: typedAmount(portions), unit: 'portion' };
  const { amount, unit } = (weight ?? volume)!;
  return { figure: typedAmount(amount), unit: typedUnit(unit) };
};

const nextPage = ({ asked, from, more }: Omit<Listing<unknown>, 'rows'>, archived: boolean): string => {
  if (more === 0) return '';
  const said = { ...(asked && { q: asked }), ...(archived && { archived: 'yes' }), from: String(from + 200) };
  return `/recipes?${new URLSearchParams(said)}`;
};
