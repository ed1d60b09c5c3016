import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import request, { type Test } from 'supertest';
import { buildApp } from '../../src/app.js';
import { type Config, readConfig } from '../../src/config.js';
import type { Workbook } from '../../src/core/facts/facts.js';
import { importWorkbook } from '../../src/store/workbook.js';
import { type TestDatabase, testDatabase } from '../database.js';

/** The workbook as a server on a database of its own, as one of its own pages talks to it. */
export type Agent = {
  app: FastifyInstance;
  db: TestDatabase['db'];
  get(url: string): Test;
  /** Posts a form; several values of one name as a list. */
  post(url: string, form?: Record<string, string | string[]>): Test;
  /** Posts one file. */
  upload(url: string, file: { name: string; filename: string; text: string }): Test;
  close(): Promise<void>;
};

export const now = new Date('2026-10-14T09:20:00Z');

export const agentOn = async (kitchen?: Workbook, config: Partial<Config> = {}): Promise<Agent> => {
  const { db, engine, close } = await testDatabase();
  const dataDir = mkdtempSync(join(tmpdir(), 'workbook-'));
  if (kitchen) await importWorkbook(db, kitchen, { who: 'test', at: now, dataDir });
  const app = await buildApp({
    db,
    engine,
    clock: () => now,
    config: { ...readConfig({ LOG_LEVEL: 'silent', DATA_DIR: dataDir }), ...config },
  });
  await app.ready();
  const own = (test: Test) => test.set('host', 'localhost').set('accept', 'text/html');
  return {
    app,
    db,
    get: (url) => own(request(app.server).get(url)),
    post: (url, form = {}) =>
      own(request(app.server).post(url)).type('form').set('origin', 'http://localhost').send(bodyOf(form)),
    upload: (url, { name, filename, text }) =>
      own(request(app.server).post(url))
        .set('origin', 'http://localhost')
        .attach(name, Buffer.from(text), { filename, contentType: 'application/json' }),
    close: async () => {
      await app.close();
      await close();
      rmSync(dataDir, { recursive: true, force: true });
    },
  };
};

const bodyOf = (form: Record<string, string | string[]>): string =>
  new URLSearchParams(
    Object.entries(form).flatMap(([name, value]) =>
      [value].flat().map((one): [string, string] => [name, one]),
    ),
  ).toString();
