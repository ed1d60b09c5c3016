import allergens from '../../../shared/allergens.json' with { type: 'json' };
import published from '../../../shared/diets.json' with { type: 'json' };
import type { Dish, Event, Guest } from '../../../src/core/facts/event.js';
import type { Workbook } from '../../../src/core/facts/facts.js';
import type { Ingredient, Trait } from '../../../src/core/facts/ingredient.js';
import { statesOf, waysInto } from './allergens.js';

export type Verdict = 'no' | 'unknown' | 'may' | 'yes';
const hardest = (all: Verdict[]): Verdict =>
  (['no', 'unknown', 'may'] as const).find((one) => all.includes(one)) ?? 'yes';
const best = (all: Verdict[]): Verdict =>
  (['yes', 'may', 'unknown'] as const).find((one) => all.includes(one)) ?? 'no';

const verdictOn = (dietId: string, ingredient: Ingredient): Verdict => {
  const diet = published.find((one) => one.id === dietId)!;
  const traits = diet.avoidsTraits.map((trait) => ingredient.traits[trait as Trait] ?? 'unknown');
  const states = statesOf(
    ingredient,
    diet.avoidsAllergens.filter((id) => !allergens.groups.some((group) => group.id === id)),
  );
  const group = diet.avoidsAllergens.map((id) => ingredient.allergens[id]?.state);
  if (traits.includes('yes') || states.includes('contains') || group.includes('contains')) return 'no';
  if (diet.kind === 'choice' || diet.kind === 'religious')
    return traits.includes('unknown') ? 'unknown' : 'yes';
  if (states.includes('unknown')) return 'unknown';
  return states.includes('may') || group.includes('may') ? 'may' : 'yes';
};

const verdictFor = (guest: Guest, dish: Dish, book: Workbook): Verdict => {
  if (!guest.answered) return 'unknown';
  const found = waysInto(dish.recipe, book).flatMap(({ ingredient }) =>
    guest.diets.map((diet) => verdictOn(diet, ingredient)),
  );
  // A wish in their own words is the cook's to judge, so no dish is a plain yes.
  return hardest(guest.other ? [...found, 'unknown'] : found);
};

/** How many of a group a dish is made for, whole portions. */
const madeFor = ({ eaters }: Dish, { key, guests }: Event['groups'][number]): number => {
  if ('everybody' in eaters) return guests;
  if ('counts' in eaters) return eaters.counts.find((one) => one.group === key)?.guests ?? 0;
  const share = eaters.shares.find((one) => one.group === key)?.percent ?? '0';
  return Math.floor((guests * Number(share)) / 100);
};

type Given = { none: number; unknown: number; may: number; each: Verdict[] };
const less = (a: Given, b: Given): boolean =>
  a.none !== b.none ? a.none < b.none : a.unknown !== b.unknown ? a.unknown < b.unknown : a.may < b.may;

/** Tries to give each guest in turn every dish that is left; the fewest without, then not known, then may contain. */
const bestGiven = (left: readonly number[], guests: readonly Verdict[][]): Given => {
  const known = new Map<string, Given>();
  const from = (at: number, have: readonly number[]): Given => {
    const wishes = guests[at];
    if (!wishes) return { none: 0, unknown: 0, may: 0, each: [] };
    const mark = `${at} ${have.join(' ')}`;
    let best = known.get(mark);
    for (const dish of [...wishes.keys(), -1]) {
      const verdict = wishes[dish] ?? 'no';
      if (dish >= 0 && (verdict === 'no' || have[dish] === 0)) continue;
      const rest = from(
        at + 1,
        have.map((n, i) => (i === dish ? n - 1 : n)),
      );
      const here = {
        none: rest.none + (verdict === 'no' ? 1 : 0),
        unknown: rest.unknown + (verdict === 'unknown' ? 1 : 0),
        may: rest.may + (verdict === 'may' ? 1 : 0),
        each: [verdict, ...rest.each],
      };
      if (!best || less(here, best)) best = here;
    }
    known.set(mark, best!);
    return best!;
  };
  return from(0, left);
};

/** What each guest of a course must be content with where portions are few; those with only not known compete for none. */
const contentIn = (course: Event['courses'][number], event: Event, book: Workbook): Map<Guest, Verdict> => {
  const content = new Map<Guest, Verdict>();
  for (const group of event.groups) {
    const heads = event.guests
      .filter((guest) => guest.group === group.key && guest.answered && (guest.diets.length || guest.other))
      .map((guest) => {
        const plain = { ...guest, other: '' };
        const wishes = course.dishes.map((dish): Verdict => {
          const served = isServed(dish, group.key);
          return served ? verdictFor(plain, dish, book) : 'no';
        });
        return { guest, wishes };
      })
      .filter(({ wishes }) => wishes.includes('yes') || wishes.includes('may'))
      .flatMap((one) => Array.from({ length: one.guest.count }, () => one));
    const given = bestGiven(
      course.dishes.map((dish) => madeFor(dish, group)),
      heads.map(({ wishes }) => wishes),
    );
    for (const [at, { guest }] of heads.entries())
      content.set(guest, hardest([given.each[at]!, content.get(guest) ?? 'yes']));
  }
  return content;
};

const isServed = ({ eaters }: Dish, group: string) =>
  'everybody' in eaters
    ? true
    : 'shares' in eaters
      ? eaters.shares.some((one) => one.group === group && one.percent !== '0')
      : eaters.counts.some((one) => one.group === group && one.guests > 0);

/** For each guest and course: the verdict on each dish served to their group, and the best of them that there is enough of. */
export const coverageOf = (event: Event, book: Workbook) => ({
  guests: Object.fromEntries(
    event.guests.map((guest) => [
      guest.key,
      Object.fromEntries(
        event.courses.map((course) => {
          const dishes = course.dishes
            .filter((dish) => isServed(dish, guest.group))
            .map((dish): [string, Verdict] => [dish.key, verdictFor(guest, dish, book)]);
          const own = best(dishes.map(([, verdict]) => verdict));
          const has = hardest([own, contentIn(course, event, book).get(guest) ?? 'yes']);
          return [course.key, { has, dishes: Object.fromEntries(dishes) }];
        }),
      ),
    ]),
  ),
  notAnswered:
    event.groups.reduce((all, group) => all + group.guests, 0) -
    event.guests.filter((guest) => guest.answered).reduce((all, guest) => all + guest.count, 0) -
    event.eatsAll,
});
