import type { EntityOf } from '../core/facts/facts.js';
import { load } from './documents.js';
import type { Db } from './schema.js';
import { frozen } from './unchanged.js';

/** The documents that sheets need by the hundred. */
export type Bulk = 'recipe' | 'ingredient';

/** What the database says stands under a key now. */
export type Version = { key: string; version: string };

type Kept<N extends Bulk> = { version: string; doc: EntityOf[N] };
type Memory = { [N in Bulk]: Map<string, Kept<N>> };

// Whole kitchens fit; what was kept first goes first.
const most = 10_000;

// A transaction shares its database's adapter, and no other database has it.
const memories = new WeakMap<object, Memory>();

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
  const memory = memoryOf(db)[entity] as Map<string, Kept<N>>;
  const docs = new Map<string, EntityOf[N]>();
  const missing: string[] = [];
  for (const { key, version } of named) {
    const kept = memory.get(key);
    if (kept?.version === version) docs.set(key, kept.doc);
    else missing.push(key);
  }
  for (const { key, doc, version } of await load(db, entity, { keys: missing, latestPrices: true })) {
    docs.set(key, frozen(doc));
    memory.delete(key);
    memory.set(key, { version, doc });
  }
  forget(memory);
  return new Map([...docs].sort(([a], [b]) => (a < b ? -1 : 1)));
};

const memoryOf = (db: Db): Memory => {
  const { adapter } = db.getExecutor();
  const memory = memories.get(adapter) ?? { recipe: new Map(), ingredient: new Map() };
  memories.set(adapter, memory);
  return memory;
};

const forget = (memory: Map<string, unknown>): void => {
  for (const key of memory.keys()) {
    if (memory.size <= most) return;
    memory.delete(key);
  }
};
