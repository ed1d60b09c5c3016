import type { FastifyReply, FastifyRequest } from 'fastify';
import { accountNamed } from '../../store/accounts.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { type Answerer, query } from '../house.js';
import { fragment, page, wantsPart } from '../page.js';
import { goTo } from '../save.js';
import { fits } from './passphrase.js';

export const askToSignIn: Answerer = (request, reply) =>
  request.account ? reply.redirect('/', 303) : draw(reply, { to: query(request, 'to') });

/** Signs in by name and passphrase; which of the two was wrong is not said. */
export const signIn: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const account = await accountNamed(request.server.house.db, text(form, 'name'));
  if (!(await fits(text(form, 'passphrase'), account?.hash)) || !account)
    return draw(reply.code(422), form, [
      { field: 'passphrase', label: 'Passphrase', sentence: 'Name and passphrase do not belong together.' },
    ]);
  await enter(request, account);
  if (wantsPart(reply)) return fragment(reply, 'account/_signed-in', { name: account.name });
  return goTo(reply, ownAddress(text(form, 'to')));
};

export const signOut: Answerer = async (request, reply) => {
  await request.session.destroy();
  return reply.redirect('/account/sign-in', 303);
};

/** Begins a session of its own for an account, so that one known before is worth nothing. */
export const enter = async (
  request: FastifyRequest,
  { id, key, name }: { id: number; key: string; name: string },
): Promise<void> => {
  await request.session.regenerate();
  request.session.set('account', { id, key, name });
};

/** An address of this workbook; any other leads to the week. */
const ownAddress = (to: string): string => (/^\/(?![/\\])[^\s\\]*$/.test(to) ? to : '/');

const draw = (reply: FastifyReply, form: Form, faults: readonly Fault[] = []) => {
  if (wantsPart(reply)) reply.header('hx-retarget', '#notice').header('hx-reswap', 'innerHTML');
  const shown = { name: text(form, 'name'), to: text(form, 'to') };
  return page(reply, 'account/sign-in', { title: 'Sign in', form: shown, faults }, 'account/_sign-in');
};
