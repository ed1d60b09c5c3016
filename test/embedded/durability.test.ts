import { spawn } from 'node:child_process';
import { once } from 'node:events';
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
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

// The engine itself never waits for the disk; without this, a power cut would take saves that were acknowledged.
test('a save waits for the disk before it is acknowledged, a read does not', async () => {
  const { fsyncSync } = fs;
  const { db, close } = await openDatabase({ dataDir: newFolder() });
  let waits = 0;
  fs.fsyncSync = (file) => {
    waits += 1;
    fsyncSync(file);
  };
  syncBuiltinESMExports();
  try {
    await load(db, 'ingredient');
    expect(waits).toBe(0);
    const leek = ingredient.parse({ key: 'leek', name: 'Leeks' });
    await create(db, 'ingredient', leek, { who: 'Ines', at: new Date() });
    expect(waits).toBeGreaterThan(0);
  } finally {
    fs.fsyncSync = fsyncSync;
    syncBuiltinESMExports();
    await close();
  }
});
