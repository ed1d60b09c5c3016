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
    allergens: gathered(rows, f),
    free: freeInWords(free, rows.length, f),
    labels: labels
      ? `Worked out from labels read ${labels.first === labels.last ? `on ${f.date(labels.first)}` : `from ${f.date(labels.first)} to ${f.date(labels.last)}`}.`
      : 'No label was read for it.',
  };
};

/** What is not known for the same reason stands in one row. */
const gathered = (rows: readonly AllergenRow[], f: Format): AllergenRow[] => {
  const open = new Map<string, AllergenRow[]>();
  for (const row of rows.filter(({ state }) => state === 'unknown'))
    open.set(row.why, [...(open.get(row.why) ?? []), row]);
  const known = rows.filter(({ state }) => state !== 'unknown');
  const unknown = [...open].map(([why, some]): AllergenRow => {
    const names = some.length > 4 ? f.count(some.length, 'allergen') : f.list(some.map(({ name }) => name));
    return { state: 'unknown', name: names, why };
  });
  return [...known, ...unknown];
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

const mostNamed = 4;

/** "Plain flour; Milk and Butter in Mashed potato", each ingredient once, by its shortest way. */
const sources = (brings: readonly Bringer[], f: Format): string => {
  const shortest = new Map<Ingredient, Bringer>();
  for (const one of brings) {
    const known = shortest.get(one.ingredient);
    if (!known || one.through.length < known.through.length) shortest.set(one.ingredient, one);
  }
  const all = [...shortest.values()];
  const named = all.slice(0, mostNamed);
  const through = new Map<string, string[]>();
  for (const { ingredient, through: by } of named) {
    const last = by.length > 1 ? by.at(-1)!.name : '';
    through.set(last, [...(through.get(last) ?? []), ingredient.name.split(',')[0]!]);
  }
  const said = [...through].map(([by, names]) => `${f.list(names)}${by && ` in ${by}`}`).join('; ');
  return all.length > named.length ? `${said}; and ${all.length - named.length} more` : said;
};
