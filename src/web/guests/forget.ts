import type { FastifyReply } from 'fastify';
import { dietName } from '../../core/diets.js';
import { forget } from '../../store/forget.js';
import { type KeptGuest, keptOfGuests } from '../../store/kept-guests.js';
import { todayOf } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf, type OneEvent } from '../events/event.js';
import type { Fault } from '../fields.js';
import { type Form, texts } from '../form.js';
import { type Format, formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { page } from '../page.js';
import { goTo, saving } from '../save.js';

export type ForgetPage = {
  head: EventHead;
  address: ReturnType<typeof addressesOf>;
  guests: { key: string; who: string; said: string; where: string }[];
  /** true while the party is still to come. */
  needed: boolean;
  /** Backups that cannot be read, by the name of their file. */
  unreadable: string[];
};

/** What is kept of what the guests of an event eat, and where; all of it would go. */
export const askToForget: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  return draw(reply, one);
};

/** Forgets what the guests chosen eat, everywhere it is kept. */
export const forgetDiets: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const { key } = one.event;
  const form = request.body as Form;
  const guests = texts(form, 'guests');
  if (guests.length === 0) {
    const sentence = 'Tick the guests whose diets are to be forgotten.';
    return draw(reply.code(422), one, form, [{ field: 'guests', label: 'Guests', sentence }]);
  }
  const { db, config } = request.server.house;
  const names = texts(form, 'names').includes('on');
  const { dataDir } = config;
  const done = await forget(db, key, { guests, names, dataDir, ...saving(reply) });
  request.log.info(done, 'diets of guests forgotten');
  const { diets } = addressesOf(key);
  return goTo(
    reply,
    `${diets}?forgot=${done.guests}&saves=${done.saves}&files=${done.backups}${done.swept ? '' : '&lingers'}`,
  );
};

/** The sentence after it was done; nothing on any other way to the page. */
export const forgotten = (request: FastifyReply['request'], f: Format): string => {
  const [guests, saves, files] = ['forgot', 'saves', 'files'].map((name) => query(request, name));
  if (![guests, saves, files].every((figure) => /^\d{1,6}$/.test(figure ?? ''))) return '';
  const lingers = 'lingers' in (request.query as object);
  return `What ${f.count(Number(guests), 'guest eats', 'guests eat')} is forgotten, also in ${f.count(Number(saves), 'save')} of the history and ${f.count(Number(files), 'backup')}.${lingers ? ' The database could not be swept just now, so its files may hold the words for some time yet.' : ''}`;
};

const draw = async (reply: FastifyReply, one: OneEvent, form?: Form, faults: readonly Fault[] = []) => {
  const { event } = one;
  const { db, config } = reply.request.server.house;
  const { guests, unreadable } = await keptOfGuests(db, config.dataDir, event.key);
  const f = formatFor(reply.request.kitchen);
  // What was served stands with the diets its kitchen had then.
  const kitchen = event.served?.kitchen ?? reply.request.kitchen;
  return page(reply, 'guests/forget', {
    title: `Forget diets, ${event.name}`,
    nav: 'Events',
    form: form ?? { guests: guests.map(({ key }) => key) },
    faults,
    head: await headOf(reply.request, one),
    address: addressesOf(event.key),
    guests: guests.map((guest) => ({
      key: guest.key,
      who: guest.name || f.count(guest.count, 'guest'),
      said: [
        ...guest.diets.map((id) => dietName(id, kitchen)),
        guest.other,
        guest.avoids > 0 && `${f.count(guest.avoids, 'ingredient')} they do not eat`,
      ]
        .filter(Boolean)
        .join(', '),
      where: whereOf(guest, f),
    })),
    needed: !['done', 'cancelled'].includes(event.state) && event.date >= todayOf(reply.request),
    unreadable,
  });
};

const whereOf = ({ listed, saves, backups, diets, other, avoids }: KeptGuest, f: Format): string => {
  const now = listed && (diets.length + avoids > 0 || other !== '') && 'in the list of this event';
  const places = [
    now,
    saves > 0 && `in ${f.count(saves, 'save')} of the history`,
    backups > 0 && `in ${f.count(backups, 'backup')}`,
  ];
  const said = places.filter((one) => typeof one === 'string').join(', ');
  return `${listed ? '' : 'no longer listed; '}${said || 'nothing is kept of them'}`;
};
