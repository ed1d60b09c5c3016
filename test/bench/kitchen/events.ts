import type { z } from 'zod';
import type { EventState, event } from '../../../src/core/facts/event.js';
import { type Chance, chanceFor } from './chance.js';
import { daysFrom, today } from './days.js';
import { depths, recipeKey } from './recipes.js';

export type EventIn = z.input<typeof event>;
type CourseIn = NonNullable<EventIn['courses']>[number];
type GuestIn = NonNullable<EventIn['guests']>[number];

export const eventKey = (i: number): string => `event-${i}`;

/** A busy week: ten events in the seven days from today, five in every other week of the book. */
const [thisWeek, aWeek] = [10, 5];

/** The event whose page is measured: on Saturday, four courses with fifteen dishes. */
export const measured = eventKey(0);

/**
 * Event `i` of `count`. The first ten lie in the coming week; of the others a fifth comes later and the rest is over,
 * so that ten times the events is a longer book and no busier week.
 */
export const eventAt = (i: number, count: number, recipes: number): EventIn => {
  const chance = chanceFor(`event ${i}`);
  const date = i === 0 ? daysFrom(today, 3) : daysFrom(today, dayOf(i, count));
  const groups = [
    { key: 'adults', name: 'Adults', guests: i === 0 ? 46 : chance.between(12, 90) },
    { key: 'children', name: 'Children', guests: chance.between(2, 12), portion: '1/2' },
    { key: 'crew', name: 'Crew', guests: chance.between(1, 6) },
  ];
  return {
    key: eventKey(i),
    name: `${chance.pick(['Anniversary', 'Autumn supper', 'Harvest lunch', 'Opening', 'Wedding'])} ${i}`,
    client: `Client ${chance.below(200)}`,
    date,
    place: chance.pick(['barn', 'hall', 'home']),
    state: i === 0 ? 'confirmed' : stateOf(date, chance),
    groups,
    guests: guestsOf(chance),
    eatsAll: chance.between(0, 10),
    overCatering: chance.pick(['0', '5', '7.5']),
    courses: coursesOf(
      i === 0 ? [4, 4, 4, 3] : Array.from({ length: 3 }, () => chance.between(1, 3)),
      recipes,
      chance,
    ),
    note: chance.percent(30) ? 'Parking behind the house; ring the bell twice.' : '',
  };
};

const dayOf = (i: number, count: number): number => {
  if (i < thisWeek) return i % 7;
  const later = Math.floor((count - thisWeek) / 5);
  const place = i - thisWeek;
  const weekDays = (n: number) => Math.floor((n * 7) / aWeek);
  return place < later ? 7 + weekDays(place) : -1 - weekDays(place - later);
};

const stateOf = (date: string, chance: Chance): EventState => {
  if (date < today) return chance.percent(92) ? 'confirmed' : 'cancelled';
  return chance.pick(['confirmed', 'confirmed', 'confirmed', 'quoted', 'enquiry'] as const);
};

const wishes = ['vegan', 'vegetarian', 'pescatarian', 'no-pork'];

const guestsOf = (chance: Chance): GuestIn[] =>
  Array.from({ length: chance.between(8, 20) }, (_, n) => ({
    key: `guest-${n}`,
    name: chance.percent(80) ? `Guest ${n}` : '',
    count: chance.percent(85) ? 1 : chance.between(2, 4),
    group: chance.percent(80) ? 'adults' : 'children',
    answered: chance.percent(90),
    diets: chance.percent(85) ? [chance.pick(wishes)] : [],
    other: chance.percent(10) ? 'No raw onion, please' : '',
  }));

const times = ['13:00', '13:45', '15:00', '18:30'];

const coursesOf = (sizes: readonly number[], recipes: number, chance: Chance): CourseIn[] =>
  sizes.map((size, c) => ({
    key: `course-${c}`,
    name: ['Starters', 'Mains', 'Cakes', 'Late plates'][c]!,
    time: times[c]!,
    dishes: Array.from({ length: size }, (_, d) => ({
      key: `dish-${d}`,
      recipe: recipeKey(chance.between(chance.percent(80) ? depths(recipes).third : 0, recipes - 1)),
      portion: chance.percent(30) ? { amount: String(chance.between(6, 18) * 10), unit: 'g' } : null,
      eaters: eatersOf(chance),
    })),
  }));

const eatersOf = (chance: Chance): NonNullable<NonNullable<CourseIn['dishes']>[number]['eaters']> => {
  if (chance.percent(60)) return { everybody: true };
  if (chance.percent(60))
    return {
      shares: ['adults', 'crew'].map((group) => ({ group, percent: String(chance.between(2, 8) * 10) })),
    };
  return { counts: [{ group: 'adults', guests: chance.between(4, 12) }] };
};
