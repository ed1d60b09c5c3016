import { sql } from 'kysely';
import type { Db } from './schema.js';

/** An answer, and the snapshot of the database it was read from; in the same transaction, or the same statement. */
export type FromSnapshot<T> = { snapshot: string; answer: T };

type Memory = { snapshot: string; answers: Map<string, unknown> };

// A transaction shares its database's adapter, and no other database has it.
const memories = new WeakMap<object, Memory>();

// Few, for the facts of a party that is done weigh megabytes; they are also the ones asked for again and again.
const mostAnswers = 30;

/** The snapshot a statement sees, as a column of it: two that are the same show the same rows of every table. */
export const snapshot = sql<string>`pg_current_snapshot()::text`;

/**
 * What `read` answers, from memory while nothing at all was saved since it was read, by whatever program: then the
 * database still shows the same snapshot. `asked` names the question. Answers are shared, so they are frozen. Not for
 * use after a write of one's own, which its snapshot does not show.
 */
export const whileUnchanged = async <T>(
  db: Db,
  asked: string,
  read: () => Promise<FromSnapshot<T>>,
): Promise<T> => {
  const { adapter } = db.getExecutor();
  const { rows } = await sql<{ snapshot: string }>`select ${snapshot} as snapshot`.execute(db);
  const memory = memories.get(adapter);
  if (memory && memory.snapshot === rows[0]?.snapshot && memory.answers.has(asked))
    return memory.answers.get(asked) as T;
  const found = await read();
  keep(adapter, asked, found);
  return found.answer;
};

const keep = <T>(adapter: object, asked: string, { snapshot, answer }: FromSnapshot<T>): void => {
  const before = memories.get(adapter);
  const memory = before?.snapshot === snapshot ? before : { snapshot, answers: new Map<string, unknown>() };
  if (memory.answers.size >= mostAnswers) memory.answers.clear();
  memory.answers.set(asked, frozen(answer));
  memories.set(adapter, memory);
};

/** Frozen through and through, so that what is shared stays as it was read. */
export const frozen = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value))
    for (const one of Object.values(Object.freeze(value))) frozen(one);
  return value;
};
