import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll } from 'vitest';

const made: string[] = [];
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true });
});

/** A folder for the tests of one file, gone when they are over. */
export const newFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'workbook-program-'));
  made.push(folder);
  return folder;
};

type Env = Record<string, string>;
type Ended = { code: number | null; out: string; err: string };

const start = (file: string, args: string[], env: Env): ChildProcess => {
  const { DATABASE_URL: _, ...inherited } = process.env;
  return spawn('node', [join('dist', file), ...args], { env: { ...inherited, LOG_LEVEL: 'warn', ...env } });
};

/** Runs a compiled program to its end. */
export const run = async (file: string, env: Env, ...args: string[]): Promise<Ended> => {
  const child = start(file, args, env);
  const said = listen(child);
  const [code] = (await once(child, 'close')) as [number | null];
  return { code, ...said };
};

const listen = (child: ChildProcess) => {
  const said = { out: '', err: '' };
  child.stdout?.on('data', (text) => (said.out += text));
  child.stderr?.on('data', (text) => (said.err += text));
  return said;
};

/** Starts the workbook and waits until it prints where it is. */
export const startWorkbook = async (env: Env) => {
  const child = start('src/main.js', [], { PORT: String(await freePort()), ...env });
  const said = listen(child);
  const closed = once(child, 'close').then(([code, signal]) => ({ code, signal }));
  while (!/open at (\S+)/.test(said.out)) {
    if (child.exitCode !== null) throw new Error(said.err);
    await sleep(20);
  }
  const url = /open at (\S+)/.exec(said.out)?.[1] ?? '';
  return { child, url, said, closed };
};

export const freePort = async (): Promise<number> => {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as { port: number };
  probe.close();
  await once(probe, 'close');
  return port;
};
