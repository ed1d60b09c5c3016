import type { FastifyRequest } from 'fastify';
import { addDays } from '../../core/calendar.js';
import { toMinor } from '../../core/money.js';
import { type PriceMove, priceMoves } from '../../core/price-history.js';
import { eventsTouched, type Touched } from '../../core/prices-touch.js';
import { netAccepted } from '../../core/quoting/net-accepted.js';
import { isRead, readWhole } from '../../core/reading.js';
import { priceMovesSheet } from '../../core/sheets/price-moves-sheet.js';
import { acceptedOffers } from '../../store/accepted-offers.js';
import { type EventRow, list } from '../../store/events.js';
import { eventFacts } from '../../store/facts.js';
import { repricedSince } from '../../store/repriced.js';
import { answerSheet } from '../answer.js';
import { printedNow, todayOf } from '../coming.js';
import { costShown } from '../events/dishes.js';
import type { Fault } from '../fields.js';
import { type Format, formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { unitWords } from '../ingredients/prices.js';
import { pageOf } from '../links.js';
import { moreOrLess, upOrDown } from '../more-words.js';

type MoveRow = { name: string; href: string; moved: string; now: string; was: string; guess: boolean };
type TouchedRow = {
  name: string;
  href: string;
  day: string;
  more: string;
  costs: string;
  margin: string;
  by: string;
};
export type PriceMovesPage = {
  since: string;
  moves: MoveRow[];
  first: { name: string; href: string }[];
  touched: TouchedRow[];
  foot: readonly string[];
  query: string;
  paper: { left: string; middle: string; right: string; foot: string };
};

const usually = 30;
const mostEvents = 60;

/** What moved most in the last days, and how much of which event's margin that takes. */
export const showPriceMoves: Answerer = async (request, reply) => {
  const { kitchen, server } = request;
  const asked = query(request, 'days') || String(usually);
  const days = readWhole(asked, 'the number of days', 1, 3650);
  const faults: Fault[] = isRead(days) ? [] : [{ field: 'days', label: 'Days', sentence: days.sentence }];
  if (faults.length > 0) reply.code(422);
  const today = todayOf(request);
  const since = addDays(today, -(isRead(days) ? days.value : usually));
  const found = priceMoves(await repricedSince(server.house.db, since), since, kitchen);
  const touched = found.moves.length > 0 ? await touchedBy(request, found.moves, today) : [];
  const sheet = priceMovesSheet(since, found, touched, kitchen);
  const f = formatFor(kitchen);
  return answerSheet(reply, sheet, 'price-moves/show', {
    title: 'What moved',
    nav: 'Costing',
    form: { days: asked },
    faults,
    since: f.dateYear(since),
    moves: found.moves.map((move) => moveRow(move, f)),
    first: found.first.map(({ key, name }) => ({ name, href: pricesOf(key) })),
    touched: touched.map((one) => touchedRow(one, f)),
    foot: [sheet.foot[0]!],
    query: isRead(days) ? `?days=${days.value}` : '',
    paper: {
      left: kitchen.name,
      middle: `Since ${f.dateYear(since)}`,
      right: 'What moved',
      foot: printedNow(request),
    },
  });
};

const touchedBy = async ({ server }: FastifyRequest, moves: readonly PriceMove[], today: string) => {
  const { db } = server.house;
  const coming = (await list(db, { from: today, most: mostEvents })).filter(isOn);
  const keys = coming.map(({ key }) => key);
  const facts = await eventFacts(db, keys);
  if (!facts) return [];
  const offers = await acceptedOffers(db, keys);
  const accepted = new Map([...offers].map(([key, offer]) => [key, netAccepted(offer)]));
  return eventsTouched(facts.events, facts.facts, moves, accepted);
};

const isOn = ({ archived, state }: EventRow): boolean =>
  !archived && state !== 'cancelled' && state !== 'postponed' && state !== 'done';

const pricesOf = (key: string): string => `${pageOf('ingredient', key)}/prices`;

const moveRow = ({ ingredient, before, after, unit, percent }: PriceMove, f: Format): MoveRow => ({
  name: ingredient.name,
  href: pricesOf(ingredient.key),
  moved: upOrDown(percent, f) || 'up from nothing',
  now: `${f.money(toMinor(after.each))} ${unitWords(unit)}`,
  was: `was ${f.money(toMinor(before.each))}`,
  guess: after.price.guess,
});

const mostNamed = 3;

const touchedRow = ({ event, before, after, more, by, ...margins }: Touched, f: Format): TouchedRow => {
  const shown = by.filter((one) => toMinor(one.more) !== 0);
  const causes = shown
    .slice(0, mostNamed)
    .map((one) => `${one.ingredient.name} ${moreOrLess(toMinor(one.more), f)}`);
  return {
    name: event.name,
    href: `${pageOf('event', event.key)}/costing`,
    day: f.date(event.date),
    more: moreOrLess(toMinor(more), f),
    costs: `${costShown(before.total, before.complete, f)} is now ${costShown(after.total, after.complete, f)}`,
    margin: marginWords(margins, after.complete, f),
    by: [...causes, ...(shown.length > mostNamed ? [`${shown.length - mostNamed} more`] : [])].join('; '),
  };
};

const marginWords = (
  { marginBefore, marginAfter }: Pick<Touched, 'marginBefore' | 'marginAfter'>,
  complete: boolean,
  f: Format,
): string => {
  if (marginBefore && marginAfter) {
    const [was, is] = [f.percent(marginBefore), f.percent(marginAfter)];
    return was === is ? `still ${is}` : `${was} is now ${is}`;
  }
  return complete ? 'no price set yet' : 'not known: the cost is incomplete';
};
