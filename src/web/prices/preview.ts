import type { FastifyReply, FastifyRequest } from 'fastify';
import { costsMoved } from '../../core/costs-moved.js';
import { type Revision, revisionsOf, withPrices } from '../../core/exchange/prices/apply.js';
import type { Plan } from '../../core/exchange/prices/plan.js';
import type { Ingredient } from '../../core/facts/ingredient.js';
import type { PriceList } from '../../core/facts/price-list.js';
import { costsWith } from '../../core/kitchen-costs.js';
import { applyList, type Planned, planList } from '../../store/price-lists.js';
import { costsNow, movedInWords } from '../costs.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { page } from '../page.js';
import { goTo, saving } from '../save.js';
import { addressOf, type Draft, draftOf, listOfSupplier, notKept, rowsOf } from './draft.js';
import { type PreviewModel, previewOf } from './model.js';

export type PreviewPage = PreviewModel & {
  address: string;
  supplier: string;
  date: string;
  mark: string;
  /** How many ingredients are written, how many prices, and which recipes' costs they move. */
  written: number;
  prices: number;
  moves: string;
  ingredients: string[];
  /** Set when the facts changed since the page was shown, so that nothing was taken over. */
  moved: boolean;
  refusal: string;
};

/** What a list would change, kind by kind; nothing has changed yet. */
export const showPreview: Answerer = async (request, reply) => {
  const draft = await draftOf(request);
  if (!draft) return notKept(reply);
  const list = listOfSupplier(request.kitchen, draft.settings.supplier);
  if (!list || list.columns.length === 0) return goTo(reply, `${addressOf(draft.key)}/columns`);
  return drawPreview(reply, draft, list, {});
};

/** Takes the whole list over, or, when something else would be written than was shown, nothing. */
export const takeOver: Answerer = async (request, reply) => {
  const draft = await draftOf(request);
  const list = draft && listOfSupplier(request.kitchen, draft.settings.supplier);
  if (!draft || !list) return notKept(reply);
  const mark = text(request.body as Form, 'mark');
  const asked = { key: list.key, read: rowsOf(draft, list, request), choices: draft.settings.choices };
  const outcome = await applyList(
    request.server.house.db,
    { ...asked, draft: draft.key, mark },
    saving(reply),
  );
  if (outcome.outcome === 'saved')
    return goTo(
      reply,
      outcome.together === null ? '/ingredients' : `/ingredients?together=${outcome.together}`,
    );
  reply.code(409);
  const said =
    outcome.outcome === 'moved'
      ? { moved: true }
      : {
          refusal: outcome.problems
            .map(({ sentence }) => sentence)
            .slice(0, 5)
            .join(' '),
        };
  return drawPreview(reply, draft, list, said);
};

type Said = { moved?: boolean; refusal?: string; form?: Form; faults?: readonly Fault[] };

export const drawPreview = async (
  reply: FastifyReply,
  draft: Draft,
  list: PriceList,
  { moved = false, refusal = '', form = {}, faults = [] }: Said,
): Promise<unknown> => {
  const { request } = reply;
  const { plan, mark, ingredients } = await plannedFor(request, draft, list);
  const names = ingredients.filter(({ archived }) => !archived);
  const touched = revisionsOf(plan);
  const model: PreviewPage = {
    ...previewOf(plan, { kitchen: request.kitchen, names, asked: query(request, 'q').trim() }),
    address: addressOf(draft.key),
    supplier: draft.settings.supplier,
    date: draft.settings.date,
    mark,
    written: touched.length,
    prices: pricesIn(plan),
    moves: await movesOf(request, touched, ingredients),
    ingredients: names.length <= 5000 ? names.map(({ name }) => name).toSorted() : [],
    moved,
    refusal,
  };
  const title = titleOf(model);
  return page(reply, 'prices/preview', {
    title,
    nav: 'Recipes',
    form: { ...formFor(model), ...form },
    faults,
    ...model,
  });
};

/** Which recipes cost something else with these prices: those priced at a pack whose standing price moves. */
const movesOf = async (
  request: FastifyRequest,
  touched: readonly Revision[],
  ingredients: readonly Ingredient[],
): Promise<string> => {
  const there = new Map(ingredients.map((one) => [one.key, one]));
  const changed = touched.flatMap((revision) => {
    const doc = revision.key === null ? undefined : there.get(revision.key);
    return doc ? [withPrices(doc, revision, '')] : [];
  });
  const costs = await costsNow(request.server.house.db);
  return movedInWords(costsMoved(costs, costsWith(costs, changed)), formatFor(request.kitchen));
};

export const plannedFor = (request: FastifyRequest, draft: Draft, list: PriceList): Promise<Planned> =>
  planList(
    request.server.house.db,
    { key: list.key, read: rowsOf(draft, list, request), choices: draft.settings.choices },
    request.kitchen,
  );

const pricesIn = ({ fresh, changed, older }: Plan): number => fresh.length + changed.length + older.length;

const titleOf = ({ supplier, prices }: PreviewPage): string =>
  `${supplier}: ${prices === 0 ? 'no new price' : prices === 1 ? 'one new price' : `${prices} new prices`}`;

/** Each unmatched row begins with the name it has on the list. */
const formFor = ({ unmatched }: PreviewPage): Form => ({
  q: unmatched.asked,
  rows: unmatched.rows.map(({ id, name }) => ({ id, to: '', name: name.slice(0, 120) })),
});
