import type { Event } from '../../src/core/facts/event.js';
import { traits } from '../../src/core/facts/traits.js';
import { dish, factsOf, food, labelled, party } from './small.js';

/** Suppers of fifty at which some dishes are made for few; dishes and guests are invented. */
const plain = { traits: Object.fromEntries(traits.map((trait) => [trait, 'no'])) };
export const facts = factsOf([
  dish('stew', '1 portion', ['1 g beef']),
  dish('lentil-pie', '1 portion', ['1 g lentil']),
  dish('gratin', '1 portion', ['1 g cheese']),
  dish('crisps', '1 portion', ['1 g crisp']),
  food('beef', { ...labelled(), traits: { ...plain.traits, meat: 'yes', beef: 'yes' } }),
  food('lentil', { ...labelled(), ...plain }),
  food('cheese', { ...labelled({ contains: ['milk'] }), traits: { ...plain.traits, dairy: 'yes' } }),
  food('crisp', { ...labelled({ may: ['milk'] }), ...plain }),
]);
export const made = (recipe: string, guests: number, ...keptFor: string[]) => ({
  recipe,
  keptFor,
  eaters: { counts: [{ group: 'adults', guests }] },
});
export const guest = (key: string, count: number, ...diets: string[]) => ({
  ...{ key, count, diets, name: key.charAt(0).toUpperCase() + key.slice(1), group: 'adults' },
});
export const supper = (dishes: (string | object)[], ...guests: ReturnType<typeof guest>[]): Event =>
  party(50, dishes, { guests, eatsAll: 50 - guests.reduce((n, { count }) => n + count, 0) });
