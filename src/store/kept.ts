import type { EntityOf } from '../core/facts/facts.js';
import { load } from './documents.js';
import type { Db } from './schema.js';

/** The documents that sheets need by the hundred. */
export type Bulk = 'recipe' | 'ingredient';

/** What the database says stands under a key now. */
export type Version = { key: string; version: string };

type Kept = { version: string; doc: EntityOf[Bulk] };

// Whole kitchens fit; what was kept first goes first.
const most = 10_000;

// A transaction shares its database's adapter, and no other database has it.
const memories = new WeakMap<object, Record<Bulk, Map<string, Kept>>>();

/**
 * Documents of the versions that the database has just named, by key and sorted by it, of each pack the latest price
 * alone. One read before is taken from memory where it is the very version named, so a save is seen at once, whoever
 * made it. They are shared, so they are frozen.
 */
export const loadKept = async <N extends Bulk>(
  db: Db,
  entity: N,
  named: readonly Version[],
): Promise<ReadonlyMap<string, EntityOf[N]>> => {
  const memory = memoryOf(db)[entity];
  const isKept = ({ key, version }: Version) => memory.get(key)?.version === version;
  const docs = new Map(named.filter(isKept).map(({ key }) => [key, memory.get(key)!.doc]));
  const missing = named.filter((one) => !isKept(one)).map(({ key }) => key);
  for (const { key, doc, version } of await load(db, entity, { keys: missing, latestPrices: true })) {
    docs.set(key, frozen(doc));
    memory.delete(key);
    memory.set(key, { version, doc });
  }
  forget(memory);
  const keys = named.map(({ key }) => key).toSorted();
  return new Map(keys.map((key) => [key, docs.get(key) as EntityOf[N]]));
};

const memoryOf = (db: Db): Record<Bulk, Map<string, Kept>> => {
  const { adapter } = db.getExecutor();
  const memory = memories.get(adapter) ?? { recipe: new Map(), ingredient: new Map() };
  memories.set(adapter, memory);
  return memory;
};

const forget = (memory: Map<string, Kept>): void => {
  for (const key of memory.keys()) {
    if (memory.size <= most) return;
    memory.delete(key);
  }
};

const frozen = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null)
    for (const one of Object.values(Object.freeze(value))) frozen(one);
  return value;
};
