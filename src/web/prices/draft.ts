import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Csv, readCsv } from '../../core/exchange/csv/read.js';
import type { Choices } from '../../core/exchange/prices/match.js';
import { type ListRead, readList } from '../../core/exchange/prices/rows.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import type { PriceList } from '../../core/facts/price-list.js';
import { normalName } from '../../core/names.js';
import { type CsvDraft, draftBy } from '../../store/csv-drafts.js';
import { todayOf } from '../coming.js';
import { param } from '../house.js';

/** What was said of a list that is looked at: whose, of which day, and what its rows mean. */
export type Settings = { supplier: string; date: string; encoding: string; choices: Choices };
export type Draft = CsvDraft<Settings> & { csv: Csv };

/** The list at an address, read anew from its text; undefined when it is not kept any more. */
export const draftOf = async (request: FastifyRequest): Promise<Draft | undefined> => {
  const draft = await draftBy<Settings>(request.server.house.db, 'price-list', param(request, 'draft'));
  const csv = draft && readCsv(draft.text);
  return draft && csv && !('sentence' in csv) ? { ...draft, csv } : undefined;
};

/** How a supplier's lists are read, as the kitchen remembers it. */
export const listOfSupplier = ({ priceLists }: Kitchen, supplier: string): PriceList | undefined =>
  priceLists.find((one) => normalName(one.supplier) === normalName(supplier));

export const rowsOf = ({ csv, settings }: Draft, list: PriceList, request: FastifyRequest): ListRead =>
  readList(csv, {
    list,
    currency: request.kitchen.currency,
    date: settings.date,
    today: todayOf(request),
  });

export const addressOf = (key: string): string => `/ingredients/prices/${key}`;

/** A list that was taken over, dropped or forgotten after a week is not found. */
export const notKept = (reply: FastifyReply): unknown => reply.callNotFound();
