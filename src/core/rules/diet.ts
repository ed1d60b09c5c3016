import { allergenIds } from '../allergens.js';
import { diets, isDiet } from '../diets.js';
import type { OwnDiet } from '../facts/diet.js';
import type { Kitchen } from '../facts/kitchen.js';
import type { Known } from '../known.js';
import { normalName } from '../names.js';
import { meant, ownKeys, type Refuse } from './refuse.js';

/** Why the kitchen's own diets cannot be saved: each is told apart from the published ones, and guests keep theirs. */
export const dietRules = ({ diets: own }: Kitchen, known: Known, refuse: Refuse): void => {
  ownKeys('diets', own, refuse);
  const names = new Map(diets.map(({ name }) => [normalName(name), name]));
  for (const diet of own) {
    if (isDiet(diet.key))
      refuse(
        `diets/${diet.key}/name`,
        'diet-published',
        `The key "${diet.key}" is that of a diet every kitchen has: choose another.`,
      );
    const other = names.get(normalName(diet.name));
    if (other)
      refuse(
        `diets/${diet.key}/name`,
        'diet-named',
        `There is a diet called ${other} already: choose another name.`,
      );
    names.set(normalName(diet.name), diet.name);
    oneDiet(diet, known, refuse);
  }
  const there = new Set(own.map(({ key }) => key));
  for (const [key, event] of known.dietsOfGuests)
    if (!isDiet(key) && !there.has(key))
      refuse('diets', 'diet-in-use', `A guest of ${event} has the diet "${key}", so it stays.`);
};

const oneDiet = (diet: OwnDiet, known: Known, refuse: Refuse): void => {
  const { key, name, avoidsTraits, avoidsAllergens, avoidsIngredients } = diet;
  for (const id of avoidsAllergens)
    if (!allergenIds.has(id))
      refuse(
        `diets/${key}/avoidsAllergens`,
        'no-such-allergen',
        `"${id}" is no allergen of the lists this workbook knows.${meant(id, allergenIds)}`,
      );
  for (const one of avoidsIngredients)
    if (!known.ingredients.has(one))
      refuse(
        `diets/${key}/avoidsIngredients`,
        'no-such-ingredient',
        `${name}: there is no ingredient with the key "${one}".`,
      );
  if (avoidsTraits.length + avoidsAllergens.length + avoidsIngredients.length === 0)
    refuse(
      `diets/${key}/name`,
      'diet-avoids-nothing',
      `${name} avoids nothing, so it would find everything right: say what it avoids.`,
    );
};
