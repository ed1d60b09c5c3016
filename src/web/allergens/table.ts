import type { FastifyRequest } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import { allergenMatrix } from '../../core/sheets/allergen-matrix.js';
import { cautions } from '../../core/sheets/sheet.js';
import { type TableCard, tableCards } from '../../core/sheets/table-cards.js';
import { tableCardsSheet } from '../../core/sheets/table-cards-sheet.js';
import { answerSheet } from '../answer.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf } from '../events/event.js';
import { type Format, formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { labelWords } from '../label-days.js';
import { type Asked, type Copies, cardId, copiesField, copiesOf, listed } from '../printed/copies.js';
import { type PrintState, printState } from '../printed/outdated.js';
import { withBeside } from '../printed/papers.js';

/** A dish as guests read it, each list in words and empty where there is nothing to say. */
export type Card = {
  id: string;
  field: string;
  copies: string;
  course: string;
  dish: string;
  contains: string;
  may: string;
  notChecked: string;
  notListed: string;
  byWord: boolean;
  handled: string;
  labels: string;
  /** How much it says, so that it fits its place in a size that can be read. */
  length: 'short' | 'usual' | 'long';
};
export type TablePage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  print: PrintState;
  event: string;
  cards: Card[];
  /** Every card as often as it is printed, eight a page. */
  printed: Card[];
  count: string;
  list: string;
  caution: string;
};

/** What is in each dish, in words, as cards for the table and labels for the buffet. */
export const showTable: Answerer = async (request, reply) => {
  const found = await eventOf(request);
  const { event } = found;
  const { facts, beside } = await withBeside(request, found);
  const answer = allergenMatrix(event, facts, beside);
  const f = formatFor(request.kitchen);
  const sheet = tableCardsSheet(answer);
  const all = tableCards(answer.value);
  const copies = copiesOf(all, askedFor(request));
  const cards = all.map((card) => cardOf(card, copies, f));
  const printed = cards.flatMap((card) => Array<Card>(copies.wanted.get(card.id) ?? 0).fill(card));
  if (copies.faults.length > 0) reply.code(422);
  return answerSheet(reply, sheet, 'allergens/table', {
    title: `Table cards, ${event.name}`,
    nav: 'Events',
    form: Object.fromEntries(cards.map(({ field, copies: typed }) => [field, typed])),
    faults: copies.faults,
    head: await headOf(request, found),
    at: addressesOf(event.key),
    print: await printState(request, found, 'table-cards', sheet),
    event: eventWords(event, f),
    cards,
    printed,
    count: countWords(printed.length, f),
    list: answer.value.list,
    caution: cautions.allergens,
  });
};

const askedFor = ({ query }: FastifyRequest): Asked => {
  const { d, n } = query as Record<string, unknown>;
  return { dishes: listed(d), numbers: listed(n) };
};

const eventWords = ({ name, date }: Event, f: Format): string => `${name}, ${f.dateYear(date)}`;

/** Small print takes less room, a name of two lines more. */
const lengthOf = ({ dish, contains, may, notChecked, handled, notListed }: TableCard): Card['length'] => {
  const letters = [dish, ...contains, ...may, ...notChecked, ...handled].join(', ').length;
  const room = letters + notListed.join(', ').length / 2 + (dish.length > 24 ? 30 : 0);
  return room < 160 ? 'short' : room < 230 ? 'usual' : 'long';
};

const countWords = (cards: number, f: Format): string =>
  cards === 0
    ? 'No card chosen'
    : `${f.count(cards, 'card')} on ${f.count(Math.ceil(cards / 8), 'sheet')} of eight`;

const cardOf = (card: TableCard, { typed }: Copies, f: Format): Card => {
  const id = cardId(card);
  return {
    length: lengthOf(card),
    id,
    field: copiesField(id),
    copies: typed.get(id) ?? '',
    course: card.course,
    dish: card.dish,
    contains: f.list(card.contains),
    may: f.list(card.may),
    notChecked: f.list(card.notChecked),
    notListed: f.list(card.notListed),
    byWord: card.byWord,
    handled: f.list(card.handled),
    labels: labelWords(card.labels, f),
  };
};
