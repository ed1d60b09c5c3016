import { randomBytes } from 'node:crypto';
import cookie from '@fastify/cookie';
import session, { type SessionStore } from '@fastify/session';
import type { FastifyInstance, Session } from 'fastify';
import { endSession, keepSession, loadSession } from '../store/sessions.js';
import type { House } from './house.js';

declare module 'fastify' {
  interface Session {
    account?: { id: number; key: string; name: string };
  }
}

const month = 30 * 24 * 60 * 60 * 1000;

/** The cookie holds 32 random bytes and the table their hash: a signature would prove nothing more. */
const unsigned = {
  sign: (value: string) => value,
  unsign: (value: string) => ({ valid: /^[\w-]{43}$/.test(value), renew: false, value }),
};

const storeIn = ({ db, clock }: Pick<House, 'db' | 'clock'>): SessionStore => ({
  get: (id, done) => {
    loadSession(db, id, clock()).then(
      (found) => done(null, (found as Session | undefined) ?? null),
      (error) => done(error),
    );
  },
  set: (id, kept, done) => {
    keepSession(db, id, {
      session: { cookie: kept.cookie, account: kept.account },
      accountId: kept.account?.id ?? null,
      expires: kept.cookie.expires ?? new Date(clock().getTime() + month),
    }).then(
      () => done(),
      (error) => done(error),
    );
  },
  destroy: (id, done) => {
    endSession(db, id, clock()).then(
      () => done(),
      (error) => done(error),
    );
  },
});

/** Sessions last a month from signing in; a page seen does not lengthen them. */
export const useSessions = async (app: FastifyInstance, house: Pick<House, 'db' | 'clock'>) => {
  await app.register(cookie);
  await app.register(session, {
    secret: unsigned,
    store: storeIn(house),
    cookieName: 'workbook',
    idGenerator: () => randomBytes(32).toString('base64url'),
    saveUninitialized: false,
    rolling: false,
    cookie: { httpOnly: true, secure: 'auto', sameSite: 'lax', path: '/', maxAge: month },
  });
};
