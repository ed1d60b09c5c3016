import type { Facts } from '../../core/facts/facts.js';
import type { WaysOut } from '../../core/way-out/find.js';
import { neededFor } from '../../core/way-out/needed.js';
import { takenIn } from '../../core/way-out/treat.js';
import { kitchenFacts } from '../../store/facts.js';
import type { Db } from '../../store/schema.js';
import { stoodIn } from '../../store/stood-in.js';
import { type Search, search } from '../../way-out/search.js';
import type { OneEvent } from '../events/event.js';

/** A search for one event, which holds for as long as nothing at all is saved. */
type Kept = { facts: Facts; search: Search; leave: NodeJS.Timeout };

// One whom nobody has asked about for so long was left; an answer may still be wanted when the page is read.
const left = { underWay: 15_000, answered: 600_000 };

const searches = new WeakMap<Db, Map<string, Kept>>();

/** The ways out of an event's menu, searched for once; undefined while the search has taken longer than may be waited. */
export const waysFor = async (db: Db, one: OneEvent, wait: number): Promise<WaysOut | undefined> => {
  const facts = await kitchenFacts(db);
  if (!facts) return undefined;
  const all = searches.get(db) ?? new Map<string, Kept>();
  searches.set(db, all);
  const kept = all.get(one.event.key);
  if (kept && kept.facts !== facts) forget(all, one.event.key, kept);
  const now = kept?.facts === facts ? kept : await begin(db, all, one, facts);
  now.leave.refresh();
  return Promise.race([
    now.search.answer,
    new Promise<undefined>((enough) => setTimeout(enough, wait, undefined).unref()),
  ]);
};

const begin = async (db: Db, all: Map<string, Kept>, { event }: OneEvent, facts: Facts): Promise<Kept> => {
  const stood = await stoodIn(db);
  const needed = neededFor(event, facts, stood);
  const begun = search({ event, facts: needed, stoodIn: stood, taken: takenIn(facts) });
  const over = () => forget(all, event.key, kept);
  const kept: Kept = { facts, search: begun, leave: setTimeout(over, left.underWay).unref() };
  all.set(event.key, kept);
  const answered = () => {
    clearTimeout(kept.leave);
    kept.leave = setTimeout(over, left.answered).unref();
  };
  begun.answer.then(answered, over);
  return kept;
};

const forget = (all: Map<string, Kept>, key: string, kept: Kept): void => {
  clearTimeout(kept.leave);
  kept.search.stop();
  if (all.get(key) === kept) all.delete(key);
};
