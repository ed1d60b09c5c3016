import type { Course, Dish, Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { nextKey } from '../keys.js';
import type { Lack } from './lacking.js';
import { dishFor, insteadOf, isNew, type Offering } from './offers.js';
import { type Posed, wholeOf } from './pose.js';
import type { Way } from './puzzle.js';

/** Guests of one row who are given an offering. */
export type Given = { lack: Lack; guests: number };

/** Who is given each offering of a way; guests of a need come in the order they are listed. */
export const givenBy = ({ who }: Posed, { served }: Way): Map<number, Given[]> => {
  const given = new Map<number, Given[]>();
  const left = who.map((lacks) => lacks.map(({ guest }) => guest.count));
  for (const { need, offer, guests } of served) {
    let open = guests;
    who[need]!.forEach((lack, at) => {
      const some = Math.min(open, left[need]![at]!);
      if (some === 0) return;
      left[need]![at]! -= some;
      open -= some;
      given.set(offer, [...(given.get(offer) ?? []), { lack, guests: some }]);
    });
  }
  return given;
};

/** The event with a way out on its menu, and the recipes that it needs besides, components first. */
export const applied = (
  event: Event,
  { offerings, facts }: Posed,
  given: ReadonlyMap<number, Given[]>,
): { event: Event; recipes: Recipe[] } => {
  const recipes = new Map<string, Recipe>();
  const courses = event.courses.map((course) => {
    let dishes = course.dishes;
    for (const [offer, those] of given) {
      const offering = offerings[offer]!;
      if (offering.course !== course) continue;
      for (const one of [...offering.components, offering.recipe])
        if (offering.kind === 'made') recipes.set(one.key, one);
      dishes = isNew(offering)
        ? withDish(dishes, offering, those, event, facts)
        : dishes.map((dish) =>
            dish.key === offering.dish?.key ? keptFor(dish, offering, those, event) : dish,
          );
    }
    return { ...course, dishes };
  });
  return { event: { ...event, courses }, recipes: [...recipes.values()] };
};

const keysOf = (those: readonly Given[]): string[] => those.map(({ lack }) => lack.guest.key);

const countsOf = (those: readonly Given[]): Map<string, number> => {
  const counts = new Map<string, number>();
  for (const { lack, guests } of those)
    counts.set(lack.guest.group, (counts.get(lack.guest.group) ?? 0) + guests);
  return counts;
};

/** A dish of the menu with portions kept for guests, and so many more made where it is to be more. */
const keptFor = (dish: Dish, { kind }: Offering, those: readonly Given[], event: Event): Dish => ({
  ...dish,
  eaters: kind === 'more' ? eatersWith(dish, countsOf(those), event, 1) : dish.eaters,
  keptFor: [...new Set([...dish.keptFor, ...keysOf(those)])],
});

/** The new dish after the one it stands in for, which is made for so many fewer. */
const withDish = (
  dishes: Course['dishes'],
  offering: Offering,
  those: readonly Given[],
  event: Event,
  facts: Facts,
): Course['dishes'] => {
  const key = nextKey(
    'd',
    dishes.map((dish) => dish.key),
  );
  const fewer = new Map<string, Given[]>();
  for (const one of those) {
    const instead = insteadOf(offering, one.lack.guest, event, facts);
    if (instead) fewer.set(instead.key, [...(fewer.get(instead.key) ?? []), one]);
  }
  const less = dishes.map((dish) => {
    const gone = fewer.get(dish.key);
    return gone ? { ...dish, eaters: eatersWith(dish, countsOf(gone), event, -1) } : dish;
  });
  const at = less.findIndex((dish) => dish.key === offering.dish?.key);
  return less.toSpliced(
    at < 0 ? less.length : at + 1,
    0,
    dishFor(offering, key, countsOf(those), keysOf(those)),
  );
};

/** A dish made for so many more or fewer of each group; a group that eats none is named only where all eat none. */
const eatersWith = (
  dish: Dish,
  counts: ReadonlyMap<string, number>,
  event: Event,
  sign: 1 | -1,
): Dish['eaters'] => {
  const all = [...wholeOf(dish, event)].map(([group, guests]) => ({
    group,
    guests: Math.max(0, guests + sign * (counts.get(group) ?? 0)),
  }));
  const some = all.filter(({ guests }) => guests > 0);
  return { counts: some.length > 0 ? some : all };
};
