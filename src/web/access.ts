import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { anyAccount } from '../store/accounts.js';
import { read } from '../store/documents.js';
import { newKitchen } from './first-run/new-kitchen.js';
import type { House } from './house.js';
import { fragment, page, wantsPart } from './page.js';

/**
 * Before every page: who is there, and which kitchen. On loopback nobody is asked until somebody has an account;
 * elsewhere everybody is, from the first page on.
 */
export const useAccess = (app: FastifyInstance, { db, config }: Pick<House, 'db' | 'config'>): void => {
  let accounts = false;
  app.decorateRequest('kitchen', { getter: () => newKitchen });
  app.decorateRequest('account', null);
  app.addHook('preHandler', async (request, reply) => {
    const { open, bare } = request.routeOptions.config;
    request.body ??= {};
    if (open) return;
    const [stored, any] = await Promise.all([read(db, 'kitchen', 'kitchen'), accounts || anyAccount(db)]);
    accounts = any;
    if (stored) Object.defineProperty(request, 'kitchen', { value: stored.doc, configurable: true });
    request.account = request.session.account ?? null;
    const asked = accounts || !config.loopback;
    if (asked && !request.account && !isDoor(request)) return askToSignIn(request, reply, accounts);
    if (!stored && !bare && !request.is404) return reply.redirect('/first-run', 303);
  });
};

const isDoor = ({ routeOptions }: FastifyRequest): boolean =>
  routeOptions.url?.startsWith('/account/') === true && routeOptions.url !== '/account/sign-out';

const askToSignIn = (request: FastifyRequest, reply: FastifyReply, accounts: boolean) => {
  if (!accounts) return reply.redirect('/account/first', 303);
  const to = request.method === 'GET' ? request.url : '/';
  if (wantsPart(reply)) {
    reply.code(401).header('hx-retarget', '#notice').header('hx-reswap', 'innerHTML');
    return fragment(reply, 'account/_sign-in', { form: {} });
  }
  if (request.method === 'GET') return reply.redirect(`/account/sign-in?to=${encodeURIComponent(to)}`, 303);
  return page(reply.code(401), 'account/sign-in', { title: 'Sign in', form: { to: '/' } });
};
