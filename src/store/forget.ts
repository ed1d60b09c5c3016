import { sql } from 'kysely';
import { type AnyEvent, type Forgetting, forgetInEvent, keysOfForgotten } from '../core/forget.js';
import { forgetInBackups, guestsInBackups } from './backup-guests.js';
import { removeHalfWritten } from './backups.js';
import { read } from './documents.js';
import { guestsOf, type Save, savesOf } from './kept-guests.js';
import { forgetPrints } from './printed-sheets.js';
import { type Saving, updateDocuments } from './rows.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';

/** What was forgotten: guests, saves and backups that held something of them; `swept` is false where bytes may linger. */
export type Forgotten = { guests: number; saves: number; backups: number; swept: boolean };

type Wish = Saving & { guests: readonly string[]; names: boolean; dataDir: string };

/**
 * Takes what guests of an event said, and their names if wished, out of the event, its history and the backups; no undo
 * and no form opened before brings it back. All or nothing in the database; a backup already rewritten stays so.
 */
export const forget = async (
  db: Db,
  event: string,
  { guests, names, dataDir, ...by }: Wish,
): Promise<Forgotten> => {
  const done = await saving(db, async (trx) => {
    const stored = await read(trx, 'event', event);
    const saves = await savesOf(trx, event);
    const inFiles = guestsInBackups(dataDir, event).flatMap((file) => file.guests ?? []);
    const there = [...(stored?.doc.guests ?? []), ...saves.flatMap(guestsOf), ...inFiles];
    const known = new Set(there.map(({ key }) => key));
    const keys = keysOfForgotten(
      guests.filter((key) => known.has(key)),
      known,
    );
    const forgetting = { keys, names };
    const held = saves.filter((save) => guestsOf(save).some(({ key }) => keys.has(key)));
    for (const save of held) await rewrite(trx, save, forgetting);
    if (stored) {
      const doc = forgetInEvent(stored.doc, forgetting);
      await outdate(trx, event);
      await updateDocuments(trx, 'event', [{ stored, revision: stored.revision + 1, doc }], by);
    }
    await forgetPrints(trx, event);
    removeHalfWritten(dataDir);
    const backups = forgetInBackups(dataDir, event, forgetting);
    return { guests: keys.size, saves: held.length, backups };
  });
  return { ...done, swept: await sweep(db) };
};

const rewrite = async (trx: Trx, { id, before, after }: Save, forgetting: Forgetting) => {
  const without = (event: AnyEvent | null) => JSON.stringify(event ? forgetInEvent(event, forgetting) : {});
  await sql`update change set before = before || ${without(before)}::jsonb,
    after = after || ${without(after)}::jsonb where id = ${id}`.execute(trx);
};

/** Takes the revisions from an event's history: a form opened before has nothing left to be joined with. */
const outdate = async (trx: Trx, event: string): Promise<void> => {
  await trx
    .updateTable('change')
    .set({ revision: 0 })
    .where('entity', '=', 'event')
    .where('key', '=', event)
    .execute();
};

/** Writes the tables afresh without the rows that were; and what the engine noted of their values. */
const sweep = async (db: Db): Promise<boolean> => {
  try {
    await sql`vacuum (full, analyze) guest, change, printed_sheet`.execute(db);
    return true;
  } catch {
    return false;
  }
};
