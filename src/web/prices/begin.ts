import type { FastifyReply } from 'fastify';
import { readCsv } from '../../core/exchange/csv/read.js';
import { columnsAgain } from '../../core/exchange/prices/guess.js';
import { readPastDay, typedDay } from '../../core/reading-days.js';
import { keepDraft } from '../../store/csv-drafts.js';
import { suppliersOf } from '../../store/price-lists.js';
import { todayOf } from '../coming.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import type { Form } from '../form.js';
import { type Answerer, query } from '../house.js';
import { page } from '../page.js';
import { goTo, saving } from '../save.js';
import { addressOf, listOfSupplier, type Settings } from './draft.js';
import { rememberColumns } from './remember.js';
import { sentWith } from './sent.js';

export type BeginPage = { suppliers: string[]; lists: string[] };

/** Where a supplier's price list is brought in. */
export const askForList: Answerer = (request, reply) =>
  draw(reply, { supplier: query(request, 'supplier'), date: typedDay(todayOf(request)) });

/** Takes a list to be looked at: on to its columns, or, where they are known from the last one, to what it changes. */
export const beginList: Answerer = async (request, reply) => {
  const { form, text, encoding } = await sentWith(request);
  const reading = new Reading(form);
  const today = todayOf(request);
  const supplier = reading.words('supplier', 'Supplier', 'Enter whose price list this is.').slice(0, 120);
  const date = reading.take('date', 'Day of the prices', (typed) => readPastDay(typed, today), today);
  const csv = readCsv(text);
  if ('sentence' in csv) reading.refuse('text', 'The list', csv.sentence);
  if (reading.faults.length > 0 || 'sentence' in csv) {
    reply.code(422);
    return draw(reply, form, reading.faults);
  }
  const { db } = request.server.house;
  const settings: Settings = { supplier, date, encoding, choices: {} };
  const key = await keepDraft(db, { kind: 'price-list', text, settings }, saving(reply));
  const list = listOfSupplier(request.kitchen, supplier);
  const columns = list && columnsAgain(csv, list);
  if (!columns) return goTo(reply, `${addressOf(key)}/columns`);
  await rememberColumns(reply, { ...list, columns });
  return goTo(reply, addressOf(key));
};

const draw = async (reply: FastifyReply, form: Form, faults: readonly Fault[] = []) => {
  const { server, kitchen } = reply.request;
  const model: BeginPage = {
    suppliers: (await suppliersOf(server.house.db)).toSorted(),
    lists: kitchen.priceLists.map(({ supplier }) => supplier).toSorted(),
  };
  return page(reply, 'prices/begin', { title: 'A price list', nav: 'Recipes', form, faults, ...model });
};
