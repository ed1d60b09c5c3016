import type { Kitchen } from '../../core/facts/kitchen.js';
import type { MinutePrice } from '../../core/minute-price.js';
import { costShown } from '../events/dishes.js';
import { type Format, formatFor } from '../format.js';
import { pageOf } from '../links.js';
import { withMend } from '../mends.js';

export type MinuteAnswer = {
  holds: MinutePrice['holds'];
  /** "£24.50"; nothing while no margin is to be kept. */
  price: string;
  /** What stands beside the price: of whom, in all, with or without tax. */
  about: string[];
  cost: string;
  facts: { label: string; value: string }[];
  /** What is missing, and what is a guess, each with where it is mended. */
  missing: ReturnType<typeof withMend>[];
  guesses: ReturnType<typeof withMend>[];
  /** Where it becomes an event. */
  enquiry: string;
};

/** What a price in a minute comes to, in words. */
export const minuteAnswer = ({ event, cost, sold, holds }: MinutePrice, kitchen: Kitchen): MinuteAnswer => {
  const f = formatFor(kitchen);
  return {
    holds,
    price: sold.aGuest === undefined ? '' : f.money(sold.aGuest),
    about: aboutPrice({ event, cost, sold, holds }, kitchen, f),
    cost: costShown(cost.aGuest, cost.complete, f),
    facts: factsOf({ event, cost, sold, holds }, f),
    missing: cost.problems.filter(({ weight }) => weight !== 'check').map(withMend),
    guesses: cost.problems.filter(({ code }) => code === 'guessed-price').map(withMend),
    enquiry: `${pageOf('event', event.key)}/copy?${enquiryOf(event)}`,
  };
};

/** The guests and the margin, for the form that copies the menu to a new event. */
const enquiryOf = ({ groups, price: { by } }: MinutePrice['event']): URLSearchParams => {
  const sum = (wanted: (name: string) => boolean) =>
    groups.filter(({ name }) => wanted(name)).reduce((all, { guests }) => all + guests, 0);
  const children = sum(isChildren);
  return new URLSearchParams({
    to: 'new',
    adults: String(sum((name) => !isChildren(name))),
    ...(children > 0 ? { children: String(children) } : {}),
    ...(by && 'margin' in by ? { margin: by.margin } : {}),
  });
};

/** What the form for a new event calls them. */
const isChildren = (name: string): boolean => /^children$/i.test(name.trim());

const aboutPrice = ({ sold }: MinutePrice, { tax }: Kitchen, f: Format): string[] => {
  if (sold.aGuest === undefined) return [];
  const alike = sold.rows.every(({ each }) => each === sold.aGuest);
  const others = sold.rows.filter(({ each }) => each !== undefined && each !== sold.aGuest);
  return [
    ...(alike ? [] : others.map(({ group, each }) => `${group.name} ${f.money(each!)}`)),
    tax ? `${f.money(sold.total)} in all, with ${tax.name}` : `${f.money(sold.total)} in all`,
    ...(tax && !tax.included ? [`${f.money(sold.net)} before ${tax.name}`] : []),
  ];
};

const factsOf = ({ cost, sold }: MinutePrice, f: Format): MinuteAnswer['facts'] => [
  { label: 'Food', value: costShown(cost.food.cost, cost.food.complete, f) },
  ...cost.parts.map(({ line, cost: part, complete }) => ({
    label: line.name,
    value: costShown(part, complete, f),
  })),
  { label: 'Cost in all', value: costShown(cost.total, cost.complete, f) },
  ...(cost.complete && sold.margin ? [{ label: 'Margin', value: f.percent(sold.margin) }] : []),
];
