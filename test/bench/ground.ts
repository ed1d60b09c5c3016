import { fork } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import { type Server, startPostgres } from '../postgres.js';

export const engines = ['PostgreSQL', 'embedded'] as const;
export type Engine = (typeof engines)[number];

/** The workbook running on a kitchen with so many events, in a process of its own. */
export type Running = {
  address(path: string): string;
  memory(): Promise<{ now: number; most: number }>;
  /** What a request of this path asks of the database. */
  queries(path: string): Promise<string[]>;
  /** Saves something. */
  save(): Promise<void>;
  stop(): Promise<void>;
};

/** What the parts stand on: databases, filled when first asked for, and the workbook over them. */
export type Ground = { run(engine: Engine, events: number): Promise<Running>; close(): Promise<void> };

export const makeGround = (): Ground => {
  const folder = mkdtempSync(join(tmpdir(), 'workbook-bench-'));
  const filled = new Map<string, NodeJS.ProcessEnv>();
  let server: Promise<Server> | undefined;
  const fill = async (engine: Engine, events: number): Promise<NodeJS.ProcessEnv> => {
    const place: NodeJS.ProcessEnv = { DATA_DIR: join(folder, String(events)), EVENTS: String(events) };
    if (engine === 'PostgreSQL') {
      server ??= startPostgres();
      place.DATABASE_URL = await newDatabase((await server).url, `bench_${events}`);
    }
    const [code] = await once(start('fill.js', place), 'exit');
    if (code !== 0) throw new Error(`the kitchen could not be put into the ${engine} database`);
    return place;
  };
  return {
    run: async (engine, events) => {
      const name = `${engine} ${events}`;
      const place = filled.get(name) ?? (await fill(engine, events));
      filled.set(name, place);
      return running({ ...place, PORT: '0' });
    },
    close: async () => {
      await (await server)?.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

const start = (script: string, settings: NodeJS.ProcessEnv) =>
  fork(fileURLToPath(new URL(script, import.meta.url)), {
    // Only what the workbook's own settings say: not those of the terminal this runs in.
    env: { PATH: process.env.PATH, ...settings },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });

const running = async (settings: NodeJS.ProcessEnv): Promise<Running> => {
  const child = start('server.js', settings);
  const ended = once(child, 'exit');
  const early = ended.then(([code]) => Promise.reject(new Error(`the workbook ended with code ${code}`)));
  early.catch(() => {}); // when it is stopped it ends as it should
  const answer = async () => (await Promise.race([once(child, 'message'), early]))[0];
  const ask = (question: object) => {
    child.send(question);
    return answer();
  };
  const port = await answer();
  return {
    address: (path) => `http://127.0.0.1:${port}${path}`,
    memory: () => ask({ ask: 'memory' }),
    queries: (url) => ask({ ask: 'queries', url }),
    save: () => ask({ ask: 'save' }),
    stop: async () => {
      child.kill('SIGTERM');
      await ended;
    },
  };
};

const newDatabase = async (url: string, name: string): Promise<string> => {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(`create database ${name}`);
  await client.end();
  const of = new URL(url);
  of.pathname = `/${name}`;
  return of.href;
};
