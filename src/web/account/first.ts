import { timingSafeEqual } from 'node:crypto';
import type { FastifyReply } from 'fastify';
import { anyAccount, makeFirstAccount } from '../../store/accounts.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { hashOf, tooWeak } from './passphrase.js';
import { enter } from './sign-in.js';

/** Asks for the first account; once there is one, only signing in is left. */
export const askForFirst: Answerer = async (request, reply) =>
  (await anyAccount(request.server.house.db)) ? reply.redirect('/account/sign-in', 303) : draw(reply, {});

export const makeFirst: Answerer = async (request, reply) => {
  const { db, clock, config, firstCode } = request.server.house;
  if (await anyAccount(db)) return reply.redirect('/account/sign-in', 303);
  const form = request.body as Form;
  const reading = new Reading(form);
  const name = reading.words('name', 'Name', 'Enter the name that stands beside what you change.');
  if (name.length > 80) reading.refuse('name', 'Name', 'Enter a name of at most 80 letters.');
  const passphrase = text(form, 'passphrase');
  const weak = tooWeak(passphrase);
  if (weak) reading.refuse('passphrase', 'Passphrase', weak);
  if (!config.loopback && !sameCode(reading.text('code'), firstCode))
    reading.refuse('code', 'Code', 'Enter the code that the workbook printed when it started.');
  if (reading.faults.length > 0) return draw(reply.code(422), form, reading.faults);
  const account = await makeFirstAccount(db, { name, hash: await hashOf(passphrase), at: clock() });
  if (!account) return reply.redirect('/account/sign-in', 303);
  await enter(request, account);
  return reply.redirect('/', 303);
};

const sameCode = (typed: string, code: string): boolean => {
  const [a, b] = [typed, code].map((one) => Buffer.from(one.toUpperCase().replace(/[^A-Z0-9]/g, '')));
  return a!.length === b!.length && timingSafeEqual(a!, b!);
};

const draw = (reply: FastifyReply, form: Form, faults: readonly Fault[] = []) =>
  page(reply, 'account/first', {
    title: 'The first account',
    form: { name: text(form, 'name'), code: text(form, 'code') },
    faults,
    code: !reply.request.server.house.config.loopback,
  });
