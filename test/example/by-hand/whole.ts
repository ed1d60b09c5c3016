import Fraction from 'fraction.js';
import type { CostLine } from '../../../src/core/facts/cost-line.js';
import type { Event } from '../../../src/core/facts/event.js';
import type { Workbook } from '../../../src/core/facts/facts.js';
import type { Recipe } from '../../../src/core/facts/recipe.js';
import { allocate, roundHalfUp } from './cost.js';
import { total } from './tree.js';
import { millilitres, perGram } from './units.js';

/** What is worked out of an event before: what it uses of each ingredient, and the batches of each of its dishes. */
export type Before = {
  guests: number;
  cost: { exact: string };
  ingredients: Record<string, { bought: string }>;
  dishes: Record<string, { batches: Record<string, string> }>;
};

const frac = (text: string | number) => new Fraction(text);
const up = (figure: Fraction): number => Number(figure.ceil().valueOf());

/** The whole of what every event costs, a formula for each figure: as used, in packs alone, in packs all together. */
export const wholeOf = (event: Event, all: Record<string, Before>, book: Workbook) => {
  const own = all[event.key]!;
  const bought = (shoppers: string[]) =>
    total(Object.keys(own.ingredients).map((key) => frac(paidFor(key, event.key, shoppers, all, book))));
  const foods = {
    used: frac(own.cost.exact),
    bought: bought([event.key]),
    together: bought(Object.keys(all).sort()),
  };
  return Object.fromEntries(
    Object.entries(foods).map(([view, food]) => [view, sheet(event, own, food, book)]),
  );
};

/** Pence that an event pays for an ingredient in whole packs, which some events buy together. */
const paidFor = (
  key: string,
  event: string,
  shoppers: string[],
  all: Record<string, Before>,
  book: Workbook,
): number => {
  const { packs, notBought } = book.ingredients.find((one) => one.key === key)!;
  if (notBought) return 0;
  const { size, prices } = packs.find((one) => one.preferred)!;
  const { price } = prices.reduce((a, b) => (b.date >= a.date ? b : a));
  const one = perGram[size.unit] ?? millilitres(size.unit, book.kitchen.cup) ?? 1;
  const holds = frac(size.amount).mul(one);
  const needs = shoppers.map((shopper) => frac(all[shopper]!.ingredients[key]?.bought ?? 0).div(holds));
  return allocate(up(total(needs)) * price, needs)[shoppers.indexOf(event)]!;
};

const sheet = (event: Event, own: Before, food: Fraction, book: Workbook) => {
  const costs = [food];
  for (const { by } of event.costs) costs.push(costOf(by, costs, event, own, book));
  const exact = total(costs);
  const minor = roundHalfUp(exact);
  const [ofFood, ...parts] = allocate(minor, costs);
  return {
    exact: exact.toFraction(),
    minor,
    aGuestMinor: roundHalfUp(exact.div(own.guests)),
    food: { exact: food.toFraction(), minor: ofFood! },
    parts: Object.fromEntries(
      event.costs.map(({ key }, i) => [key, { exact: costs[i + 1]!.toFraction(), minor: parts[i]! }]),
    ),
  };
};

/** What a line comes to; `costs` has the food first, then the lines before it. */
const costOf = (
  by: CostLine['by'],
  costs: Fraction[],
  event: Event,
  own: Before,
  book: Workbook,
): Fraction => {
  if ('percent' in by) return (by.of === 'food' ? costs[0]! : total(costs)).mul(by.percent).div(100);
  if ('fixed' in by) return frac(by.fixed!);
  if ('aGuest' in by) return frac(by.aGuest!).mul(own.guests);
  if ('step' in by) {
    const wanted = frac(own.guests).mul(by.each).mul(frac(by.spare).add(100)).div(100);
    return frac(by.step!).mul(up(wanted.div(by.holds)));
  }
  const rate = by.rate ?? book.kitchen.people.find(({ key }) => key === by.person)!.hourlyCost!;
  const people = Math.max(by.people, by.guestsEach ? up(frac(own.guests).div(by.guestsEach)) : 0);
  const place = book.places.find(({ key }) => key === event.place)!;
  const drive = place.kind === 'home' ? 0 : place.drive! * 2;
  const hours = {
    cooking: minutesOf('cooking', event, own, book).div(60),
    ovens: minutesOf('ovens', event, own, book).div(60),
    rings: minutesOf('rings', event, own, book).div(60),
    driving: frac(drive).div(60).mul(people),
  };
  const worked = by.hours in hours ? hours[by.hours as keyof typeof hours] : frac(by.hours).mul(people);
  return worked.mul(rate);
};

type Work = 'cooking' | 'ovens' | 'rings';

const minutesOf = (work: Work, event: Event, own: Before, book: Workbook): Fraction => {
  const dishes = Object.values(own.dishes);
  return total(
    book.recipes.flatMap((recipe) => {
      const made = total(dishes.map(({ batches }) => frac(batches[recipe.key] ?? 0)));
      const whole = frac(up(made));
      return recipe.steps.map((step) => {
        const minutes = frac(step.minutes!);
        if (work === 'cooking') return step.attended ? minutes.mul(whole) : frac(0);
        if (work === 'rings') return minutes.mul(whole).mul(step.rings);
        return step.oven ? minutes.mul(loads(recipe, step, made, event, book)) : frac(0);
      });
    }),
  );
};

/** Every place of the example has one oven. */
const loads = (
  { yield: makes }: Recipe,
  step: Recipe['steps'][number],
  made: Fraction,
  event: Event,
  book: Workbook,
): number => {
  if (step.portionsPerShelf === null) return up(made);
  const place = book.places.find(({ key, kind }) =>
    step.where === 'venue' ? key === event.place : kind === 'home',
  )!;
  const shelves = up(made.mul(makes.portions!).div(step.portionsPerShelf));
  return up(frac(shelves).div(place.ovens[0]!.shelves));
};
