import type { Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import type { Quote } from '../facts/quote.js';
import { listed } from '../problems.js';
import type { Rational } from '../quantity/rational.js';
import { headCount } from '../requirements.js';
import { marginOf } from '../selling/price.js';
import { wholeCost } from '../whole-cost/cost-of-party.js';
import type { WholeCost } from '../whole-cost/whole-cost.js';
import { type Difference, differences } from './differences.js';
import { offerComes } from './offer-comes.js';
import { optionTaken } from './papers.js';
import { type PriceMoved, priceMoves } from './price-moves.js';

/** What a quoted event costs at one time and what its price without tax leaves; per cent, undefined while not known. */
export type AtOneTime = { cost: WholeCost; net: number; margin: Rational | undefined };

/** What is different since a quote was worked out, beside the frozen figures. */
export type Changed = {
  /** As it was issued, by the facts kept then; undefined for a draft, or where another menu than the first was taken. */
  then: AtOneTime | undefined;
  /** As it stands today, at the prices a guest that were quoted. */
  now: AtOneTime;
  /** true when it was issued and its guests, menu or day are others now, and its terms name no price for that. */
  needsQuote: boolean;
  /** Those first that move the cost of what was quoted most. */
  moved: PriceMoved[];
  /** All of it in words, for the kitchen alone. */
  sentences: string[];
};

/**
 * How an event stands beside a quote of it, food as used. What was issued is worked out from the quote alone, so that
 * no price or recipe changed since moves it. `next` is the number another quote would have.
 */
export const whatChanged = (quote: Quote, event: Event, facts: Facts, next = quote.number + 1): Changed => {
  const option = optionTaken(quote);
  const at = (what: Event, guests: number): AtOneTime => {
    const cost = wholeCost(what, facts, 'used');
    const { net } = offerComes(option, quote.offer, guests);
    return { cost, net, margin: cost.complete ? marginOf(cost.exact, net) : undefined };
  };
  const kept = asIssued(quote);
  const then = kept && at(kept, quote.offer.guests);
  const now = at(event, headCount(event));
  const moved = kept ? priceMoves(kept, factsOf(kept, facts), facts) : [];
  const found = differences(quote, kept, event, facts);
  const needsQuote = quote.state !== 'draft' && found.some(({ within }) => !within);
  return {
    then,
    now,
    needsQuote,
    moved,
    sentences: [
      ...inWords(found, needsQuote ? `: quote ${next} is needed` : ''),
      ...movedInWords(moved, then, now, quote.number),
    ],
  };
};

/** What the terms name a price for is said by itself; all else in one sentence. */
const inWords = (found: readonly Difference[], end: string): string[] => {
  const open = found.filter(({ within }) => !within).map(({ words }) => words);
  const within = found.filter((one) => one.within).map(({ words }) => `${words}: its terms name the price`);
  return [...within, ...(open.length ? [`${open.join('; ')}${end}`] : [])].map((one) => `${capital(one)}.`);
};

/**
 * The event of a quote with the facts kept when it was issued; no guest's diet is among them. Another menu than the
 * first is known in the client's words alone, so nothing is said of what it cost.
 */
const asIssued = (quote: Quote): Event | undefined => {
  const { basis, offer } = quote;
  if (!basis || optionTaken(quote) !== offer.options[0]) return undefined;
  return { ...basis.event, guests: [], served: basis.served };
};

const movedInWords = (
  moved: readonly PriceMoved[],
  then: AtOneTime | undefined,
  now: AtOneTime,
  number: number,
): string[] => {
  const margins =
    then?.margin && now.margin && then.margin.toFixed(1) !== now.margin.toFixed(1)
      ? `margin ${then.margin.toFixed(1)} is now ${now.margin.toFixed(1)}`
      : '';
  const prices = moved.slice(0, 3).map(priceInWords);
  if (prices.length === 0) return margins ? [`${capital(margins)}.`] : [];
  return [`${listed(prices)} since quote ${number}${margins && `; ${margins}`}.`];
};

/** To a tenth of a per cent; what moved by less than that is said to have hardly moved. */
const priceInWords = ({ name, percent }: PriceMoved): string => {
  if (!percent) return `${name} is priced in another way`;
  const size = (percent.sign < 0 ? percent.negated() : percent).toFixed(1).replace(/\.0$/, '');
  const way = percent.sign < 0 ? 'down' : 'up';
  return size === '0' ? `${name} is hardly ${way}` : `${name} is ${way} ${size} %`;
};

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
