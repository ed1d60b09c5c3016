import { allergenMatrix } from '../../core/sheets/allergen-matrix.js';
import { cautions } from '../../core/sheets/sheet.js';
import { type TableCard, tableCards } from '../../core/sheets/table-cards.js';
import { printedNow } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import { eventOf } from '../events/event.js';
import { formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';

export type TablePage = {
  at: ReturnType<typeof addressesOf>;
  event: string;
  day: string;
  cards: TableCard[];
  list: string;
  caution: string;
  paper: { left: string; middle: string; right: string; foot: string };
};

/** What is in each dish, in words, for guests and for who serves them. */
export const showTable: Answerer = async (request, reply) => {
  const { event, facts } = await eventOf(request);
  const { value } = allergenMatrix(event, facts);
  const f = formatFor(request.kitchen);
  return page(reply, 'allergens/table', {
    title: 'What is in each dish',
    nav: 'Events',
    at: addressesOf(event.key),
    event: event.name,
    day: f.date(event.date),
    cards: tableCards(value),
    list: value.list,
    caution: cautions.allergens,
    paper: {
      left: value.facts.kitchen.name,
      middle: '',
      right: `${event.name}, ${f.dateYear(event.date)}`,
      foot: `${printedNow(request)} Void when a recipe, a brand or a label changes.`,
    },
  });
};
