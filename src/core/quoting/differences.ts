import { dayInWords } from '../calendar.js';
import type { Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import type { Quote } from '../facts/quote.js';
import { recipeOf } from '../lookup.js';
import { listed } from '../problems.js';
import { headCount } from '../requirements.js';
import { inWords } from './draft-offer.js';
import { owedIfOthers } from './owed.js';
import { optionTaken } from './papers.js';

/** What is no longer as it was quoted; `within` when the quote's own terms say what that costs. */
export type Difference = { words: string; within: boolean };

/** How an event is not what a quote was given for: its guests, groups, menu and day. */
export const differences = (
  quote: Quote,
  then: Event | undefined,
  event: Event,
  facts: Facts,
): Difference[] => {
  const found = [...ofGuests(quote, then, event), ...(then ? ofMenu(then, event, facts) : [])];
  if (event.date !== quote.offer.when)
    found.push(
      `the day is ${dayInWords(event.date)} now, ${dayInWords(quote.offer.when)} in quote ${quote.number}`,
    );
  const within = staysWithin(quote, event);
  return found.map((words, i) => ({ words, within: within && i === 0 }));
};

const ofGuests = ({ number, offer }: Quote, then: Event | undefined, event: Event): string[] => {
  const guests = headCount(event);
  if (guests !== offer.guests) return [`${guests} guests now, ${offer.guests} in quote ${number}`];
  if (!then || groupsOf(then) === groupsOf(event)) return [];
  return [`${groupsOf(event)} now, ${groupsOf(then)} in quote ${number}`];
};

/** Another number of guests than offered, at a price that its terms or tiers name. */
const staysWithin = (quote: Quote, event: Event): boolean => {
  const { offer } = quote;
  const guests = headCount(event);
  if (guests === offer.guests) return false;
  const { why } = owedIfOthers({ ...offer, finalCount: null }, optionTaken(quote), guests, offer.when);
  return why === 'same-price' || why === 'tier';
};

const groupsOf = ({ groups }: Event): string =>
  listed(groups.filter(({ guests }) => guests > 0).map(({ name, guests }) => `${guests} ${inWords(name)}`));

const ofMenu = (then: Event, event: Event, facts: Facts): string[] => {
  const [was, is] = [namesOn(then, factsOf(then, facts)), namesOn(event, factsOf(event, facts))];
  const added = [...is].filter(([key]) => !was.has(key)).map(([, name]) => name);
  const gone = [...was].filter(([key]) => !is.has(key)).map(([, name]) => name);
  return [
    ...(added.length ? [`${listed(added)} ${added.length > 1 ? 'are' : 'is'} new on the menu`] : []),
    ...(gone.length ? [`${listed(gone)} ${gone.length > 1 ? 'are' : 'is'} no longer on it`] : []),
  ];
};

const namesOn = ({ courses }: Event, facts: Facts): Map<string, string> =>
  new Map(
    courses.flatMap(({ dishes }) =>
      dishes.map(({ recipe }) => [recipe, recipeOf(recipe, facts).name] as const),
    ),
  );
