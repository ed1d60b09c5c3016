import { spawn } from 'node:child_process';
import { once } from 'node:events';
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { ingredient } from '../../src/core/facts/ingredient.js';
import { create } from '../../src/store/changes.js';
import { openDatabase } from '../../src/store/database.js';
import { load } from '../../src/store/documents.js';
import { history } from '../../src/store/history.js';
import { newFolder } from './program.js';

const rounds = 5;

/** Lets a process write until it is killed at some moment, and returns the keys it said were saved. */
const writeUntilKilled = async (folder: string, round: number): Promise<string[]> => {
  const child = spawn('node', [join('dist', 'test', 'embedded', 'writer.js'), folder, String(round)]);
  let said = '';
  child.stdout.on('data', (text) => (said += text));
  while (!said.includes('\n')) await sleep(10);
  await sleep(100 + 77 * round);
  child.kill('SIGKILL');
  await once(child, 'close');
  return said.split('\n').slice(0, -1);
};

// After each kill the folder opens without a word, and every row that was acknowledged is there, with its history.
test('a process killed while it writes loses no row that was acknowledged', async () => {
  const folder = newFolder();
  const acknowledged: string[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const saved = await writeUntilKilled(folder, round);
    expect(saved.length).toBeGreaterThan(0);
    acknowledged.push(...saved);
    const { db, close } = await openDatabase({ dataDir: folder });
    const there = new Set((await load(db, 'ingredient')).map(({ key }) => key));
    expect(acknowledged.filter((key) => !there.has(key))).toEqual([]);
    // At most the one save in flight stands unacknowledged, whole.
    expect(there.size - acknowledged.length).toBeLessThanOrEqual(round + 1);
    expect(await history(db, 'ingredient', saved.at(-1)!)).toHaveLength(1);
    await close();
  }
});

/** How many times something waits for the disk while `work` is done. */
const waitsDuring = async (work: () => Promise<unknown>): Promise<number> => {
  const { fsyncSync } = fs;
  let waits = 0;
  fs.fsyncSync = (file) => {
    waits += 1;
    fsyncSync(file);
  };
  syncBuiltinESMExports();
  try {
    await work();
    return waits;
  } finally {
    fs.fsyncSync = fsyncSync;
    syncBuiltinESMExports();
  }
};

// The database is some thousand files. A start need not wait for them where the last close did; after a crash it must.
test('every file is waited for at a start after a crash, and not after a close in order', async () => {
  const dataDir = newFolder();
  const openAndClose = async () => {
    const { close } = await openDatabase({ dataDir });
    await close();
  };
  const opening = async () => {
    let opened: Awaited<ReturnType<typeof openDatabase>> | undefined;
    const waits = await waitsDuring(async () => {
      opened = await openDatabase({ dataDir });
    });
    await opened?.close();
    return waits;
  };
  await openAndClose();
  expect(await opening()).toBeLessThan(50);
  const gone = { process: 2 ** 22 + 1, started: '', machine: hostname() };
  fs.writeFileSync(join(dataDir, 'lock'), JSON.stringify(gone));
  expect(await opening()).toBeGreaterThan(500);
});

// The engine itself never waits for the disk; without this, a power cut would take saves that were acknowledged.
test('a save waits for the disk before it is acknowledged, a read does not', async () => {
  const { db, close } = await openDatabase({ dataDir: newFolder() });
  try {
    expect(await waitsDuring(() => load(db, 'ingredient'))).toBe(0);
    const leek = ingredient.parse({ key: 'leek', name: 'Leeks' });
    const saving = () => create(db, 'ingredient', leek, { who: 'Ines', at: new Date() });
    expect(await waitsDuring(saving)).toBeGreaterThan(0);
  } finally {
    await close();
  }
});
