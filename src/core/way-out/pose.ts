import type { Coverage } from '../coverage.js';
import type { Course, Dish, Event, Guest } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { countsFor } from '../kept-apart.js';
import { recipeOf } from '../lookup.js';
import { Rational } from '../quantity/rational.js';
import { eatersOf } from '../requirements.js';
import { feedsOf } from './feeds.js';
import { eats, kindOf, type Lack, lackingIn } from './lacking.js';
import {
  dishFor,
  extraWork,
  factorOf,
  harmedBy,
  inHundredths,
  insteadOf,
  isFor,
  isNew,
  type Offering,
  portionCost,
  shareTable,
} from './offers.js';
import { optionsFor } from './options.js';
import { othersFor, type StoodIn } from './others.js';
import type { Offer, Puzzle, Take } from './puzzle.js';
import { type Namer, namerFor, type Taken, takenIn } from './treat.js';

/** The whole event as a puzzle, with what its offers and needs stand for. */
export type Posed = {
  puzzle: Puzzle;
  offerings: Offering[];
  /** The guests of each need. */
  who: Lack[][];
  /** Guests whom nothing in the library serves. */
  nothing: Lack[];
  /** The facts with the variants that could be made. */
  facts: Facts;
};

/** Everything that could be put before guests who lack something, course by course, as a puzzle to be solved. */
export const pose = (
  event: Event,
  today: Facts,
  stoodIn: StoodIn,
  coverage: Coverage,
  taken: Taken = takenIn(today),
): Posed => {
  const lacks = lackingIn(event, coverage);
  const { offerings, facts } = offeringsFor(event, lacks, today, stoodIn, namerFor(taken));
  const takers = offerings.map((offering) => takersOf(offering, lacks, event, facts));
  const offers: Offer[] = offerings.map((offering) => ({
    key: `${offering.kind} ${offering.recipe.key}`,
    extra: isNew(offering) ? 1 : 0,
    feeds: feedsOf(offering, lacks, event, facts),
    work: extraWork(offering, event, facts),
  }));
  const costs = offerings.map((offering, at) => costsOf(offering, takers[at]!, event, facts));
  const needs: Puzzle['needs'] = [];
  const who: Lack[][] = [];
  const nothing: Lack[] = [];
  const alike = new Map<string, number>();
  for (const lack of lacks) {
    const takes = offerings.flatMap((_, offer): Take[] =>
      takers[offer]!.includes(lack) ? [{ offer, cost: costs[offer]!(lack.guest) }] : [],
    );
    if (takes.length === 0) {
      nothing.push(lack);
      continue;
    }
    const mark = JSON.stringify([lack.guest.group, takes]);
    const at = alike.get(mark) ?? needs.length;
    if (at === needs.length) {
      alike.set(mark, at);
      needs.push({ key: `${lack.course.key} ${lack.guest.key}`, guests: 0, takes });
      who.push([]);
    }
    needs[at]!.guests += lack.guest.count;
    who[at]!.push(lack);
  }
  return { puzzle: { offers, needs }, offerings, who, nothing, facts };
};

const offeringsFor = (event: Event, lacks: readonly Lack[], today: Facts, stoodIn: StoodIn, namer: Namer) => {
  const offerings: Offering[] = [];
  const fresh: Recipe[] = [];
  for (const course of event.courses) {
    const here = lacks.filter((lack) => lack.course === course);
    if (here.length === 0) continue;
    const kinds = kindsOf(here.map(({ guest }) => guest));
    for (const dish of course.dishes) {
      const base = recipeOf(dish.recipe, today);
      const plain = { course, dish, components: [], treatments: [] };
      for (const group of new Set(here.map(({ guest }) => guest.group)))
        for (const kind of ['as-is', 'kept'] as const)
          offerings.push({ ...plain, kind, recipe: base, group });
      offerings.push({ ...plain, kind: 'more', recipe: base });
      for (const recipe of variantsOf(base, course, today))
        offerings.push({ ...plain, kind: 'variant', recipe });
      for (const option of optionsFor(base, kinds, today, namer)) {
        offerings.push({ ...plain, kind: 'made', ...option });
        fresh.push(option.recipe, ...option.components);
      }
    }
    for (const recipe of othersFor(course, event, kinds, today, stoodIn))
      offerings.push({ kind: 'other', course, dish: undefined, recipe, components: [], treatments: [] });
  }
  const recipes = new Map([...today.recipes, ...fresh.map((recipe) => [recipe.key, recipe] as const)]);
  return { offerings, facts: { ...today, recipes } };
};

/** Guests who eat alike stand for each other. */
const kindsOf = (guests: readonly Guest[]): Guest[] => [
  ...new Map(guests.map((guest) => [kindOf(guest), guest])).values(),
];

/** Variants of a recipe in the library, or its base and the other variants of that, which the course does not have. */
const variantsOf = ({ key, variantOf }: Recipe, { dishes }: Course, facts: Facts): Recipe[] => {
  const there = new Set(dishes.map(({ recipe }) => recipe));
  return [...facts.recipes.values()].filter(
    (one) =>
      !one.archived &&
      !there.has(one.key) &&
      (one.variantOf === key ||
        (variantOf !== null && (one.key === variantOf || one.variantOf === variantOf))),
  );
};

/** Who of those that lack something may be given an offering. */
const takersOf = (offering: Offering, lacks: readonly Lack[], event: Event, facts: Facts): Lack[] => {
  const { kind, course, recipe, dish } = offering;
  const harmed = harmedBy(offering, event, facts);
  return lacks.filter((lack) => {
    const { guest, short } = lack;
    if (lack.course !== course) return false;
    if (!eats(guest, recipe, facts)) return false;
    if (isNew(offering)) return !harmed.some((other) => shareTable(guest, other));
    if (kind === 'more') return true;
    if (guest.group !== offering.group || !isFor(dish!, guest.group, event)) return false;
    const counts = countsFor(guest, dish!, course, facts);
    return kind === 'as-is' ? short && counts : !short && !counts;
  });
};

/** What each guest's portion of an offering costs more than what they leave, in hundredths of a minor unit. */
const costsOf = (
  offering: Offering,
  takers: readonly Lack[],
  event: Event,
  facts: Facts,
): ((guest: Guest) => number | null) => {
  if (offering.kind === 'as-is' || offering.kind === 'kept') return () => 0;
  const counts = new Map<string, number>();
  for (const { guest } of takers) counts.set(guest.group, (counts.get(guest.group) ?? 0) + guest.count);
  if (counts.size === 0) return () => null;
  const made = isNew(offering) ? dishFor(offering, 'made', counts, []) : offering.dish!;
  const each = portionCost(made, counts, event, facts);
  const left = new Map<Dish, Rational>();
  const leftBy = (dish: Dish): Rational => {
    const known = left.get(dish) ?? portionCost(dish, wholeOf(dish, event), event, facts) ?? Rational.zero;
    left.set(dish, known);
    return known;
  };
  return (guest) => {
    if (!each) return null;
    const instead = insteadOf(offering, guest, event, facts);
    const more = instead ? each.minus(leftBy(instead)) : each;
    return inHundredths(more.times(factorOf(guest.group, event)));
  };
};

/** How many of each group a dish is made for, in whole guests. */
export const wholeOf = (dish: Dish, event: Event): Map<string, number> =>
  new Map([...eatersOf(dish.eaters, event)].map(([group, guests]) => [group, Number(guests.ceil())]));
