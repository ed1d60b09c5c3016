import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Config } from '../config.js';
import { type EntityName, entities } from '../core/facts/facts.js';
import type { Kitchen } from '../core/facts/kitchen.js';
import type { EngineName } from '../store/database.js';
import type { Db } from '../store/schema.js';
import type { Clock } from './clock.js';
import { Refused } from './guards.js';

/** What every page may ask for: the database, the time, the settings, the address of the assets. */
export type House = {
  db: Db;
  engine: EngineName;
  clock: Clock;
  config: Config;
  assets: string;
  /** The one-time code that makes the first account. */
  firstCode: string;
};

export type Answerer = (request: FastifyRequest, reply: FastifyReply) => Promise<unknown> | unknown;

declare module 'fastify' {
  interface FastifyInstance {
    house: House;
  }
  interface FastifyRequest {
    /** The kitchen whose pages these are; asking for it before one is set up is our own mistake. */
    kitchen: Kitchen;
    account: { key: string; name: string } | null;
  }
  interface FastifyContextConfig {
    /** true when the page needs neither sign-in nor a kitchen. */
    open?: boolean;
    /** true when the page needs no kitchen, as first run. */
    bare?: boolean;
  }
}

/** Who made a change, for the history. */
export const who = (request: FastifyRequest): string => request.account?.name ?? 'the owner';

export const param = (request: FastifyRequest, name: string): string =>
  (request.params as Record<string, string>)[name] ?? '';

/** The kind of thing an address names; another is not found. */
export const entityParam = (request: FastifyRequest): EntityName => {
  const name = param(request, 'entity');
  if (!Object.hasOwn(entities, name)) throw new Refused('There is nothing of this kind here.', 404);
  return name as EntityName;
};

export const query = (request: FastifyRequest, name: string): string => {
  const value = (request.query as Record<string, unknown>)[name];
  return typeof value === 'string' ? value : '';
};
