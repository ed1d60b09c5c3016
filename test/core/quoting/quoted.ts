import type { Event } from '../../../src/core/facts/event.js';
import type { Facts } from '../../../src/core/facts/facts.js';
import { type Payment, payment, type Quote, quote } from '../../../src/core/facts/quote.js';
import { basisOf } from '../../../src/core/quotes-of-event.js';
import { draftOffer } from '../../../src/core/quoting/draft-offer.js';
import { selling } from '../../../src/core/selling/selling.js';
import { wholeCost } from '../../../src/core/whole-cost/cost-of-party.js';
import { dish, factsOf, food, pack, party } from '../small.js';

/** A kitchen that asks a quarter on acceptance and the rest two days before, and allows 5 per cent fewer guests. */
export const ways = {
  name: 'Cold Ash Kitchen',
  marginFloor: '30',
  terms: {
    included: 'Cooking and washing up.',
    validDays: 10,
    finalCountDays: 3,
    fewerPercent: '5',
    instalments: [{ words: 'deposit, one quarter', percent: '25', days: null }],
    balanceDays: 2,
    cancellation: [
      { days: 28, percent: '25' },
      { days: 14, percent: '50' },
      { days: 3, percent: '100' },
    ],
  },
};

/** A buffet of salmon, 100 g a guest, at so many pence a kilo, and of tarts. */
export const kitchenAt = (salmon: number, more: object = {}): Facts =>
  factsOf(
    [
      dish('poached-salmon', '1 portion', ['100 g salmon']),
      dish('leek-tart', '10 portions', []),
      food('salmon', pack(`1 kg at ${salmon}`)),
    ],
    { ...ways, ...more },
  );

/** 46 guests at 26.00 on 28 November 2026; beside the food it costs 717.42. */
export const supper = (guests = 46, more: object = {}): Event =>
  party(guests, ['poached-salmon'], {
    name: 'Winter supper',
    client: 'Ines and Tom',
    costs: [{ key: 'all', name: 'All else', kind: 'other', by: { fixed: 71742 } }],
    price: { by: { aGuest: 2600 } },
    ...more,
  });

/** The quote of an event, issued or accepted on a day with the facts of that day. */
export const quoteOf = (event: Event, facts: Facts, more: object = {}): Quote => {
  const { kitchen, places, ingredients, recipes } = facts;
  const served = {
    date: '2026-09-26',
    kitchen,
    places: [...places.values()],
    ingredients: [...ingredients.values()],
    recipes: [...recipes.values()],
  };
  const sold = selling(event, wholeCost(event, facts, 'used'), kitchen);
  return quote.parse({
    key: 'supper-2',
    event: event.key,
    number: 2,
    state: 'accepted',
    offer: draftOffer(event, facts, sold, '2026-09-26'),
    issued: '2026-09-26',
    answered: '2026-09-28',
    taken: 'menu',
    basis: basisOf(event, served),
    ...more,
  });
};

export const paid = (date: string, amount: number, more: object = {}): Payment =>
  payment.parse({ key: `p-${date}-${amount}`, event: 'party', date, amount, ...more });
