import type { FastifyRequest } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import { guestChange, withGuests } from '../../core/guest-change.js';
import { readWhole } from '../../core/reading.js';
import { headCount } from '../../core/requirements.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, rows, text } from '../form.js';
import { formatFor } from '../format.js';
import { quoteNeed } from '../quotes/need.js';
import { addressesOf } from './addresses.js';
import { type Clashes, clashes, clashesAfter } from './clashes.js';
import { type EventHead, headOf, type OneEvent } from './event.js';
import { type GuestPreview, guestPreview } from './guest-preview.js';

type GuestGroup = { name: string; label: string; held: number };
export type GuestPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  held: number;
  groups: GuestGroup[];
  preview: GuestPreview | undefined;
  /** That another quote would be needed; empty where none is. */
  quote: string;
  clashes: Clashes;
};

const most = 100_000;

/** The numbers typed, by group; the groups are those of the event. */
export const readGuests = (form: Form, event: Event): { guests: Map<string, number>; faults: Fault[] } => {
  const reading = new Reading(form);
  const guests = new Map<string, number>();
  const read = (typed: string) => readWhole(typed, 'the number of guests', 0, most);
  for (const [i, row] of rows(form, 'groups').entries()) {
    const group = event.groups.find(({ key }) => key === text(row, 'key'));
    if (!group) continue;
    guests.set(
      group.key,
      reading.take(`groups[${i}].guests`, labelOf(event, group.name), read, group.guests),
    );
  }
  const nobody = headCount(withGuests(event, guests)) === 0;
  if (nobody && reading.faults.length === 0)
    reading.refuse(
      'groups[0].guests',
      'Guests',
      'A party has at least one guest. One that is called off can be marked cancelled under Change details.',
    );
  return { guests, faults: reading.faults };
};

const labelOf = ({ groups }: Event, name: string): string => (groups.length === 1 ? 'New guest count' : name);

/** The page of another number of guests: what was typed, what it would change, what it would clash with. */
export const guestPage = async (
  request: FastifyRequest,
  one: OneEvent,
  form: Form,
  faults: readonly Fault[],
): Promise<GuestPage> => {
  const { event, facts } = one;
  const { guests } = readGuests(form, event);
  const change = guestChange(event, guests, facts);
  const preview = faults.length > 0 ? undefined : guestPreview(change);
  const same = !preview || preview.rows.length === 0;
  const now = formatFor(request.kitchen).number(preview?.now ?? 0);
  const changed = { ...one, event: withGuests(event, guests) };
  return {
    head: await headOf(request, one),
    at: addressesOf(event.key),
    quote: preview ? ((await quoteNeed(request, changed))?.sentence ?? '') : '',
    held: headCount(event),
    groups: rows(form, 'groups').flatMap((row, i) => {
      const group = event.groups.find(({ key }) => key === text(row, 'key'));
      return group ? [{ name: `groups[${i}]`, label: labelOf(event, group.name), held: group.guests }] : [];
    }),
    preview,
    clashes: same
      ? clashes(change.problems.map(({ problem }) => problem))
      : clashesAfter(`Clashes at ${now}`, change),
  };
};
