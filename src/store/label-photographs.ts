import { sql } from 'kysely';
import {
  type LabelPhotograph,
  mostPhotographs,
  type PhotographType,
} from '../core/facts/label-photograph.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';

/** What is known of a photograph without opening it; `former` where one was taken out and can be brought back. */
export type PhotographNote = {
  standing: { taken: string; pack: string } | undefined;
  former: { taken: string } | undefined;
};

type Picture = Omit<LabelPhotograph, 'bytes'> & { bytes: Uint8Array };

/** Whether an ingredient's label has a photograph, and one that was taken out. */
export const photographOf = async (db: Db, ingredient: string): Promise<PhotographNote> => {
  const { rows } = await sql<{ standing: boolean; taken: string; pack: string }>`
    select standing, taken, pack from label_photograph where ingredient = ${ingredient}`.execute(db);
  const of = (standing: boolean) => rows.find((row) => row.standing === standing);
  return { standing: of(true), former: of(false) };
};

/** The photograph itself; undefined where there is none. */
export const openPhotograph = async (
  db: Db,
  ingredient: string,
): Promise<{ type: PhotographType; bytes: Buffer } | undefined> => {
  const { rows } = await sql<{ type: PhotographType; bytes: string }>`
    select type, encode(bytes, 'base64') as bytes from label_photograph
    where ingredient = ${ingredient} and standing`.execute(db);
  const [row] = rows;
  return row && { type: row.type, bytes: Buffer.from(row.bytes, 'base64') };
};

/**
 * Keeps a photograph in place of the one that stands, which can be brought back until the next; "full" where all of
 * them together would take too much, "gone" where there is no such ingredient any more.
 */
export const keepPhotograph = (db: Db, picture: Picture): Promise<'kept' | 'full' | 'gone'> =>
  saving(db, async (trx) => {
    const { rows } = await sql<{ there: boolean; others: number }>`
      select exists(select 1 from ingredient where key = ${picture.ingredient}) as there,
        (select coalesce(sum(octet_length(bytes)), 0)::integer from label_photograph
          where standing and ingredient <> ${picture.ingredient}) as others`.execute(trx);
    const { there, others } = rows[0]!;
    if (!there) return 'gone';
    if (others + picture.bytes.length > mostPhotographs) return 'full';
    await putAside(trx, picture.ingredient);
    await insert(trx, { ...picture, bytes: Buffer.from(picture.bytes).toString('base64') });
    return 'kept';
  });

/** Takes a photograph out; it can be brought back until another is kept. */
export const takeOutPhotograph = (db: Db, ingredient: string): Promise<void> =>
  saving(db, async (trx) => {
    const { standing } = await photographOf(trx, ingredient);
    if (standing) await putAside(trx, ingredient);
  });

/** Brings the one that was taken out or replaced back; what stands meanwhile takes its place. */
export const bringPhotographBack = (db: Db, ingredient: string): Promise<void> =>
  saving(db, async (trx) => {
    // Sorted, so that all rows are gone before the first comes back.
    await sql`with old as (delete from label_photograph where ingredient = ${ingredient} returning *)
      insert into label_photograph (ingredient, standing, taken, pack, type, bytes)
      select ingredient, not standing, taken, pack, type, bytes from old order by standing`.execute(trx);
  });

const putAside = async (trx: Trx, ingredient: string): Promise<void> => {
  const own = sql`ingredient = ${ingredient}`;
  await sql`delete from label_photograph where ${own} and not standing
    and exists(select 1 from label_photograph where ${own} and standing)`.execute(trx);
  await sql`update label_photograph set standing = false where ${own} and standing`.execute(trx);
};

const insert = async (trx: Trx, { ingredient, taken, pack, type, bytes }: LabelPhotograph): Promise<void> => {
  await sql`insert into label_photograph (ingredient, standing, taken, pack, type, bytes)
    values (${ingredient}, true, ${taken}, ${pack}, ${type}, decode(${bytes}, 'base64'))`.execute(trx);
};

/** The photographs that stand, by ingredient, as a workbook file holds them. */
export const photographs = async (db: Db): Promise<LabelPhotograph[]> => {
  const { rows } = await sql<LabelPhotograph>`
    select ingredient, taken, pack, type, replace(encode(bytes, 'base64'), chr(10), '') as bytes
    from label_photograph where standing order by ingredient collate "C"`.execute(db);
  return rows;
};

/** Adds photographs as a workbook file holds them. */
export const insertPhotographs = async (trx: Trx, all: readonly LabelPhotograph[]): Promise<void> => {
  for (const one of all) await insert(trx, one);
};
