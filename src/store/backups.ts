import { randomBytes } from 'node:crypto';
import { closeSync, fsyncSync, openSync, readFileSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { workbookText } from '../core/exchange/workbook.js';
import type { Workbook } from '../core/facts/facts.js';
import { makeFolder, syncPath } from './disk.js';

/**
 * Writes a kitchen into a new file under DATA_DIR/backups and returns its path. The file appears whole or not at all,
 * and was read back as the same kitchen before it counts.
 */
export const writeBackup = (workbook: Workbook, dataDir: string, at: Date): string => {
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
