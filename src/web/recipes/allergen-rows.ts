import type { Bringer, Cell } from '../../core/allergens.js';
import type { Ingredient } from '../../core/facts/ingredient.js';
import type { ScaledRecipe } from '../../core/sheets/scaled-recipe.js';
import { type Format, formatFor } from '../format.js';
import type { AllergenCell } from '../marks.js';

export type AllergenRow = { state: AllergenCell; name: string; why: string };

/** The allergens of a recipe with what brings each, and how many entries are not listed on any label. */
export const allergenRows = ({ allergens, facts, labels }: ScaledRecipe) => {
  const f = formatFor(facts.kitchen);
  const order: AllergenCell[] = ['contains', 'may', 'unknown'];
  const rows = order.flatMap((state) =>
    allergens.filter((cell) => cell.state === state).map((cell) => rowOf(cell, state, f)),
  );
  const free = allergens.filter(({ state }) => state === 'free').length;
  return {
    allergens: rows,
    free: freeInWords(free, rows.length, f),
    labels: labels
      ? `Worked out from labels read ${labels.first === labels.last ? `on ${f.date(labels.first)}` : `from ${f.date(labels.first)} to ${f.date(labels.last)}`}.`
      : 'No label was read for it.',
  };
};

const freeInWords = (free: number, named: number, f: Format): string => {
  if (free === 0) return '';
  const many = f.inWords(free);
  return named > 0 ? `Other ${many.toLowerCase()}: not listed` : `All ${many.toLowerCase()}: not listed`;
};

const rowOf = (
  { item, brings, unknown, state: worst }: Cell,
  state: AllergenCell,
  f: Format,
): AllergenRow => {
  const of = (wanted: string) => brings.filter((one) => one.state === wanted);
  const open = brings.filter((one) => one.unknown && one.state !== 'contains');
  const why = {
    contains: `from ${sources(of('contains'), f)}`,
    may: `stated on the label of ${sources(of('may'), f)}`,
    unknown: open.length > 0 ? `label not read: ${sources(open, f)}` : 'no lines are written yet',
    free: '',
  }[state];
  const also = unknown && worst === 'may' && open.length > 0 ? `; not known of ${sources(open, f)}` : '';
  return { state, name: item.name, why: `${why}${also}` };
};

const mostNamed = 3;

/** "plain flour, through Shortcrust pastry", each ingredient once by its shortest way. */
const sources = (brings: readonly Bringer[], f: Format): string => {
  const shortest = new Map<Ingredient, Bringer>();
  for (const one of brings) {
    const known = shortest.get(one.ingredient);
    if (!known || one.through.length < known.through.length) shortest.set(one.ingredient, one);
  }
  const named = [...shortest.values()].map(({ ingredient, through }) => {
    const by = through.slice(1).map(({ name }) => name);
    const name = ingredient.name.charAt(0).toLowerCase() + ingredient.name.slice(1);
    return by.length > 0 ? `${name} in ${by.at(-1)}` : name;
  });
  const more = named.length - mostNamed;
  return more > 0 ? `${named.slice(0, mostNamed).join(', ')} and ${more} more` : f.list(named);
};
