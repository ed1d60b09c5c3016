import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Refusal } from './refusal.js';

/** Makes a folder that only its owner may read, unless it is there; one that cannot be made is refused. */
export const makeFolder = (folder: string): void => {
  try {
    make(folder);
  } catch (error) {
    throw unwritable(folder, error);
  }
};

// One by one: where nothing can be made, as under /proc, making them all in one call never comes back.
const make = (folder: string): void => {
  if (!existsSync(dirname(folder))) make(dirname(folder));
  try {
    mkdirSync(folder, { mode: 0o700 });
  } catch (error) {
    if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory()) throw error;
  }
};

/** The sentence for a data folder that cannot be written. */
export const unwritable = (folder: string, error: unknown): Refusal => {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  const reason = reasons[code] ?? (error instanceof Error ? error.message : String(error));
  return new Refusal(
    `The data folder ${folder} cannot be written (${reason}): set DATA_DIR to a folder of your own.`,
  );
};

const reasons: Record<string, string> = {
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EROFS: 'the disk is read-only',
  ENOENT: 'nothing can be made there',
  ENOTDIR: 'part of that path is a file',
  EEXIST: 'that path is a file',
  ENOSPC: 'the disk is full',
};

/** Waits until a file's contents, or a folder's list of names, are on the disk. */
export const syncPath = (path: string, isFolder = false): void => {
  if (isFolder && process.platform === 'win32') return; // folders cannot be opened there
  const file = openSync(path, 'r');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
};

/** Waits until every file and folder below a folder, and the folder, are on the disk. */
export const syncTree = (folder: string): void => {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) syncTree(path);
    else if (entry.isFile()) syncPath(path);
  }
  syncPath(folder, true);
};
