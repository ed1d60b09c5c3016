import { createHash } from 'node:crypto';
import { newIngredient, type Revision, revisionsOf, withPrices } from '../core/exchange/prices/apply.js';
import type { Choices } from '../core/exchange/prices/match.js';
import { kinds, type Plan, planOf } from '../core/exchange/prices/plan.js';
import type { ListRead } from '../core/exchange/prices/rows.js';
import type { Ingredient } from '../core/facts/ingredient.js';
import type { Kitchen } from '../core/facts/kitchen.js';
import type { PriceList } from '../core/facts/price-list.js';
import { type Known, nothingKnown } from '../core/known.js';
import type { Problem } from '../core/problem.js';
import { standInsOf } from '../core/rules/substitutes.js';
import { refusals } from '../core/rules.js';
import { dropDraft } from './csv-drafts.js';
import { load, read } from './documents.js';
import { everyIngredient } from './ingredients.js';
import { type Refused, refused } from './outcome.js';
import type { Saving } from './rows.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';
import { putTogether, type SavedTogether, storedBy, type Wanted } from './together.js';

/** A list as it was read, whose it is, and what the cook chose for its rows. */
export type Asked = { key: string; read: ListRead; choices: Choices };

/** What a list would do to the facts as they stand, the mark of exactly that, and the ingredients it was worked out from. */
export type Planned = { plan: Plan; mark: string; ingredients: readonly Ingredient[] };

/** Works out what a list would change; `key` is that of the kitchen's own record of the supplier's lists. */
export const planList = async (db: Db, { key, read, choices }: Asked, kitchen: Kitchen): Promise<Planned> => {
  const list = kitchen.priceLists.find((one) => one.key === key);
  if (!list) throw new Error(`the kitchen keeps no price list ${key}`);
  const latest = await everyIngredient(db);
  const from = { kitchen, list, choices };
  const first = planOf(read, { ...from, ingredients: latest });
  // Whether an old price is in the history already, only the whole history tells.
  const old = [...new Set(first.older.flatMap(({ match }) => match.ingredient.key ?? []))];
  const whole = new Map((await load(db, 'ingredient', { keys: old })).map(({ key, doc }) => [key, doc]));
  const ingredients = latest.map((one) => whole.get(one.key) ?? one);
  const plan = old.length === 0 ? first : planOf(read, { ...from, ingredients });
  return { plan, mark: markOf(plan), ingredients };
};

const markOf = (plan: Plan): string => {
  const hash = createHash('sha256');
  for (const kind of kinds)
    for (const { row, match, before } of plan[kind])
      hash.update(
        JSON.stringify([
          kind,
          match.ingredient.key ?? match.ingredient.name,
          match.pack?.key,
          row.id,
          row.price,
          row.date,
          before?.price,
          before?.date,
        ]),
      );
  for (const { ingredient, pack } of plan.uncoded) hash.update(JSON.stringify([ingredient.key, pack.key]));
  hash.update(JSON.stringify(plan.leftOut.map(({ id }) => id)));
  return hash.digest('hex');
};

export type Applied = ({ outcome: 'saved' } & SavedTogether) | { outcome: 'moved' } | Refused;

/**
 * Takes a list over, all of it in one transaction, and forgets the draft. When the facts are not those of the preview
 * any more, so that something else would be written than was shown, nothing is.
 */
export const applyList = (
  db: Db,
  asked: Asked & { draft: string; mark: string },
  by: Saving,
): Promise<Applied> =>
  saving(db, async (trx) => {
    const kitchen = await read(trx, 'kitchen', 'kitchen');
    const list = kitchen?.doc.priceLists.find(({ key }) => key === asked.key);
    if (!kitchen || !list) return { outcome: 'moved' };
    const { plan, mark } = await planList(trx, asked, kitchen.doc);
    if (mark !== asked.mark) return { outcome: 'moved' };
    const { wanted, problems } = await documentsOf(trx, plan, list.supplier);
    if (problems.length > 0) return refused(problems);
    const remembered = { stored: kitchen, doc: withLeftOut(kitchen.doc, list, asked.choices) };
    const saved = await putTogether(trx, { kitchen: [remembered], ingredient: wanted }, by);
    await dropDraft(trx, asked.draft);
    return { outcome: 'saved', ...saved };
  });

type Documents = { wanted: Wanted<'ingredient'>[]; problems: Problem[] };

const documentsOf = async (trx: Trx, plan: Plan, supplier: string): Promise<Documents> => {
  const revisions = revisionsOf(plan);
  const stored = await storedBy(
    trx,
    'ingredient',
    revisions.flatMap(({ key }) => key ?? []),
  );
  const taken = await takenKeys(trx, revisions);
  const wanted: Wanted<'ingredient'>[] = revisions.map((revision) => {
    const there = revision.key === null ? undefined : stored.get(revision.key);
    if (there) return { stored: there, doc: withPrices(there.doc, revision, supplier) };
    const doc = newIngredient(revision, supplier, (key) => taken.has(key));
    taken.add(doc.key);
    return { stored: undefined, doc };
  });
  return { wanted, problems: wanted.flatMap(({ doc }) => refusals('ingredient', doc!, itsOwn(doc!))) };
};

/** Prices leave alone what may stand in for an ingredient, so that is there as it was. */
const itsOwn = (doc: Ingredient): Known => {
  const { ingredients, recipes } = standInsOf(doc);
  const known = { name: '', components: [], variantOf: null };
  return {
    ...nothingKnown,
    ingredients: new Set(ingredients),
    recipes: new Map(recipes.map((key) => [key, known])),
  };
};

const takenKeys = async (trx: Trx, revisions: readonly Revision[]): Promise<Set<string>> => {
  if (revisions.every(({ key }) => key !== null)) return new Set();
  const rows = await trx.selectFrom('ingredient').select('key').execute();
  return new Set(rows.map(({ key }) => key));
};

const mostLeftOut = 1000;

const withLeftOut = (kitchen: Kitchen, list: PriceList, choices: Choices): Kitchen => {
  const asked = Object.entries(choices);
  const chosen = new Set(asked.map(([id]) => id));
  const kept = list.leftOut.filter((id) => !chosen.has(id));
  const more = asked.flatMap(([id, { to }]) => (to === 'out' ? [id] : []));
  const leftOut = [...kept, ...more].slice(-mostLeftOut);
  const priceLists = kitchen.priceLists.map((one) => (one.key === list.key ? { ...one, leftOut } : one));
  return { ...kitchen, priceLists };
};

/** Who sells the packs there are, each once, in no order. */
export const suppliersOf = async (db: Db): Promise<string[]> => {
  const rows = await db
    .selectFrom('pack')
    .select('supplier')
    .where('supplier', '<>', '')
    .where('withdrawn_at', 'is', null)
    .groupBy('supplier')
    .execute();
  return rows.map(({ supplier }) => supplier);
};
