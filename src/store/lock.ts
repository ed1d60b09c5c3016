import { linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { Refusal } from './refusal.js';

type Holder = { process: number; started: string; machine: string };

/**
 * Takes the data folder for this process alone and returns what gives it back. The file names its holder; one left
 * by a process that is gone is taken over.
 */
export const lockFolder = (folder: string): (() => void) => {
  const file = join(folder, 'lock');
  const mine = join(folder, `lock.${process.pid}`);
  const holder: Holder = { process: process.pid, started: startOf(process.pid), machine: hostname() };
  writeFileSync(mine, `${JSON.stringify(holder)}\n`, { mode: 0o600 });
  try {
    if (!take(mine, file)) {
      takeAway(file, mine, folder);
      if (!take(mine, file)) throw held(folder, read(file));
    }
  } finally {
    rmSync(mine, { force: true });
  }
  return () => {
    if (same(read(file), holder)) rmSync(file, { force: true });
  };
};

// A hard link appears whole or not at all, and only one process can make it.
const take = (mine: string, file: string): boolean => {
  try {
    linkSync(mine, file);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
};

const takeAway = (file: string, mine: string, folder: string): void => {
  const seen = read(file);
  if (seen && isAlive(seen)) throw held(folder, seen);
  const aside = `${mine}.old`;
  try {
    renameSync(file, aside);
  } catch {
    return; // another process has just taken it away
  }
  const moved = read(aside);
  // Between reading and moving, another process may have locked the folder: give its lock back.
  if (moved && isAlive(moved)) renameSync(aside, file);
  else rmSync(aside, { force: true });
};

const read = (file: string): Holder | undefined => {
  try {
    const { process, started, machine } = JSON.parse(readFileSync(file, 'utf8')) as Holder;
    return Number.isInteger(process) ? { process, started, machine } : undefined;
  } catch {
    return undefined;
  }
};

const same = (a: Holder | undefined, b: Holder): boolean =>
  a?.process === b.process && a.started === b.started && a.machine === b.machine;

const isAlive = (holder: Holder): boolean => {
  if (holder.machine !== hostname()) return true;
  try {
    process.kill(holder.process, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
  return startOf(holder.process) === holder.started;
};

/** When a process started, as its system says; numbers are given out again, so the number alone proves nothing. */
const startOf = (pid: number): string => {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? '';
  } catch {
    return '';
  }
};

const held = (folder: string, holder: Holder | undefined): Refusal => {
  const who = holder ? `process ${holder.process} on ${holder.machine}` : 'another process';
  return new Refusal(
    `The data folder ${folder} is in use by ${who}: end it first, or set DATA_DIR to another folder.`,
  );
};
