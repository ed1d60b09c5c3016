import type { Event } from '../../../src/core/facts/event.js';
import { type Kitchen, kitchen } from '../../../src/core/facts/kitchen.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import type { Costed } from '../../../src/core/selling/selling.js';
import { party } from '../small.js';

/** What a party costs, in minor units as exact text, and what of that is food. */
export const costs = (whole: string, food = whole): Costed => ({
  exact: Rational.parse(whole),
  complete: true,
  food: { exact: Rational.parse(food), complete: true },
});

/** A party of so many adults whose price is set like this. */
export const priced = (adults: number, price: object, more: object = {}): Event =>
  party(adults, [], { price, ...more });

/** Adults, children and helpers, in this order. */
export const groups = (adults: number, children: number, helpers = 0) => ({
  groups: [
    { key: 'adults', name: 'Adults', guests: adults },
    { key: 'children', name: 'Children to 12', guests: children },
    { key: 'helpers', name: 'Helpers', guests: helpers },
  ],
});

/** Children at so many per cent, helpers at nothing. */
export const pays = (children: string) => ({
  groups: [
    { group: 'children', pays: { percent: children } },
    { group: 'helpers', pays: { percent: '0' } },
  ],
});

export const kitchenOf = (more: object = {}): Kitchen =>
  kitchen.parse({ name: 'Invented', currency: 'GBP', timeZone: 'Europe/London', ...more });

/** VAT at 20 per cent, added to prices and rounded once to the nearest, unless it is said otherwise. */
export const vat = (more: object = {}) => ({
  tax: { name: 'VAT', rate: '20', included: false, rounding: 'whole-nearest', ...more },
});
