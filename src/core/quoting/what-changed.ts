import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Quote } from '../facts/quote.js';
import type { Rational } from '../quantity/rational.js';
import type { WholeCost } from '../whole-cost/whole-cost.js';

/** What a quote's event cost and left at one time; `margin` per cent of net, undefined while not known. */
export type AtOneTime = { cost: WholeCost; net: number; margin: Rational | undefined };

/** An ingredient whose price moved; `percent` of its unit price, undefined where packs can't be compared. */
export type PriceMoved = {
  ingredient: string;
  name: string;
  percent: Rational | undefined;
  /** By how much it moves the cost of the food as quoted, in minor units, exact. */
  by: Rational;
};

/** What is different since a quote was worked out, beside the frozen figures; `sentences` say it for the kitchen. */
export type Changed = {
  then: AtOneTime | undefined;
  now: AtOneTime;
  /** true when the head-count, menu or day is no longer what was offered, so that another quote is needed. */
  needsQuote: boolean;
  moved: PriceMoved[];
  sentences: string[];
};

export const whatChanged = (_quote: Quote, _event: Event, _facts: Facts): Changed => {
  throw new Error('not worked out yet');
};
