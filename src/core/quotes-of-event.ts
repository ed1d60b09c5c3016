import type { Event, Served } from './facts/event.js';
import type { Basis, Payment, Quote } from './facts/quote.js';

/** The number the next quote of an event gets: one above the highest. */
export const nextNumber = (all: readonly { doc: Pick<Quote, 'number'> }[]): number =>
  Math.max(0, ...all.map(({ doc }) => doc.number)) + 1;

/** The accepted quote among those of an event; it holds until another is accepted. */
export const acceptedOf = <Q extends { doc: Quote }>(all: readonly Q[]): Q | undefined =>
  all.findLast(({ doc }) => doc.state === 'accepted');

/** Payments that count: those struck out as mistakes do not. */
export const counting = (payments: readonly Payment[]): Payment[] =>
  payments.filter(({ struck }) => struck === null);

/** What an issued quote keeps of its event: no guest, no note, and nothing that names a guest beside a dish. */
export const basisOf = ({ guests: _, served: __, ...event }: Event, served: Served): Basis => ({
  event: {
    ...event,
    note: '',
    courses: event.courses.map((course) => ({
      ...course,
      dishes: course.dishes.map((dish) => ({ ...dish, keptFor: [], keptApart: '' })),
    })),
  },
  served: withoutStrangers(served),
});

/** Without what is in no recipe and in no diet of the kitchen: it stood there because a guest does not eat it. */
const withoutStrangers = (served: Served): Served => {
  const named = new Set([
    ...served.recipes.flatMap(({ lines }) =>
      lines.flatMap(({ item }) => (item && 'ingredient' in item ? [item.ingredient] : [])),
    ),
    ...served.kitchen.diets.flatMap(({ avoidsIngredients }) => avoidsIngredients),
  ]);
  return { ...served, ingredients: served.ingredients.filter(({ key }) => named.has(key)) };
};

/** The event and the facts that an issued quote was worked out from, as one that computes from what was kept. */
export const eventAsQuoted = ({ event, served }: Basis): Event => ({ ...event, guests: [], served });
