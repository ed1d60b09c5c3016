import { guestNamed } from '../../core/coverage.js';
import type { Dish, Event, Service } from '../../core/facts/event.js';
import type { Facts } from '../../core/facts/facts.js';
import { isChoosy } from '../../core/portions.js';
import type { Reading } from '../faults.js';
import type { Choice } from '../fields.js';
import { type Form, text, texts } from '../form.js';

/** How a dish reaches its guests, as its row shows it. */
export const servedRow = ({ service, keptApart, keptFor }: Dish): Form => ({
  service: service ?? '',
  keptApart,
  keptFor,
});

type Served = Pick<Dish, 'service' | 'keptApart' | 'keptFor'>;

/** "No", "not yet", "?", "yes": words that do not say how, which would all the same make a dish count for an allergy. */
const saysNothing =
  /^(?:\W+|(?:no|none|nope|nothing|never|not(?: yet| known| sure| needed| possible| kept apart)?|n\/?a|yes|tbc|tbd|to be .*|unknown|don['’]?t know|ask\b.*|later|maybe|perhaps)\W*)$/i;

/** How a dish reaches its guests, as its row says; a row that does not ask leaves it as it stood. */
export const readServed = (reading: Reading, row: Form, at: string, before: Dish | undefined): Served => {
  if (row.keptApart === undefined) {
    const { service = null, keptApart = '', keptFor = [] } = before ?? {};
    return { service, keptApart, keptFor };
  }
  const service = (['plated', 'shared'] as const).find((one) => one === text(row, 'service')) ?? null;
  const keptApart = text(row, 'keptApart').trim();
  if (keptApart.length > 200)
    reading.refuse(
      `${at}.keptApart`,
      'Kept apart',
      'Say in 200 letters or fewer how portions are kept apart.',
    );
  if (saysNothing.test(keptApart))
    reading.refuse(
      `${at}.keptApart`,
      'Kept apart',
      'Say how portions are kept apart, such as a covered tray of their own. Leave it empty while they are not.',
    );
  return { service, keptApart: keptApart.slice(0, 200), keptFor: texts(row, 'keptFor') };
};

/** A course's own way; one that the form does not ask about stays. */
export const readService = (row: Form, before: Service | undefined): Service =>
  row.service === undefined ? (before ?? 'plated') : text(row, 'service') === 'shared' ? 'shared' : 'plated';

export const courseWays: Choice[] = [
  { value: 'plated', label: 'plated for each' },
  { value: 'shared', label: 'guests help themselves' },
];

export const dishWays: Choice[] = [{ value: '', label: 'as the course' }, ...courseWays];

/** Guests for whom portions may be kept: those who said something of what they do not eat. */
export const keepers = ({ guests }: Event, facts: Facts): Choice[] =>
  guests.filter(isChoosy).map((guest) => ({ value: guest.key, label: guestNamed(guest, facts) }));

/** What a dish's row says of how it is served, in a few words. */
export const servedWords = (row: Form, choices: readonly Choice[]): string => {
  const way = dishWays.find(({ value }) => value !== '' && value === text(row, 'service'))?.label;
  const kept = texts(row, 'keptFor').flatMap(
    (key) => choices.find(({ value }) => value === key)?.label ?? [],
  );
  return [
    way ?? 'as the course',
    text(row, 'keptApart').trim() && 'kept apart',
    kept.length > 0 && `kept for ${kept.join(', ')}`,
    text(row, 'price').trim() && `sold by itself at ${text(row, 'price').trim()}`,
  ]
    .filter(Boolean)
    .join(', ');
};
