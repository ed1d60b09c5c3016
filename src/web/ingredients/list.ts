import type { Ingredient } from '../../core/facts/ingredient.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { missingOf } from '../../core/missing.js';
import { latestPrice, preferredPack } from '../../core/weighing.js';
import { everyIngredient } from '../../store/ingredients.js';
import { formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import type { Html } from '../html.js';
import { pageOf } from '../links.js';
import { type Listing, listing } from '../listing.js';
import { page } from '../page.js';
import { measureInWords } from '../typed.js';
import { labelInWords, unitPriceInWords, yieldInWords } from './words.js';

export type ListedIngredient = {
  name: string;
  href: string;
  section: string;
  unitPrice: Html;
  pack: string;
  yield: Html;
  label: Html;
};
export type IngredientList = Listing<ListedIngredient> & {
  which: '' | 'missing' | 'archived';
  missing: number;
  archived: number;
  next: string;
};

/** The ingredients by name, those that lack something, or those that are archived; a part of a name narrows them. */
export const listIngredients: Answerer = async (request, reply) => {
  const { kitchen, server } = request;
  const all = await everyIngredient(server.house.db);
  const kept = all.filter(({ archived }) => !archived);
  const lacking = kept.filter((one) => missingOf(one, { kitchen }).length > 0);
  const which = query(request, 'archived') ? 'archived' : query(request, 'missing') ? 'missing' : '';
  const wanted = { '': kept, missing: lacking, archived: all.filter(({ archived }) => archived) }[which];
  const { rows, ...counts } = listing(wanted, {
    asked: query(request, 'q').trim(),
    from: query(request, 'from'),
    locale: kitchen.locale,
  });
  const model: IngredientList = {
    ...counts,
    rows: rows.map((row) => listed(row, kitchen)),
    which,
    missing: lacking.length,
    archived: all.length - kept.length,
    next: nextPage(counts, which),
  };
  const head = { title: 'Ingredients', nav: 'Recipes', form: { q: model.asked } } as const;
  return page(reply, 'ingredients/list', { ...head, ...model }, 'ingredients/_list');
};

const listed = (ingredient: Ingredient, kitchen: Kitchen): ListedIngredient => {
  const { key, name, section } = ingredient;
  const f = formatFor(kitchen);
  const pack = preferredPack(ingredient);
  const price = pack && latestPrice(pack);
  return {
    name,
    href: pageOf('ingredient', key),
    section,
    unitPrice: unitPriceInWords(ingredient, kitchen),
    pack: pack
      ? [
          measureInWords(pack.size),
          price && `${f.money(price.price)}${price.guess ? ', a guess' : ''}`,
          pack.supplier,
        ]
          .filter(Boolean)
          .join(', ')
      : '',
    yield: yieldInWords(ingredient, f),
    label: labelInWords(ingredient, kitchen),
  };
};

const nextPage = ({ asked, from, more }: Omit<Listing<unknown>, 'rows'>, which: string): string => {
  if (more === 0) return '';
  const said = { ...(asked && { q: asked }), ...(which && { [which]: 'yes' }), from: String(from + 200) };
  return `/ingredients?${new URLSearchParams(said)}`;
};
