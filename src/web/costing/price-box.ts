import type { Event } from '../../core/facts/event.js';
import { type BuildUp, buildUp } from '../../core/sheets/build-up.js';
import { type Format, formatFor } from '../format.js';
import type { InView } from './in-view.js';

export type PriceFact = { label: string; value: string; loud: boolean };

/** What a price comes to and leaves, beside the form that sets it. */
export type PriceBox = {
  facts: PriceFact[];
  /** What stands in the way of a price, in sentences. */
  said: string[];
};

/** What the price of an event comes to, or the one typed for it, which `typed` has. */
export const priceBox = (now: BuildUp, { view, beside, facts }: InView, typed?: Event): PriceBox => {
  const built = typed ? buildUp(typed, facts, view, beside).value : now;
  const f = formatFor(facts.kitchen);
  return {
    facts: [
      ...comesTo(built, f),
      ...(typed ? [{ ...marginOf(now, f), label: 'Margin now' }] : []),
      { ...marginOf(built, f), label: typed ? 'Margin with this price' : 'Margin now' },
      ...foodOf(built, f),
      ...floorOf(built, f),
    ],
    said: built.sold.problems.filter(({ code }) => code !== 'below-floor').map(({ sentence }) => sentence),
  };
};

const fact = (label: string, value: string, loud = false): PriceFact => ({ label, value, loud });

const comesTo = ({ sold, facts: { kitchen } }: BuildUp, f: Format): PriceFact[] => {
  if (sold.rows.length === 0) return [];
  const alike = sold.rows.every(({ each }) => each === sold.aGuest);
  const byGroup = alike ? [] : sold.rows.filter(({ each }) => each !== undefined);
  return [
    ...(alike && sold.aGuest !== undefined ? [fact('Price a guest', f.money(sold.aGuest))] : []),
    ...byGroup.map(({ group, each, guests }) =>
      fact(`${group.name}, ${f.number(guests)}`, `${f.money(each!)} each`),
    ),
    ...(sold.minimum ? [fact('Up to your minimum', f.money(sold.minimum))] : []),
    ...(sold.discount ? [fact('Taken off', `−${f.money(sold.discount)}`)] : []),
    ...(kitchen.tax
      ? [fact(`${kitchen.tax.name} ${kitchen.tax.included ? 'in it' : 'added'}`, f.money(sold.tax))]
      : []),
    fact('In all', f.money(sold.total)),
  ];
};

const marginOf = ({ sold, cost }: BuildUp, f: Format): Omit<PriceFact, 'label'> => {
  if (sold.margin) return { value: f.percent(sold.margin), loud: false };
  if (sold.rows.length === 0) return { value: 'no price yet', loud: false };
  return { value: cost.complete ? 'not known' : 'not known, cost incomplete', loud: true };
};

const foodOf = ({ sold }: BuildUp, f: Format): PriceFact[] =>
  sold.foodCost ? [fact('Food, of the price', f.percent(sold.foodCost))] : [];

const floorOf = ({ sold: { floor }, facts: { kitchen } }: BuildUp, f: Format): PriceFact[] => {
  if (kitchen.marginFloor === null) return [];
  return [
    fact('Your floor', f.percent(kitchen.marginFloor)),
    ...(floor?.short ? [fact('Short by', f.money(floor.short), true)] : []),
  ];
};
