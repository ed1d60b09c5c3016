import { isRead, readWhole } from '../../core/reading.js';
import type { TableCard } from '../../core/sheets/table-cards.js';
import type { Fault } from '../fields.js';

/** How many cards of each dish are asked for, dish by dish: their ids, and beside them the numbers as typed. */
export type Asked = { dishes: readonly string[]; numbers: readonly string[] };

export type Copies = {
  /** As typed, by the id of a dish. */
  typed: Map<string, string>;
  wanted: Map<string, number>;
  faults: Fault[];
};

const most = 40;

/** A card is told apart by its course and the key of its dish. */
export const cardId = ({ course, key }: Pick<TableCard, 'course' | 'key'>): string =>
  `${course} ${key}`.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-');

/** The name of a card's field. */
export const copiesField = (id: string): string => `n-${id}`;

/** Reads how many cards of each dish are wanted; one of each where nothing is asked, none where a field is empty. */
export const copiesOf = (cards: readonly TableCard[], { dishes, numbers }: Asked): Copies => {
  const copies: Copies = { typed: new Map(), wanted: new Map(), faults: [] };
  for (const card of cards) {
    const id = cardId(card);
    const at = dishes.indexOf(id);
    const typed = dishes.length === 0 ? '1' : (numbers[at] ?? '0');
    const read = typed.trim() === '' ? { value: 0 } : readWhole(typed, 'the number of cards', 0, most);
    copies.typed.set(id, typed);
    copies.wanted.set(id, isRead(read) ? read.value : 0);
    if (!isRead(read))
      copies.faults.push({ field: copiesField(id), label: card.dish, sentence: read.sentence });
  }
  return copies;
};

/** The same in an address. */
export const copiesAddress = ({ dishes, numbers }: Asked): string =>
  new URLSearchParams(
    dishes.flatMap((id, at): [string, string][] => [
      ['d', id],
      ['n', numbers[at] ?? '0'],
    ]),
  ).toString();

/** What was sent under one name, however often. */
export const listed = (value: unknown): string[] =>
  [value].flat().filter((one): one is string => typeof one === 'string');
