import type { FastifyRequest } from 'fastify';
import { besideReal, type LineBeside, type PlannedBesideReal } from '../../core/afterwards.js';
import { factsOf } from '../../core/facts/facts.js';
import { isOver } from '../../core/over.js';
import { Rational } from '../../core/quantity/rational.js';
import { netAccepted } from '../../core/quoting/net-accepted.js';
import { marginOf } from '../../core/selling/price.js';
import { selling } from '../../core/selling/selling.js';
import { besideRealSheet } from '../../core/sheets/beside-real-sheet.js';
import { costing } from '../../core/sheets/costing.js';
import { wholeCost } from '../../core/whole-cost/cost-of-party.js';
import type { CostView, WholeCost } from '../../core/whole-cost/whole-cost.js';
import { type AcceptedOffer, acceptedOffers } from '../../store/accepted-offers.js';
import { namesOf } from '../../store/names.js';
import { answerSheet } from '../answer.js';
import { printedNow, todayOf } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf, type OneEvent } from '../events/event.js';
import { partyInWords } from '../events/party-in-words.js';
import { type Format, formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { dishesEatenRows, ingredientsBesideRows } from './beside-rows.js';
import { type MoneyRow, moneyRow } from './money-row.js';
import { shortHours } from './rows.js';

export type BesidePage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  view: CostView;
  noted: boolean;
  over: boolean;
  guests: { name: string; planned: string; came: string }[];
  lines: (MoneyRow & { name: string; hours: string })[];
  total: MoneyRow;
  margin: string;
  dishes: ReturnType<typeof dishesEatenRows>;
  ingredients: ReturnType<typeof ingredientsBesideRows>;
  note: string;
  foot: readonly string[];
  paper: { left: string; middle: string; right: string; foot: string };
};

/** A party as planned beside what it really came to, by line: on the page, on paper, as CSV and JSON. */
export const showBesideReal: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const { event, facts } = one;
  const view = query(request, 'view') === 'used' ? 'used' : 'bought';
  const cost = wholeCost(event, facts, view);
  const { ingredients } = await namesOf(request.server.house.db);
  const names = new Map(ingredients.map(({ key, name }) => [key, name]));
  const found = besideReal(event, facts, cost, costing(event, facts).value.ingredients, names);
  const sheet = besideRealSheet(event, found, view, factsOf(event, facts).kitchen);
  return answerSheet(reply, sheet, 'afterwards/beside', {
    title: `Planned beside real, ${event.name}`,
    nav: 'Events',
    ...(await besidePage(request, one, found, cost, names)),
    foot: sheet.foot,
  });
};

const besidePage = async (
  request: FastifyRequest,
  one: OneEvent,
  found: PlannedBesideReal,
  cost: WholeCost,
  names: ReadonlyMap<string, string>,
): Promise<Omit<BesidePage, 'foot'>> => {
  const { event } = one;
  const { kitchen } = factsOf(event, one.facts);
  const f = formatFor(kitchen);
  const count = (n: number | undefined) => (n === undefined ? 'not known' : f.number(n));
  return {
    head: await headOf(request, one),
    at: addressesOf(event.key),
    view: cost.view,
    noted: event.afterwards !== null,
    over: isOver(event, todayOf(request)),
    guests: [
      ...found.groups.map(({ group, came }) => ({
        name: group.name,
        planned: f.number(group.guests),
        came: count(came),
      })),
      ...(found.groups.length > 1
        ? [{ name: 'All', planned: f.number(found.planned), came: count(found.came) }]
        : []),
    ],
    lines: [
      { name: 'Food', hours: '', ...moneyRow(found.food, f) },
      ...found.lines.map((line) => ({
        name: line.line.name,
        hours: hoursOf(line),
        ...moneyRow(line.cost, f),
      })),
    ],
    total: moneyRow(found.total, f),
    margin: marginWords(
      priceOf(one, cost, (await acceptedOffers(request.server.house.db, [event.key])).get(event.key)),
      cost,
      found,
      f,
    ),
    dishes: dishesEatenRows(found, kitchen),
    ingredients: ingredientsBesideRows(found, kitchen, names),
    note: event.afterwards?.note ?? '',
    paper: {
      left: kitchen.name,
      middle: partyInWords(event, f),
      right: 'Planned beside real',
      foot: printedNow(request),
    },
  };
};

const hoursOf = ({ hours: { planned, real } }: LineBeside): string => {
  const words = (hours: Rational) => `${shortHours(hours.toFixed(2))} h`;
  if (!planned && !real) return '';
  return `${planned ? `${words(planned)} planned` : 'no hours planned'}, ${real ? `${words(real)} worked` : 'hours worked not known'}`;
};

type Price = { net: number; words: string };

/** What the client accepted, else the price as it is set, without tax. */
const priceOf = ({ event, facts }: OneEvent, cost: WholeCost, accepted: AcceptedOffer | undefined): Price =>
  accepted
    ? { net: netAccepted(accepted), words: `accepted in quote ${accepted.number}` }
    : { net: selling(event, cost, factsOf(event, facts).kitchen).net, words: 'as it is set' };

/** What was left of the price, planned and really. */
const marginWords = (
  { net, words }: Price,
  cost: WholeCost,
  { total }: PlannedBesideReal,
  f: Format,
): string => {
  if (net <= 0) return '';
  const margin = (exact: Rational, known: boolean) => (known ? marginOf(exact, net) : undefined);
  const [planned, real] = [
    margin(cost.exact, cost.complete),
    margin(Rational.of(total.real), total.realKnown),
  ];
  const was = planned ? `${f.percent(planned)} planned` : 'not known as planned';
  return `Of the price ${words}, ${f.money(net)} without tax, the margin was ${was}, and is ${real ? `really ${f.percent(real)}` : 'not known yet as it really was'}.`;
};
