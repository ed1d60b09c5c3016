import { addDays } from '../calendar.js';
import type { Course, Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Offer, Option, PriceLine } from '../facts/quote.js';
import { recipeOf } from '../lookup.js';
import { headCount } from '../requirements.js';
import type { SoldRow } from '../selling/rows.js';
import type { Selling } from '../selling/selling.js';
import { duesFrom } from './dues.js';

/**
 * A first offer of an event, for the cook to put into the client's words: the menu by its recipes' names, a line for
 * each group at its price, the kitchen's usual terms with their days. Open from `today`, never past the event's day.
 */
export const draftOffer = (event: Event, facts: Facts, selling: Selling, today: string): Offer => {
  const { kitchen } = facts;
  const terms = { ...kitchen.terms, allergies: kitchen.terms.allergies || caution };
  const place = facts.places.get(event.place);
  const until = addDays(today, terms.validDays);
  return {
    title: event.name,
    client: event.client,
    when: event.date,
    place: place && place.kind !== 'home' ? place.name : '',
    serve: servedAt(event),
    guests: headCount(event),
    options: [optionOf(event, facts, selling)],
    terms,
    dues: duesFrom(terms, event.date),
    validUntil: today <= event.date && event.date < until ? event.date : until,
    finalCount: terms.finalCountDays === null ? null : addDays(event.date, -terms.finalCountDays),
    tax: kitchen.tax,
    currency: kitchen.currency,
    from: kitchen.name,
  };
};

/** What a client is told of allergies where the kitchen says nothing else. */
export const caution =
  'Please tell us of every allergy and diet, even a mild one, before the final number is given. We repeat what labels ' +
  'say and do not test food. Everything is made in one kitchen where allergens are handled, so traces in any dish are ' +
  'possible. Ask us about any dish, and take qualified advice where an allergy is serious.';

/** The menu of an event at the price it is sold at. */
export const optionOf = (event: Event, facts: Facts, selling: Selling): Option => ({
  key: 'menu',
  name: '',
  menu: event.courses.filter(({ dishes }) => dishes.length > 0).map((course) => courseOf(course, facts)),
  lines: linesOf(selling.rows),
  minimum: selling.rows.length > 0 ? event.price.minimum : null,
  discount: selling.rows.length > 0 ? event.price.discount : null,
  discountFor: event.price.discountFor,
  tiers: [],
});

const courseOf = ({ name, dishes }: Course, facts: Facts): Option['menu'][number] => ({
  course: name,
  dishes: [...new Set(dishes.map(({ recipe }) => recipeOf(recipe, facts).name))],
});

/** What is shared out of a total that does not divide is a sum for them together, before those with own prices. */
const linesOf = (rows: readonly SoldRow[]): PriceLine[] => {
  const shared = rows.filter(({ each }) => each === undefined);
  const together = shared.reduce((all, { amount }) => all + amount, 0);
  const heads = shared.reduce((all, { guests }) => all + guests, 0);
  const named = rows.flatMap(({ group, guests, each }) =>
    each === undefined
      ? []
      : [{ words: rows.length > 1 ? inWords(group.name) : 'guests', count: guests, each }],
  );
  return together ? [{ words: `for ${heads} guests together`, count: 1, each: together }, ...named] : named;
};

/** A group's name as it stands after a number: "Children to 12" is "children to 12", "VIPs" stays. */
export const inWords = (name: string): string =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

const servedAt = ({ courses }: Event): string => {
  const [first] = courses
    .filter(({ dishes }) => dishes.length > 0)
    .sort((a, b) => Number(a.dayAfter) - Number(b.dayAfter) || (a.time < b.time ? -1 : 1));
  return first ? `served at ${first.time}` : '';
};
