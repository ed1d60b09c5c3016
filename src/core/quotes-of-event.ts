import type { Event, Served } from './facts/event.js';
import type { Basis, NumberedPaper, Offer, Payment, Quote } from './facts/quote.js';

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

/** The day each part of a total was paid up, in order; null where something of it is open. */
export const paidUpOn = (
  dues: readonly { amount: number; open: number }[],
  payments: readonly Payment[],
): (string | null)[] => {
  const inOrder = [...payments].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  let due = 0;
  return dues.map(({ amount, open }) => {
    due += amount;
    if (open > 0) return null;
    let paid = 0;
    let met: string | null = null;
    // Money that went back may open a part again: the day counts from which it stayed paid.
    for (const { date, amount: sum, back } of inOrder) {
      paid += back ? -sum : sum;
      met = paid >= due ? (met ?? date) : null;
    }
    return met;
  });
};

/** A fresh offer in the words of the last one: its menu while the dishes are the same, its dues while the day is. */
export const wordedAs = (fresh: Offer, last: Quote | undefined, event: Event): Offer => {
  if (!last) return fresh;
  const { title, client, place, terms, options, when, dues, finalCount } = last.offer;
  const same = last.basis ? recipesOf(last.basis.event) === recipesOf(event) : false;
  const kept = same ? options[0] : undefined;
  return {
    ...fresh,
    title,
    client,
    place,
    terms,
    ...(when === fresh.when ? { dues, finalCount } : {}),
    options: fresh.options.map((option, i) => (i === 0 && kept ? { ...option, menu: kept.menu } : option)),
  };
};

const recipesOf = ({ courses }: Pick<Event, 'courses'>): string =>
  courses.map(({ dishes }) => dishes.map(({ recipe }) => recipe).join()).join(';');

/** The credit that took an invoice back; undefined while none did. */
export const creditFor = (
  { kind, number }: Pick<NumberedPaper, 'kind' | 'number'>,
  papers: readonly NumberedPaper[],
): NumberedPaper | undefined =>
  kind === 'invoice' ? papers.find((one) => one.kind === 'credit' && one.of === number) : undefined;

/** The invoice among an event's papers that no credit has taken back. */
export const openInvoice = (papers: readonly NumberedPaper[]): NumberedPaper | undefined =>
  papers.find((paper) => paper.kind === 'invoice' && !creditFor(paper, papers));

/** What of a paper was open when it was issued, in minor units; below 0 when more was paid than it came to. */
export const restOf = ({ total, paid }: Pick<NumberedPaper, 'total' | 'paid'>): number => total - paid;
