import { type AllergenItem, listOf } from '../allergens.js';
import { dietsOf } from '../diet-list.js';
import type { Kitchen } from '../facts/kitchen.js';

/** What a client is asked of their guests: the usual answers, in plain words, each with room for how many. */
export type Questions = { diets: string[]; allergens: string[]; others: string[] };

const usual = [
  'vegetarian',
  'vegan',
  'pescatarian',
  'no-pork',
  'no-beef',
  'no-alcohol',
  'halal',
  'kosher',
  'hindu',
];
const mindful = ['coeliac', 'pregnancy', 'infant', 'young-child'];

/**
 * The choices of a diet question sheet: diets by choice and faith with the kitchen's own, every entry of the allergen
 * list in force, and guests for whom people usually take care.
 */
export const questionsFor = (kitchen: Kitchen): Questions => {
  const all = dietsOf(kitchen);
  const named = (ids: readonly string[]) =>
    ids.flatMap((id) => all.find((diet) => diet.id === id)?.name ?? []).map(capital);
  return {
    diets: [...named(usual), ...kitchen.diets.map(({ name }) => capital(name))],
    allergens: listOf(kitchen).items.map(plainName),
    others: named(mindful),
  };
};

/** "Cereals containing gluten", "Sulphites": what the law adds about amounts is not the guest's to know. */
const plainName = ({ id, name, short }: AllergenItem): string => (id === 'sulphites' ? short : name);

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
