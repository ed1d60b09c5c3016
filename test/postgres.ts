import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';

export type Server = { url: string; stop(): Promise<void> };

/** Starts a PostgreSQL of its own on a free port, its data in a temporary folder; installs it first where missing. */
export const startPostgres = async (): Promise<Server> => {
  const programs = findPrograms() ?? install();
  const account = unprivileged();
  const folder = mkdtempSync(join(tmpdir(), 'workbook-postgres-'));
  if (account) chownSync(folder, account.uid, account.gid);
  const data = join(folder, 'data');
  const as = { ...account, cwd: folder };
  execFileSync(
    join(programs, 'initdb'),
    ['-D', data, '-U', 'workbook', '-A', 'trust', '-E', 'UTF8', '-N'],
    as,
  );
  const port = await freePort();
  const settings = ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off', 'max_connections=200'];
  const server = spawn(
    join(programs, 'postgres'),
    [
      '-D',
      data,
      '-h',
      '127.0.0.1',
      '-p',
      String(port),
      '-k',
      folder,
      ...settings.flatMap((one) => ['-c', one]),
    ],
    { ...as, stdio: 'ignore' },
  );
  const url = `postgresql://workbook@127.0.0.1:${port}/postgres`;
  const stop = async () => {
    if (server.exitCode === null) {
      server.kill('SIGINT');
      await once(server, 'exit');
    }
    rmSync(folder, { recursive: true, force: true });
  };
  await answering(url, () => server.exitCode !== null).catch(async (error) => {
    await stop();
    throw error;
  });
  return { url, stop };
};

const findPrograms = (): string | undefined => {
  const root = '/usr/lib/postgresql';
  const versions = existsSync(root) ? readdirSync(root) : [];
  const debian = versions
    .filter((version) => Number(version) >= 15)
    .sort((a, b) => Number(b) - Number(a))
    .map((version) => join(root, version, 'bin'));
  const path = (process.env.PATH ?? '').split(':');
  return [...debian, ...path].find((folder) =>
    ['initdb', 'postgres'].every((one) => existsSync(join(folder, one))),
  );
};

const install = (): string => {
  const quiet = { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } } as const;
  execFileSync('apt-get', ['update'], quiet);
  execFileSync('apt-get', ['install', '-y', '--no-install-recommends', 'postgresql'], quiet);
  const programs = findPrograms();
  if (!programs)
    throw new Error('PostgreSQL 15 or newer is needed for these tests and could not be installed');
  return programs;
};

/** PostgreSQL does not run as root, so root hands it to the account of its package, or to nobody. */
const unprivileged = (): { uid: number; gid: number } | undefined => {
  if (process.getuid?.() !== 0) return undefined;
  for (const name of ['postgres', 'nobody'])
    try {
      const number = (of: string) =>
        Number(execFileSync('id', [of, name], { stdio: ['ignore', 'pipe', 'ignore'] }));
      return { uid: number('-u'), gid: number('-g') };
    } catch {
      // there is no such account: try the next
    }
  throw new Error('no account to run PostgreSQL with');
};

const freePort = async (): Promise<number> => {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as { port: number };
  probe.close();
  await once(probe, 'close');
  return port;
};

const answering = async (url: string, ended: () => boolean): Promise<void> => {
  for (let tries = 0; tries < 150 && !ended(); tries += 1) {
    const client = new pg.Client({ connectionString: url });
    try {
      await client.connect();
      await client.end();
      return;
    } catch {
      await sleep(100);
    }
  }
  throw new Error('the PostgreSQL server for the tests did not start');
};
