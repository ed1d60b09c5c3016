import { normalName } from '../core/names.js';
import type { Db } from './schema.js';

export type Account = { id: number; key: string; name: string };

/** True once somebody has an account; from then on every page asks who is there. */
export const anyAccount = async (db: Db): Promise<boolean> =>
  (await db.selectFrom('account').select('id').limit(1).executeTakeFirst()) !== undefined;

/** The account of a name, whatever its case and spacing, with the hash of its passphrase. */
export const accountNamed = async (
  db: Db,
  name: string,
): Promise<(Account & { hash: string }) | undefined> => {
  const row = await db
    .selectFrom('account')
    .select(['id', 'key', 'name', 'password_hash'])
    .where('name_key', '=', normalName(name))
    .executeTakeFirst();
  return row && { id: row.id, key: row.key, name: row.name, hash: row.password_hash };
};

/** Makes the first account; undefined when there is one already, also when two people make it at once. */
export const makeFirstAccount = async (
  db: Db,
  account: { name: string; hash: string; at: Date },
): Promise<Account | undefined> =>
  db
    .insertInto('account')
    .values({
      key: 'owner',
      name: account.name,
      name_key: normalName(account.name),
      password_hash: account.hash,
      created_at: account.at,
    })
    .onConflict((conflict) => conflict.column('key').doNothing())
    .returning(['id', 'key', 'name'])
    .executeTakeFirst();
