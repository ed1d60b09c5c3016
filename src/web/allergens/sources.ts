import { type Bringer, type Cell, saidBy } from '../../core/allergens.js';
import type { AllergenState } from '../../core/facts/ingredient.js';
import { cellWords } from '../../core/sheets/allergen-matrix.js';
import type { Format } from '../format.js';
import { whereMended } from '../links.js';

/** What brings an allergen into a dish: the ingredient, the components it comes through, and how that is known. */
export type Source = { name: string; href: string; through: string; said: string; open: boolean };

export const sourcesOf = ({ item, brings }: Cell, f: Format): Source[] =>
  brings.map((bringer) => ({
    name: bringer.ingredient.name,
    href: whereMended({
      entity: 'ingredient',
      key: bringer.ingredient.key,
      name: bringer.ingredient.name,
      field: 'allergens',
    }),
    through: bringer.through
      .slice(1)
      .map(({ name }) => name)
      .join(', then '),
    said: howKnown(bringer, item, f),
    open: bringer.unknown,
  }));

/** "contains, label read Mon 2 Nov 2026 by Rosa". */
const howKnown = ({ ingredient, state, unknown }: Bringer, item: Cell['item'], f: Format): string => {
  if (state === 'unknown') return 'label not read';
  const said = saidBy(ingredient, item, state);
  return [cellWords({ state, unknown }), said && sourceWords(said, f)].filter(Boolean).join(', ');
};

const sourceWords = ({ source, date, by }: AllergenState, f: Format): string => {
  const who = by && ` by ${by}`;
  if (source === 'label') return `label read${date ? ` ${f.dateYear(date)}` : ''}${who}`;
  return `${source === 'cook' ? 'as the cook says' : 'from a reference'}${date ? `, ${f.dateYear(date)}` : ''}${who}`;
};
