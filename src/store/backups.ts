import { randomBytes } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { workbookText } from '../core/exchange/workbook.js';
import type { Workbook } from '../core/facts/facts.js';
import { makeFolder, syncPath } from './disk.js';

const folderIn = (dataDir: string): string => join(dataDir, 'backups');

/**
 * Writes a kitchen into a new file under DATA_DIR/backups and returns its path. The file appears whole or not at all,
 * and was read back as the same kitchen before it counts.
 */
export const writeBackup = (workbook: Workbook, dataDir: string, at: Date): string => {
  const text = workbookText(workbook);
  const folder = folderIn(dataDir);
  makeFolder(folder);
  const stamp = at.toISOString().replaceAll(':', '').slice(0, 17);
  const file = join(folder, `workbook-${stamp}-${randomBytes(3).toString('hex')}.json`);
  putWhole(file, text, (back) => workbookText(JSON.parse(back)) === text);
  return file;
};

/** The files of the backups kept, oldest first; what a stop left half-written is not one of them. */
export const backupFiles = (dataDir: string): string[] => {
  const folder = folderIn(dataDir);
  if (!existsSync(folder)) return [];
  const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
  return names.sort().map((name) => join(folder, name));
};

/** Removes what a stop left half-written; only while nothing is being written. */
export const removeHalfWritten = (dataDir: string): void => {
  const folder = folderIn(dataDir);
  if (!existsSync(folder)) return;
  for (const name of readdirSync(folder))
    if (name.endsWith(aside)) rmSync(join(folder, name), { force: true });
};

const aside = '.new';

/** Puts a text in the place of a file, whole or not at all, once it was read back and found to be as it should. */
export const putWhole = (file: string, text: string, isRight: (back: string) => boolean): void => {
  const made = `${file}${aside}`;
  try {
    rmSync(made, { force: true });
    writeWhole(made, text);
    const back = readFileSync(made, 'utf8');
    if (back !== text || !isRight(back))
      throw new Error(`the backup ${file} did not read back as it was written`);
    renameSync(made, file);
    syncPath(join(file, '..'), true);
  } finally {
    rmSync(made, { force: true });
  }
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
