import { addDays, daysBetween } from '../calendar.js';
import type { Cancellation } from '../facts/price.js';
import type { Offer, Option } from '../facts/quote.js';
import { toMinor } from '../money.js';
import { exact } from '../quantity/amount.js';
import { Rational } from '../quantity/rational.js';
import { offerComes, tierAt } from './offer-comes.js';

/** What the terms say is owed when a party is called off on a day; `owed` is undefined where they say nothing. */
export type OwedIfCancelled = {
  daysBefore: number;
  /** The step of the terms that holds; undefined before the first of them, when nothing is owed yet. */
  step: Cancellation | undefined;
  owed: number | undefined;
  /** The next step, and the first day it holds; undefined when none comes. */
  next: { step: Cancellation; from: string } | undefined;
};

/** What is owed of a total when a party is called off on a day, by the offer's own terms; halves of a unit go up. */
export const owedIfCancelled = (offer: Offer, total: number, day: string): OwedIfCancelled => {
  const daysBefore = daysBetween(day, offer.when);
  const steps = [...offer.terms.cancellation].sort(
    (a, b) => b.days - a.days || exact(a.percent).compare(exact(b.percent)),
  );
  const step = steps.filter(({ days }) => daysBefore <= days).at(-1);
  const next = steps.find(({ days }) => days < daysBefore);
  return {
    daysBefore,
    step,
    owed: steps.length === 0 ? undefined : step ? partOf(total, step.percent) : 0,
    next: next && { step: next, from: addDays(offer.when, -next.days) },
  };
};

const hundred = Rational.of(100);
const partOf = (total: number, percent: string): number =>
  toMinor(Rational.of(total).times(exact(percent)).over(hundred));

/**
 * What other guests than those offered for owe. `final`: fewer, once the number was final, so the total stands. `tier`
 * and `same-price`: so many at the prices offered. `new-quote`: more or fewer than that. `not-said`: fewer, and the
 * terms say nothing of it.
 */
export type OwedIfOthers = {
  why: 'final' | 'tier' | 'same-price' | 'new-quote' | 'not-said';
  owed: number | undefined;
  /** The fewest guests at the same price; undefined where the terms do not say. */
  least: number | undefined;
};

/** What an option comes to, in minor units, when another number of guests is told on a day, by the offer's terms. */
export const owedIfOthers = (offer: Offer, option: Option, guests: number, day: string): OwedIfOthers => {
  const least = leastGuests(offer);
  const owed = (why: OwedIfOthers['why'], heads: number) => ({
    why,
    owed: offerComes(option, offer, heads).total,
    least,
  });
  const isFinal = offer.finalCount !== null && day > offer.finalCount;
  if (isFinal && guests < offer.guests) return owed('final', offer.guests);
  if (tierAt(option, guests) !== undefined) return owed('tier', guests);
  if (guests > offer.guests) return { why: 'new-quote', owed: undefined, least };
  if (least === undefined) return { why: 'not-said', owed: undefined, least };
  return guests >= least ? owed('same-price', guests) : { why: 'new-quote', owed: undefined, least };
};

/** The fewest guests who may come at the same price; a part of a guest counts as one. */
export const leastGuests = ({ guests, terms }: Offer): number | undefined => {
  if (terms.fewerPercent === null) return undefined;
  const kept = hundred.minus(exact(terms.fewerPercent)).over(hundred).times(Rational.of(guests));
  return Math.max(0, Number(kept.ceil()));
};
