import { listOf } from '../core/allergens.js';
import { nothingKnown } from '../core/known.js';
import { allPlain } from '../core/plain-produce.js';
import { refusals } from '../core/rules.js';
import { read } from './documents.js';
import { type Gone, gone, type Refused, refused } from './outcome.js';
import type { Saving } from './rows.js';
import { saving } from './saves.js';
import type { Db } from './schema.js';
import { putTogether, type SavedTogether, storedBy } from './together.js';

/** Sets many ingredients free of the list in force in somebody's word, as one save that one undo takes back. */
export const savePlain = (
  db: Db,
  { keys, by: word }: { keys: readonly string[]; by: string },
  by: Saving,
): Promise<({ outcome: 'saved' } & SavedTogether) | Refused | Gone> =>
  saving(db, async (trx) => {
    const kitchen = await read(trx, 'kitchen', 'kitchen');
    if (!kitchen) return gone;
    const stored = [...(await storedBy(trx, 'ingredient', keys)).values()];
    const docs = allPlain(
      stored.map(({ doc }) => doc),
      listOf(kitchen.doc),
      word,
    );
    const changed = docs.filter((doc, i) => doc !== stored[i]!.doc);
    const problems = changed.flatMap((doc) => refusals('ingredient', doc, nothingKnown));
    if (problems.length > 0) return refused(problems);
    const wanted = docs.map((doc, i) => ({ stored: stored[i], doc }));
    return { outcome: 'saved', ...(await putTogether(trx, { ingredient: wanted }, by)) };
  });
