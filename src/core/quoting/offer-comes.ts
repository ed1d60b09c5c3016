import type { Offer, Option, PriceLine } from '../facts/quote.js';
import { type Charge, charge } from '../selling/charge.js';

export type OfferLine = PriceLine & { amount: number };

/** What an option comes to, in minor units: its lines, what is added to the minimum and taken off, then tax. */
export type OfferTotal = Charge & { lines: OfferLine[] };

/**
 * What an option of an offer comes to, worked out from the offer alone: for the guests it is for, or for so many at
 * the prices offered.
 */
export const offerComes = (option: Option, offer: Offer, guests = offer.guests): OfferTotal => {
  const lines = linesFor(option, offer, guests).map((line) => ({ ...line, amount: line.count * line.each }));
  const charged = charge(
    lines.map(({ amount }) => amount),
    option,
    offer.tax,
  );
  return { lines, ...charged };
};

/** What a guest costs when so many come, by the tiers of an option; undefined below the first, or without any. */
export const tierAt = ({ tiers }: Option, guests: number): number | undefined =>
  tiers.filter(({ from }) => from <= guests).sort((a, b) => b.from - a.from)[0]?.each;

/** The first line is that of guests who pay in full: tiers are its price, and guests more or fewer are its own. */
const linesFor = (option: Option, offer: Offer, guests: number): PriceLine[] => {
  if (!goesByGuests(option, offer)) return option.lines;
  const each = tierAt(option, guests);
  const [first, ...others] = moved(option.lines, guests - offer.guests);
  return first ? [{ ...first, each: each ?? first.each }, ...others] : [];
};

/** A sum for the whole party is a line of one, whoever comes. */
const goesByGuests = ({ lines }: Option, { guests }: Offer): boolean =>
  lines.reduce((all, { count }) => all + count, 0) >= guests;

/** More guests go to the first line; fewer are taken from it, and from the next when nobody is left in it. */
const moved = (lines: readonly PriceLine[], by: number): PriceLine[] => {
  let left = by;
  return lines.map((line) => {
    const count = Math.max(0, line.count + left);
    left -= count - line.count;
    return { ...line, count };
  });
};
