import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { lockFolder } from '../../src/store/lock.js';
import { newFolder } from './program.js';

const folder = newFolder;
const left = (holder: object) => {
  const dir = folder();
  writeFileSync(join(dir, 'lock'), JSON.stringify(holder));
  return dir;
};
const gone = () => spawnSync('node', ['-e', 'console.log(process.pid)'], { encoding: 'utf8' }).stdout.trim();

test('a folder is locked once, names its holder, and is free again when given back', () => {
  const dir = folder();
  const unlock = lockFolder(dir);
  expect(JSON.parse(readFileSync(join(dir, 'lock'), 'utf8'))).toMatchObject({
    process: process.pid,
    machine: hostname(),
  });
  expect(() => lockFolder(dir)).toThrow(new RegExp(`in use by process ${process.pid} on`));
  unlock();
  expect(readdirSync(dir)).toEqual([]);
  lockFolder(dir)();
});

test('a lock that a killed process left is taken over', () => {
  const dir = left({ process: Number(gone()), started: '1', machine: hostname() });
  lockFolder(dir);
  expect(JSON.parse(readFileSync(join(dir, 'lock'), 'utf8')).process).toBe(process.pid);
  expect(readdirSync(dir)).toEqual(['lock']);
});

test('a number that was given to another process since is no holder', () => {
  const dir = left({ process: process.pid, started: 'long ago', machine: hostname() });
  expect(() => lockFolder(dir)).not.toThrow();
});

test('what another machine holds is left alone, for its processes cannot be seen from here', () => {
  const dir = left({ process: 1, started: '1', machine: 'elsewhere' });
  expect(() => lockFolder(dir)).toThrow(/in use by process 1 on elsewhere/);
  expect(existsSync(join(dir, 'lock'))).toBe(true);
});

test('a lock that cannot be read is no holder', () => {
  const dir = folder();
  writeFileSync(join(dir, 'lock'), '');
  expect(() => lockFolder(dir)).not.toThrow();
});
