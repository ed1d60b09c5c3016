import { allergenIds } from '../../core/allergens.js';
import { readAvoids } from '../../core/avoid-words.js';
import { dietKinds, type OwnDiet } from '../../core/facts/diet.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { traits } from '../../core/facts/traits.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text, texts } from '../form.js';
import { keyFrom } from '../keys.js';

type Named = { key: string; name: string };

/** The kitchen's own diets as their form shows them. */
export const dietsForm = ({ diets }: Kitchen, revision: number, ingredients: readonly Named[]): Form => ({
  revision: String(revision),
  diets: diets.map((diet) => ({
    ...diet,
    avoidsIngredients: diet.avoidsIngredients
      .map((key) => ingredients.find((one) => one.key === key)?.name ?? key)
      .join('; '),
  })),
});

/** The diets as the form says, with what can't be read noted in `reading`; a row without a name or anything is none. */
export const readOwnDiets = (
  reading: Reading,
  ingredients: readonly Named[],
  isTaken: (key: string) => boolean,
): OwnDiet[] => {
  const list = rows(reading.form, 'diets');
  const taken = new Set(list.map((row) => text(row, 'key')).filter(Boolean));
  return list.flatMap((row, i) => {
    const at = `diets[${i}]`;
    const avoidsTraits = traits.filter((trait) => texts(row, 'avoidsTraits').includes(trait));
    const avoidsAllergens = texts(row, 'avoidsAllergens').filter((id) => allergenIds.has(id));
    const typed = text(row, 'avoidsIngredients').trim();
    const blank = typed === '' && avoidsTraits.length + avoidsAllergens.length === 0;
    if (blank && text(row, 'name').trim() === '' && text(row, 'key') === '') return [];
    const name = reading.words(`${at}.name`, 'Diet', 'Say what this diet is called, such as no chilli.');
    const avoidsIngredients = reading.take(
      `${at}.avoidsIngredients`,
      `${name || 'Diet'}, ingredients`,
      (words) => readAvoids(words, ingredients),
      [],
    );
    row.key = text(row, 'key') || keyFrom(name, (key) => taken.has(key) || isTaken(key));
    taken.add(row.key);
    const kind = reading.oneOf(`${at}.kind`, dietKinds, 'choice');
    return [{ key: row.key, name, kind, avoidsTraits, avoidsAllergens, avoidsIngredients }];
  });
};
