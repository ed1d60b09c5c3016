import type { Event } from '../facts/event.js';
import type { Problem, Weight } from '../problem.js';
import { ofEvent } from '../problems.js';

/** What stands in the way of a price, and what is odd about one. */
const sentences = {
  'price-not-set': 'No price is set yet.',
  'price-no-guests': 'No guests are entered yet, so there is no price to work out.',
  'price-nobody-pays':
    'Every group pays nothing or a price of its own, so no full price can be worked out. Let one group pay in full.',
  'price-own-over-total':
    'Groups with a price of their own come to more than the total asked. Ask for more, or change their price.',
  'price-cost-open': 'The price goes by the cost, and not all of the cost is known yet.',
  'price-food-open': 'The price goes by the food, and not all of its cost is known yet.',
  'price-of-nothing': 'Nothing has a cost yet, so no price goes by it. Add dishes or costs, or type a price.',
  'price-discount-all': 'The discount takes everything off, so no price leaves what is asked.',
  'price-too-high': 'No price that could be written down leaves what is asked. Look at the per cent asked.',
  'discount-over': 'More is taken off than the price comes to, so nothing is left of it.',
} as const;
export type PriceGap = keyof typeof sentences;

export const priceGap = (event: Event, code: PriceGap): Problem =>
  about(event, code === 'discount-over' ? 'check' : 'ask', code, sentences[code]);

export const marginTooHigh = (event: Event, margin: string): Problem =>
  about(
    event,
    'ask',
    'price-margin-high',
    `A margin is below 100 %, as the cost has to be paid from the price. You entered ${margin}.`,
  );

export const foodCostZero = (event: Event): Problem =>
  about(
    event,
    'ask',
    'price-food-zero',
    'The food is more than 0 % of the price: type what part it should be, such as 30.',
  );

export const belowFloor = (event: Event, floor: string): Problem =>
  about(event, 'check', 'below-floor', `The price leaves less than the ${floor} % you want to keep.`);

const about = (event: Event, weight: Weight, code: string, sentence: string): Problem => ({
  weight,
  code,
  sentence,
  subject: ofEvent(event, 'price'),
});
