import { addDays } from '../../core/calendar.js';
import type { Ingredient, Pack } from '../../core/facts/ingredient.js';
import { toMinor } from '../../core/money.js';
import { movedSince, type PriceLine, type PricePoint, priceHistory } from '../../core/price-history.js';
import { isRead } from '../../core/reading.js';
import { readPastDay, typedDay } from '../../core/reading-days.js';
import { priceHistorySheet } from '../../core/sheets/price-history-sheet.js';
import { read } from '../../store/documents.js';
import { answerSheet } from '../answer.js';
import { printedNow, todayOf } from '../coming.js';
import type { Fault } from '../fields.js';
import { type Format, formatFor } from '../format.js';
import { type Answerer, param, query } from '../house.js';
import type { Html } from '../html.js';
import { pageOf } from '../links.js';
import { upOrDown } from '../more-words.js';
import { priceLine } from '../price-line.js';
import { measureInWords, typedUnit } from '../typed.js';

type PriceRow = { day: string; pack: string; price: string; guess: boolean; each: string; since: string };
export type PricesPage = {
  key: string;
  name: string;
  here: string;
  /** How the price that lines are priced at moved since a day, in words. */
  moved: string;
  lines: { unit: string; chart: Html | undefined; words: string; rows: PriceRow[] }[];
  paper: { left: string; middle: string; right: string; foot: string };
};

const usually = 90;

/** What an ingredient cost over time, every pack of it: on the page, as CSV and JSON. */
export const showPrices: Answerer = async (request, reply) => {
  const stored = await read(request.server.house.db, 'ingredient', param(request, 'key'));
  if (!stored) return reply.callNotFound();
  const { doc } = stored;
  const { kitchen } = request;
  const f = formatFor(kitchen);
  const today = todayOf(request);
  const asked = query(request, 'since') || typedDay(addDays(today, -usually));
  const since = readPastDay(asked, today);
  const faults: Fault[] = isRead(since) ? [] : [{ field: 'since', label: 'Since', sentence: since.sentence }];
  if (faults.length > 0) reply.code(422);
  const lines = priceHistory(doc, kitchen);
  return answerSheet(reply, priceHistorySheet(doc, lines, kitchen), 'ingredients/prices', {
    title: `Prices of ${doc.name}`,
    nav: 'Recipes',
    form: { since: asked },
    faults,
    key: doc.key,
    name: doc.name,
    here: `${pageOf('ingredient', doc.key)}/prices`,
    moved: isRead(since) ? movedWords(doc, since.value, kitchen, f) : '',
    lines: lines.map((line) => drawn(line, today, f)),
    paper: {
      left: kitchen.name,
      middle: doc.name,
      right: 'Prices',
      foot: printedNow(request),
    },
  });
};

const movedWords = (
  doc: Ingredient,
  since: string,
  ways: Parameters<typeof movedSince>[2],
  f: Format,
): string => {
  const move = movedSince(doc, since, ways);
  if (!move)
    return `No price that lines are priced at stood on ${f.dateYear(since)}, so nothing can be said since then.`;
  const of = (point: PricePoint) => `${f.money(toMinor(point.each))} ${unitWords(move.unit)}`;
  if (move.before.price.key === move.after.price.key)
    return `${of(move.after)}: the price of ${f.dateYear(move.after.price.date)} still stands.`;
  return `${of(move.after)}, ${upOrDown(move.percent, f) || 'up from nothing'} since ${f.dateYear(since)}, when it was ${of(move.before)}.`;
};

/** "a kg", "each". */
export const unitWords = (unit: string): string =>
  unit === 'each' ? 'each' : `a ${unit === 'l' ? 'litre' : typedUnit(unit)}`;

const drawn = (line: PriceLine, today: string, f: Format): PricesPage['lines'][number] => {
  const rows = line.packs.flatMap(({ pack, points }) => points.map((point) => ({ pack, point })));
  const newest = rows
    .toReversed()
    .sort((a, b) =>
      a.point.price.date < b.point.price.date ? 1 : a.point.price.date > b.point.price.date ? -1 : 0,
    );
  return {
    unit: unitWords(line.unit),
    chart: rows.length > 1 ? priceLine(line, today, packName, f) : undefined,
    words: inOneSentence(line, f),
    rows: newest.map(({ pack, point: { price, each, since } }) => ({
      day: f.dateYear(price.date),
      pack: [measureInWords(pack.size), pack.brand, pack.supplier].filter(Boolean).join(', '),
      price: f.money(price.price),
      guess: price.guess,
      each: f.money(toMinor(each)),
      since: upOrDown(since, f) || 'first',
    })),
  };
};

const packName = ({ size, supplier, brand }: Pack): string =>
  `${measureInWords(size)} ${brand || supplier}`.trim();

/** What the picture shows, for who does not see it. */
const inOneSentence = ({ unit, packs }: PriceLine, f: Format): string =>
  `By what it costs ${unitWords(unit)}: ${packs
    .map(({ pack, points }) => {
      const [first, last] = [points[0]!, points.at(-1)!];
      const money = (point: PricePoint) => f.money(toMinor(point.each));
      return points.length === 1
        ? `${packName(pack)} ${money(last)}`
        : `${packName(pack)} from ${money(first)} on ${f.dateYear(first.price.date)} to ${money(last)}`;
    })
    .join('; ')}.`;
