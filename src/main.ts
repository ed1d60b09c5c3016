import type { FastifyInstance } from 'fastify';
import { buildApp } from './app.js';
import { type Config, readConfig } from './config.js';
import { checkPort, portRefusal } from './port.js';
import { anyAccount } from './store/accounts.js';
import { type Database, openDatabase } from './store/database.js';
import { forgetDrafts } from './store/drafts.js';
import { forgetOld } from './store/forget-old.js';
import { forgetBefore } from './store/history.js';
import { forgetWithdrawn } from './store/quotes.js';
import { Refusal } from './store/refusal.js';

const minute = 60_000;
const historyDays = 90;

const start = async (): Promise<void> => {
  const config = readConfig(process.env);
  await checkPort(config);
  const database = await openDatabase(config);
  try {
    const { db, engine } = database;
    const app = await buildApp({ db, engine, clock: () => new Date(), config });
    await listen(app, config);
    endOnSignal(app, database);
    await greet(app, config, database);
    tend(app, database, config);
  } catch (error) {
    await database.close();
    throw error;
  }
};

const listen = async (app: FastifyInstance, { host, port }: Config): Promise<void> => {
  try {
    await app.listen({ host, port, listenTextResolver: (address) => `listening at ${address}` });
  } catch (error) {
    throw portRefusal(error, host, port);
  }
};

const greet = async (app: FastifyInstance, config: Config, { db }: Database): Promise<void> => {
  const { port } = app.server.address() as { port: number };
  const host = config.host.includes(':') ? `[${config.host}]` : config.host;
  console.log(`The workbook is open at http://${host}:${port}/`);
  if (!config.loopback && !(await anyAccount(db)))
    console.log(`Others can reach it, so make the owner's account first; the code is ${app.house.firstCode}`);
};

/** Ends requests under way, then the database, then the program. */
const endOnSignal = (app: FastifyInstance, database: Database): void => {
  const end = async () => {
    try {
      await app.close();
      await database.close();
      process.exit(0);
    } catch (error) {
      fail(error);
    }
  };
  process.once('SIGTERM', end);
  process.once('SIGINT', end);
};

/**
 * From time to time: old history goes, and the embedded engine gets what it needs. At the start and once a day: what
 * guests ate longer ago than the kitchen keeps it.
 */
const tend = (app: FastifyInstance, { db, upkeep }: Database, { dataDir }: Config): void => {
  let day = '';
  const daily = async () => {
    const at = new Date();
    if (at.toDateString() === day) return;
    const forgotten = await forgetOld(db, { at, dataDir });
    day = at.toDateString();
    if (forgotten.events > 0) app.log.info(forgotten, 'diets of past events forgotten');
  };
  const often = async () => {
    const moment = new Date(Date.now() - historyDays * 24 * 60 * minute);
    await forgetBefore(db, moment);
    await forgetDrafts(db, moment);
    await forgetWithdrawn(db, moment);
    await daily();
    await upkeep();
  };
  const noting = (work: () => Promise<void>) => () =>
    work().catch((error) => app.log.error({ err: error }, 'upkeep failed'));
  void noting(daily)();
  setInterval(noting(often), 10 * minute).unref();
};

const fail = (error: unknown): never => {
  console.error(error instanceof Refusal ? error.message : error);
  process.exit(1);
};

start().catch(fail);
