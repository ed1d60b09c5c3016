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

const isServed = ({ eaters }: Dish, group: string) =>
  'everybody' in eaters
    ? true
    : 'shares' in eaters
      ? eaters.shares.some((one) => one.group === group && one.percent !== '0')
      : eaters.counts.some((one) => one.group === group && one.guests > 0);

/** For each guest and course: the verdict on each dish served to their group, and the best of them. */
export const coverageOf = (event: Event, book: Workbook) => ({
  guests: Object.fromEntries(
    event.guests.map((guest) => [
      guest.key,
      Object.fromEntries(
        event.courses.map((course) => {
          const dishes = course.dishes
            .filter((dish) => isServed(dish, guest.group))
            .map((dish): [string, Verdict] => [dish.key, verdictFor(guest, dish, book)]);
          const has = best(dishes.map(([, verdict]) => verdict));
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
