import type { FastifyRequest } from 'fastify';
import { addDays } from '../../core/calendar.js';
import { dishesSold, type Engineered, type MenuClass, menuEngineering } from '../../core/menu-engineering.js';
import { toMinor } from '../../core/money.js';
import { showQuantity } from '../../core/quantity/show.js';
import { isRead } from '../../core/reading.js';
import { readPastDay, typedDay } from '../../core/reading-days.js';
import { apartWords, menuEngineeringSheet } from '../../core/sheets/menu-engineering-sheet.js';
import { type EventRow, list } from '../../store/events.js';
import { eventFacts } from '../../store/facts.js';
import { answerSheet } from '../answer.js';
import { printedNow, todayOf } from '../coming.js';
import type { Fault } from '../fields.js';
import { type Format, formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import type { Html } from '../html.js';
import { pageOf } from '../links.js';
import { classMark, engineeringPicture } from './picture.js';

type DishRow = {
  number: string;
  name: string;
  href: string;
  sold: Html;
  mix: string;
  price: string;
  margin: string;
  all: string;
  mark: Html;
  class: string;
};
export type MenuEngineeringPage = {
  words: string;
  picture: Html | undefined;
  dishes: DishRow[];
  apart: { name: string; href: string; why: string }[];
  rests: string;
  foot: readonly string[];
  query: string;
  paper: { left: string; middle: string; right: string; foot: string };
};

const usually = 365;
const mostEvents = 60;

/** Which dishes are popular and which leave most, over the parties held and, if asked, those to come. */
export const showMenuEngineering: Answerer = async (request, reply) => {
  const { kitchen } = request;
  const f = formatFor(kitchen);
  const today = todayOf(request);
  const asked = query(request, 'since') || typedDay(addDays(today, -usually));
  const since = readPastDay(asked, today);
  const faults: Fault[] = isRead(since) ? [] : [{ field: 'since', label: 'Since', sentence: since.sentence }];
  if (faults.length > 0) reply.code(422);
  const coming = query(request, 'coming') === 'on';
  const found = isRead(since) ? await partiesFrom(request, since.value, coming) : undefined;
  const { sold, apart, noted, made } = found
    ? dishesSold(found.events, found.facts)
    : { sold: [], apart: [], noted: 0, made: 0 };
  const result = menuEngineering(sold);
  const sheet = menuEngineeringSheet(result, apart, kitchen);
  return answerSheet(reply, sheet, 'menu-engineering/show', {
    title: 'Menu engineering',
    nav: 'Costing',
    form: { since: asked, coming: coming ? 'on' : '' },
    faults,
    words: inOneSentence(result.dishes, f),
    picture: engineeringPicture(result, f),
    dishes: result.dishes.map((dish, i) => ({
      number: String(i + 1),
      name: dish.name,
      href: pageOf('recipe', dish.key),
      sold: f.measure(showQuantity({ value: dish.portions, base: 'each' }, kitchen)),
      ...dishFigures(dish, f),
    })),
    apart: apart.map(({ key, name, why }) => ({ name, href: pageOf('recipe', key), why: apartWords[why] })),
    rests: restsOn(found?.left ?? 0, noted, made, f),
    foot: sheet.foot,
    query: isRead(since) ? `?since=${since.value}${coming ? '&coming=on' : ''}` : '',
    paper: {
      left: kitchen.name,
      middle: isRead(since) ? `Since ${f.dateYear(since.value)}` : '',
      right: 'Menu engineering',
      foot: printedNow(request),
    },
  });
};

const dishFigures = (dish: Engineered, f: Format) => ({
  mix: f.percent(dish.mix),
  price: f.money(toMinor(dish.price)),
  margin: f.money(toMinor(dish.margin)),
  all: f.money(toMinor(dish.income.minus(dish.cost))),
  mark: classMark(dish.class),
  class: dish.class,
});

/** Done parties since a day, and those to come where these are asked for. */
const partiesFrom = async (request: FastifyRequest, since: string, coming: boolean) => {
  const { db } = request.server.house;
  const today = todayOf(request);
  const isWanted = ({ archived, state, date }: EventRow) =>
    !archived &&
    (state === 'done' || (coming && date >= today && state !== 'cancelled' && state !== 'postponed'));
  const all = (await list(db, { from: since })).filter(isWanted);
  const found = await eventFacts(
    db,
    all.slice(-mostEvents).map(({ key }) => key),
  );
  return found && { ...found, left: Math.max(0, all.length - mostEvents) };
};

/** How often portions eaten were noted, and how many parties were too many to look at. */
const restsOn = (left: number, noted: number, made: number, f: Format): string => {
  if (noted + made === 0) return '';
  const times = (n: number) => (n === 1 ? 'once' : `${f.number(n)} times`);
  const few = left > 0 ? `Only the last ${f.number(mostEvents)} parties of that time are counted. ` : '';
  return `${few}Portions eaten were noted ${times(noted)}; what was made stands for them ${times(made)}.`;
};

const plurals: Record<MenuClass, string> = {
  star: 'Stars',
  plowhorse: 'Plowhorses',
  puzzle: 'Puzzles',
  dog: 'Dogs',
};

/** What the picture shows, for who does not see it. */
const inOneSentence = (dishes: readonly Engineered[], f: Format): string =>
  (Object.keys(plurals) as MenuClass[])
    .map((name) => {
      const names = dishes.filter((dish) => dish.class === name).map((dish) => dish.name);
      return `${plurals[name]}: ${names.length > 0 ? f.list(names) : 'none'}.`;
    })
    .join(' ');
