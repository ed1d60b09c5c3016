import { randomBytes } from 'node:crypto';
import { closeSync, fsyncSync, openSync, readFileSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { workbookText } from '../core/exchange/workbook.js';
import { makeFolder, syncPath } from './disk.js';
import type { Db } from './schema.js';
import { exportWorkbook } from './workbook.js';

/**
 * Writes the whole kitchen into a new file under DATA_DIR/backups and returns its path; undefined while there is no
 * kitchen. The file appears whole or not at all, and was read back as the same kitchen before it counts.
 */
export const writeBackup = async (db: Db, dataDir: string, at: Date): Promise<string | undefined> => {
  const workbook = await exportWorkbook(db);
  if (!workbook) return undefined;
  const text = workbookText(workbook);
  const folder = join(dataDir, 'backups');
  makeFolder(folder);
  const stamp = at.toISOString().replaceAll(':', '').slice(0, 17);
  const file = join(folder, `workbook-${stamp}-${randomBytes(3).toString('hex')}.json`);
  const aside = `${file}.new`;
  try {
    writeWhole(aside, text);
    verify(aside, text);
    renameSync(aside, file);
    syncPath(folder, true);
  } finally {
    rmSync(aside, { force: true });
  }
  return file;
};

const writeWhole = (file: string, text: string): void => {
  const handle = openSync(file, 'wx', 0o600);
  try {
    const bytes = Buffer.from(text);
    for (let done = 0; done < bytes.length; ) done += writeSync(handle, bytes, done);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
};

const verify = (file: string, text: string): void => {
  const back = readFileSync(file, 'utf8');
  if (back !== text || workbookText(JSON.parse(back)) !== text)
    throw new Error(`the backup ${file} did not read back as it was written`);
};
