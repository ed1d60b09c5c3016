import { type Fewer, fewer, type Sum } from '../../core/fewer.js';
import { isRead, readWhole } from '../../core/reading.js';
import { headCount } from '../../core/requirements.js';
import { viewAsked } from '../costing/in-view.js';
import type { Fault } from '../fields.js';
import { type Format, formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { pageOf } from '../links.js';
import { moreOrLess } from '../more-words.js';
import { page } from '../page.js';
import { addressesOf } from './addresses.js';
import { costShown } from './dishes.js';
import { type EventHead, eventOf, headOf } from './event.js';

type Row = { name: string; href: string; before: string; after: string; more: string };
export type FewerPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  words: string;
  rows: Row[];
  packs: { name: string; href: string; before: string; after: string }[];
  /** true where packs are bought for other events too. */
  shared: boolean;
};

/** What shrinks when fewer come to a party, or it is called off: its own cost, the shopping, what others then pay. */
export const showFewer: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const { event } = one;
  const now = headCount(event);
  const asked = query(request, 'guests') || '0';
  const guests = readWhole(asked, 'the number of guests', 0, 100_000);
  const faults: Fault[] = isRead(guests)
    ? []
    : [{ field: 'guests', label: 'Guests', sentence: guests.sentence }];
  if (faults.length > 0) reply.code(422);
  const f = formatFor(request.kitchen);
  const { beside, facts } = await viewAsked(request, one, 'bought');
  const found = isRead(guests) ? fewer(event, guests.value, beside, facts) : undefined;
  return page(reply, 'events/fewer', {
    title: `If fewer come, ${event.name}`,
    nav: 'Events',
    form: { guests: asked },
    faults,
    head: await headOf(request, one),
    at: addressesOf(event.key),
    words: found ? inWords(found, now, f) : '',
    rows: found ? rowsOf(found, event.name, event.key, f) : [],
    packs: (found?.packs ?? []).map(({ ingredient, before, after }) => ({
      name: ingredient.name,
      href: pageOf('ingredient', ingredient.key),
      before: f.count(before, 'pack'),
      after: f.number(after),
    })),
    shared: (found?.beside.length ?? 0) > 0,
  });
};

const difference = (before: Sum, after: Sum): number | undefined =>
  before.complete && after.complete ? after.total - before.total : undefined;

const inWords = ({ guests, shopping, food, beside }: Fewer, now: number, f: Format): string => {
  const what =
    guests.after === 0 ? 'Called off' : `With ${f.count(guests.after, 'guest')} in place of ${f.number(now)}`;
  const all = difference(shopping.before, shopping.after);
  if (all === undefined)
    return `${what}: what the shopping shrinks by is not known while a cost is incomplete.`;
  const own = difference(food.before, food.after);
  const others = beside.reduce<number | undefined>((sum, one) => {
    const more = difference(one.before, one.after);
    return sum === undefined || more === undefined ? undefined : sum + more;
  }, 0);
  const shared =
    others && own !== undefined
      ? ` Its own food is ${moreOrLess(own, f)}, but the other parties of its week then pay ${moreOrLess(others, f)} for packs they shared with it.`
      : '';
  return `${what}: the shopping is ${moreOrLess(all, f)}.${shared}`;
};

const rowsOf = (
  { guests, food, whole, beside, shopping }: Fewer,
  name: string,
  key: string,
  f: Format,
): Row[] => {
  const row = (label: string, href: string, before: Sum, after: Sum): Row => ({
    name: label,
    href,
    before: costShown(before.total, before.complete, f),
    after: costShown(after.total, after.complete, f),
    more: moreOrLess(difference(before, after), f),
  });
  return [
    row(`Food of ${name}`, `${pageOf('event', key)}/costing?view=bought`, food.before, food.after),
    ...beside.map((one) =>
      row(`Food of ${one.event.name}`, pageOf('event', one.event.key), one.before, one.after),
    ),
    ...(beside.length > 0 ? [row('All their shopping', '', shopping.before, shopping.after)] : []),
    ...(guests.after === 0
      ? []
      : [
          row(
            `All that ${name} costs`,
            `${pageOf('event', key)}/costing?view=bought`,
            whole.before,
            whole.after,
          ),
        ]),
  ];
};
