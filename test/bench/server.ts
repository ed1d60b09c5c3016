import { sql } from 'kysely';
import pg from 'pg';
import { buildApp } from '../../src/app.js';
import { readConfig } from '../../src/config.js';
import { openDatabase } from '../../src/store/database.js';
import { now } from './kitchen/days.js';
import { serveFacts } from './measured.js';

// Run by itself as the workbook runs, on a fixed day; besides its pages it answers the facts of some as bare JSON.
const config = readConfig(process.env);
const database = await openDatabase(config);
const app = await buildApp({ db: database.db, engine: database.engine, clock: () => now, config });
serveFacts(app);
await app.listen({ host: config.host, port: config.port });

const megabytes = (bytes: number): number => bytes / 1024 / 1024;

const memory = () => ({
  now: megabytes(process.memoryUsage.rss()),
  most: megabytes(process.resourceUsage().maxRSS * 1024),
});

/** What one request asks of the database, in order. */
const queries = async (url: string): Promise<string[]> => {
  const asked: string[] = [];
  const { query } = pg.Client.prototype;
  pg.Client.prototype.query = function (this: pg.Client, ...args: unknown[]) {
    asked.push(JSON.stringify(args.filter((one) => typeof one !== 'function')));
    return (query as (...all: unknown[]) => unknown).apply(this, args);
  } as typeof query;
  const answer = await app.inject({ url, headers: { host: 'localhost', accept: 'text/html' } });
  pg.Client.prototype.query = query;
  if (answer.statusCode !== 200) throw new Error(`${url} answered ${answer.statusCode}`);
  return asked;
};

/** Writes something, so that what was kept of the database is to be asked again. */
const save = async (): Promise<boolean> => {
  await sql`select pg_current_xact_id()`.execute(database.db);
  return true;
};

const answers = { memory, queries, save };

process.on('message', async ({ ask, url }: { ask: keyof typeof answers; url: string }) => {
  process.send!(await answers[ask](url));
});
process.once('SIGTERM', async () => {
  await app.close();
  await database.close();
  process.exit(0);
});
process.once('disconnect', () => process.exit(1));
process.send!((app.server.address() as { port: number }).port);
