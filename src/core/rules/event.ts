import { diets, isDiet } from '../diets.js';
import type { Dish, Event } from '../facts/event.js';
import type { Known } from '../known.js';
import { isZero, meant, ownKeys, ownUnit, type Refuse } from './refuse.js';
import { servedRules } from './served.js';

/** Why an event cannot be saved. */
export const eventRules = (event: Event, known: Known, refuse: Refuse): void => {
  if (!known.places.has(event.place))
    refuse('place', 'no-such-place', `There is no place with the key "${event.place}".`);
  ownKeys('groups', event.groups, refuse);
  ownKeys('guests', event.guests, refuse);
  ownKeys('courses', event.courses, refuse);
  ownKeys('costs', event.costs, refuse);
  for (const group of event.groups)
    if (isZero(group.portion))
      refuse(
        `groups/${group.key}/portion`,
        'portion-zero',
        'A portion factor is more than 0, such as 1/2 for children.',
      );
  if (event.groups.reduce((all, { guests }) => all + guests, 0) > most)
    refuse('groups', 'too-many-guests', 'A party has at most 100,000 guests, all groups together.');
  guestRules(event, known, refuse);
  priceRules(event, refuse);
  for (const course of event.courses) {
    ownKeys(`courses/${course.key}/dishes`, course.dishes, refuse);
    for (const dish of course.dishes)
      dishRules(event, `courses/${course.key}/dishes/${dish.key}`, dish, known, refuse);
  }
  keepsWhatWasServed(event, refuse);
};

const most = 100_000;

const priceRules = ({ groups, price }: Event, refuse: Refuse): void => {
  const there = new Set(groups.map(({ key }) => key));
  for (const { group } of price.groups)
    if (!there.has(group))
      refuse(
        'price/groups',
        'no-such-group',
        `A price is set for the guest group "${group}", and there is none with that key.`,
      );
};

const guestRules = ({ groups, guests, served }: Event, known: Known, refuse: Refuse): void => {
  const there = new Set(groups.map(({ key }) => key));
  const isKnown = (diet: string) => isDiet(diet, served?.kitchen) || known.diets.has(diet);
  for (const guest of guests) {
    if (!there.has(guest.group))
      refuse(
        `guests/${guest.key}/group`,
        'no-such-group',
        `There is no guest group with the key "${guest.group}".`,
      );
    for (const diet of guest.diets)
      if (!isKnown(diet))
        refuse(
          `guests/${guest.key}/diets`,
          'no-such-diet',
          `"${diet}" is no diet this workbook knows.${meant(diet, [
            ...diets.map(({ id }) => id),
            ...known.diets,
          ])}`,
        );
    for (const avoided of guest.avoids)
      if (!known.ingredients.has(avoided))
        refuse(
          `guests/${guest.key}/avoids`,
          'no-such-ingredient',
          `There is no ingredient with the key "${avoided}".`,
        );
  }
};

const dishRules = ({ groups }: Event, at: string, dish: Dish, known: Known, refuse: Refuse): void => {
  if (!known.recipes.has(dish.recipe))
    refuse(`${at}/recipe`, 'no-such-recipe', `There is no recipe with the key "${dish.recipe}".`);
  if (dish.portion) ownUnit(`${at}/portion`, dish.portion.unit, refuse);
  if (dish.portion && isZero(dish.portion.amount))
    refuse(`${at}/portion`, 'portion-zero', "A portion is more than 0, or empty for the recipe's own.");
  const there = new Set(groups.map(({ key }) => key));
  const named =
    'shares' in dish.eaters ? dish.eaters.shares : 'counts' in dish.eaters ? dish.eaters.counts : [];
  const seen = new Set<string>();
  for (const { group } of named) {
    if (!there.has(group))
      refuse(`${at}/eaters`, 'no-such-group', `There is no guest group with the key "${group}".`);
    if (seen.has(group)) refuse(`${at}/eaters`, 'group-twice', 'A guest group is named once for a dish.');
    seen.add(group);
  }
};

/** A done event is worked out from what was kept, so it must all be there. */
const keepsWhatWasServed = ({ served, state, courses, place }: Event, refuse: Refuse): void => {
  if (!served) return;
  const reopen = 'This event is done and keeps what was served: reopen it to change its menu or place.';
  if (state !== 'done')
    refuse('served', 'served-not-done', 'Only an event that is done keeps what was served.');
  const recipes = new Set(served.recipes.map(({ key }) => key));
  for (const course of courses)
    for (const dish of course.dishes)
      if (!recipes.has(dish.recipe))
        refuse(`courses/${course.key}/dishes/${dish.key}/recipe`, 'not-served', reopen);
  if (!served.places.some(({ key }) => key === place)) refuse('place', 'not-served', reopen);
  servedRules(served, refuse);
};
