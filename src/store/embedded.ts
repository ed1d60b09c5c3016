import { existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { createPgConfig } from '@electric-sql/pglite/node-postgres';
import { NodeFS } from '@electric-sql/pglite/nodefs';
import { sql } from 'kysely';
import pg from 'pg';
import { makeFolder, syncPath, syncTree, unwritable } from './disk.js';
import { lockFolder } from './lock.js';
import { type Database, kyselyOver, types } from './pool.js';
import { Refusal } from './refusal.js';
import type { Db } from './schema.js';
import { backUp } from './workbook.js';

const logAllowance = 64n * 1024n * 1024n;

/** The engine writes without waiting for the disk; this waits for its log whenever that has grown. */
class DurableFolder extends NodeFS {
  private safeUpTo = -1n;

  override async syncToFs(): Promise<void> {
    const now = this.logPosition();
    if (now === this.safeUpTo) return;
    const log = join(this.rootDir, 'pg_wal');
    if (!existsSync(log)) return;
    syncTree(log);
    this.safeUpTo = now;
  }

  /** Bytes of log written since the database was made. */
  logPosition(): bigint {
    const engine = this.pg?.Module as unknown as { _GetFlushRecPtr?: (timeline: number) => bigint };
    if (!this.pg?.ready || !engine._GetFlushRecPtr) return -1n;
    return engine._GetFlushRecPtr(0);
  }

  syncAll(): void {
    syncTree(this.rootDir);
  }
}

/** Opens the embedded database in a data folder, which is locked until `close`. */
export const openEmbedded = async (dataDir: string): Promise<Database> => {
  makeFolder(dataDir);
  const closedInOrder = !existsSync(join(dataDir, 'lock'));
  const unlock = lock(dataDir);
  try {
    const folder = await folderOf(dataDir);
    const disk = new DurableFolder(folder);
    const engine = await PGlite.create({ fs: disk });
    if (!closedInOrder) disk.syncAll(); // the engine has just recovered, without waiting for the disk
    return running(dataDir, disk, engine, unlock);
  } catch (error) {
    unlock();
    if (error instanceof Refusal) throw error;
    throw new Refusal(
      `The database in ${dataDir} cannot be opened (${error instanceof Error ? error.message : error}): move its folder "database" away and restore a file from "backups".`,
    );
  }
};

const running = (dataDir: string, disk: DurableFolder, engine: PGlite, unlock: () => void): Database => {
  const db = overPglite(engine);
  let checkpointed = disk.logPosition();
  return {
    db,
    engine: 'embedded',
    upkeep: async () => {
      if (disk.logPosition() - checkpointed < logAllowance) return;
      // One connection throughout, so that nothing is saved between the backup and the checkpoint.
      await db.connection().execute(async (alone) => {
        await backUp(alone as Db, dataDir, new Date());
        await sql`vacuum analyze`.execute(alone); // nothing else does it here
        await sql`checkpoint`.execute(alone);
        disk.syncAll();
        checkpointed = disk.logPosition();
      });
    },
    close: async () => {
      await db.destroy();
      await engine.close();
      disk.syncAll();
      unlock();
    },
  };
};

/** The embedded engine behind the same pool and driver as a PostgreSQL server; it has one connection. */
export const overPglite = (engine: PGlite): Db =>
  kyselyOver(
    new pg.Pool({
      ...createPgConfig(engine),
      max: 1,
      idleTimeoutMillis: 0,
      connectionTimeoutMillis: 10_000,
      types,
    } as pg.PoolConfig),
  );

const lock = (dataDir: string): (() => void) => {
  try {
    return lockFolder(dataDir);
  } catch (error) {
    throw error instanceof Refusal ? error : unwritable(dataDir, error);
  }
};

/** The database's folder; made aside and moved into place whole, so that a stop half-way leaves none. */
const folderOf = async (dataDir: string): Promise<string> => {
  const folder = join(dataDir, 'database');
  if (existsSync(folder)) return folder;
  const aside = join(dataDir, 'database.new');
  rmSync(aside, { recursive: true, force: true });
  makeFolder(aside);
  const engine = await PGlite.create({ fs: new NodeFS(aside) });
  await engine.close();
  syncTree(aside);
  renameSync(aside, folder);
  syncPath(dataDir, true);
  return folder;
};
