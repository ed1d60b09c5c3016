import type { FastifyReply } from 'fastify';
import { columnsAgain, columnsOf, type Guess, guessColumns } from '../../core/exchange/prices/guess.js';
import { type ListColumn, listColumns, type PriceList } from '../../core/facts/price-list.js';
import { todayOf } from '../coming.js';
import { Reading } from '../faults.js';
import type { Choice, Fault } from '../fields.js';
import { type Form, rows, text } from '../form.js';
import type { Answerer } from '../house.js';
import { keyFrom } from '../keys.js';
import { page } from '../page.js';
import { goTo } from '../save.js';
import { addressOf, type Draft, draftOf, listOfSupplier, notKept } from './draft.js';
import { rememberColumns } from './remember.js';

export type ColumnsPage = {
  address: string;
  supplier: string;
  encoding: string;
  rowCount: number;
  columns: { place: number; heading: string; samples: string; guessed: string }[];
  choices: Choice[];
};

const words: Record<ListColumn, string> = {
  name: 'Name',
  code: 'Supplier’s code',
  size: 'Pack size with its unit',
  amount: 'Amount in a pack',
  unit: 'Unit of the amount',
  count: 'How many in a pack',
  price: 'Price of a pack',
  date: 'Day of the price',
  brand: 'Brand',
  section: 'Section',
};

/** What each column of a list holds: as remembered, else as guessed. */
export const askForColumns: Answerer = async (request, reply) => {
  const draft = await draftOf(request);
  if (!draft) return notKept(reply);
  const list = listOfSupplier(request.kitchen, draft.settings.supplier);
  const guess = guessColumns(draft.csv, todayOf(request));
  const again = list && columnsAgain(draft.csv, list);
  return draw(reply, draft, guess, formOf(list && again ? { ...list, columns: again } : guess));
};

const formOf = ({
  headings,
  decimal,
  days,
  columns,
}: Pick<Guess, 'headings' | 'decimal' | 'days'> & {
  columns: PriceList['columns'];
}): Form => ({
  headings: headings ? 'on' : '',
  decimal: decimal ?? '',
  days: days ?? '',
  columns: Array.from({ length: Math.max(0, ...columns.map(({ place }) => place)) }, (_, i) => ({
    is: columns.find(({ place }) => place === i + 1)?.is ?? '',
  })),
});

/** Keeps what the columns hold and goes on to what the list changes. */
export const saveColumns: Answerer = async (request, reply) => {
  const draft = await draftOf(request);
  if (!draft) return notKept(reply);
  const form = request.body as Form;
  const reading = new Reading(form);
  const headings = reading.ticked('headings');
  const columns = readColumns(reading, draft, headings);
  const decimal = reading.oneOf('decimal', ['point', 'comma'] as const, 'point');
  const days = reading.oneOf('days', ['day-first', 'month-first'] as const, 'day-first');
  if (text(form, 'decimal') === '')
    reading.refuse(
      'decimal',
      'Decimal sign',
      'Choose which sign stands before the pennies: the figures can be read both ways.',
    );
  if (text(form, 'days') === '' && columns.some(({ is }) => is === 'date'))
    reading.refuse('days', 'Dates', 'Choose which comes first in a date: the dates can be read both ways.');
  if (reading.faults.length > 0) {
    reply.code(422);
    return draw(reply, draft, guessColumns(draft.csv, todayOf(request)), form, reading.faults);
  }
  const { supplier } = draft.settings;
  const { kitchen } = request;
  const known = listOfSupplier(kitchen, supplier);
  const key = known?.key ?? keyFrom(supplier, (one) => kitchen.priceLists.some((other) => other.key === one));
  await rememberColumns(reply, {
    key,
    supplier,
    headings,
    columns,
    decimal,
    days,
    leftOut: known?.leftOut ?? [],
  });
  return goTo(reply, addressOf(draft.key));
};

const readColumns = (reading: Reading, { csv }: Draft, headings: boolean): PriceList['columns'] => {
  const there = columnsOf(csv, headings);
  const chosen = rows(reading.form, 'columns').flatMap((row, i) => {
    const is = listColumns.find((one) => one === text(row, 'is'));
    return is && there[i] ? [{ is, heading: there[i].heading, place: i + 1 }] : [];
  });
  chosen.forEach(({ is, place }, i) => {
    if (chosen.findIndex((one) => one.is === is) < i)
      reading.refuse(
        `columns[${place - 1}].is`,
        `Column ${place}`,
        `${words[is]} is chosen for another column already.`,
      );
  });
  const has = (is: ListColumn) => chosen.some((one) => one.is === is);
  if (!has('price'))
    reading.refuse('columns[0].is', 'Price', 'Choose the column that holds the price of a pack.');
  if (!has('name') && !has('code'))
    reading.refuse('columns[0].is', 'Name', 'Choose the column that holds the name, or the supplier’s code.');
  return chosen;
};

const draw = (reply: FastifyReply, draft: Draft, guess: Guess, form: Form, faults: readonly Fault[] = []) => {
  const { csv, settings, key } = draft;
  const headings = text(form, 'headings') === 'on';
  const how = { heading: 'guessed from its heading', values: 'guessed from its values' };
  const model: ColumnsPage = {
    address: `${addressOf(key)}/columns`,
    supplier: settings.supplier,
    encoding: settings.encoding,
    rowCount: csv.rows.length - (headings ? 1 : 0),
    columns: columnsOf(csv, headings).map(({ place, heading, values }) => {
      const guessed = guess.columns.find((one) => one.place === place);
      const samples = [...new Set(values)].slice(0, 3).map((value) => value.slice(0, 60));
      return { place, heading, samples: samples.join(' · '), guessed: guessed ? how[guessed.by] : '' };
    }),
    choices: [
      { value: '', label: 'not read' },
      ...listColumns.map((is) => ({ value: is, label: words[is] })),
    ],
  };
  const head = {
    title: `Columns of the list from ${settings.supplier}`,
    nav: 'Recipes',
    form,
    faults,
  } as const;
  return page(reply, 'prices/columns', { ...head, ...model });
};
