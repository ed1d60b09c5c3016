import { allergenIds } from '../allergens.js';
import type { Ingredient, Pack } from '../facts/ingredient.js';
import type { Known } from '../known.js';
import { normalName } from '../names.js';
import { isMeasured } from '../quantity/units.js';
import { isZero, meant, ownKeys, ownName, ownUnit, type Refuse } from './refuse.js';
import { substituteRules } from './substitutes.js';

/** Why an ingredient cannot be saved. */
export const ingredientRules = (ingredient: Ingredient, known: Known, refuse: Refuse): void => {
  ownName('an ingredient', known.namesake, refuse);
  ownKeys('packs', ingredient.packs, refuse);
  for (const pack of ingredient.packs) packRules(pack, refuse);
  if (ingredient.packs.filter(({ preferred }) => preferred).length > 1)
    refuse('packs', 'two-preferred', 'Lines are priced at one pack: mark one as preferred, not several.');
  figures(ingredient, refuse);
  cooked(ingredient, refuse);
  substituteRules(ingredient, known, refuse);
  for (const id of Object.keys(ingredient.allergens))
    if (!allergenIds.has(id))
      refuse(
        `allergens/${id}`,
        'no-such-allergen',
        `"${id}" is no allergen of the lists this workbook knows.${meant(id, allergenIds)}`,
      );
};

const packRules = (pack: Pack, refuse: Refuse): void => {
  ownKeys(`packs/${pack.key}/prices`, pack.prices, refuse);
  ownUnit(`packs/${pack.key}/size`, pack.size.unit, refuse);
  if (isZero(pack.size.amount))
    refuse(`packs/${pack.key}/size`, 'pack-empty', 'A pack holds more than 0: type what one pack holds.');
};

const figures = ({ edibleYield, density, weights }: Ingredient, refuse: Refuse): void => {
  if (edibleYield && isZero(edibleYield.yield))
    refuse(
      'edibleYield',
      'yield-zero',
      'An edible yield of 0 would mean that nothing can be eaten of it: type a share such as 0.9, or leave it empty when not known.',
    );
  if (density && isZero(density.gramsPerMl))
    refuse('density', 'density-zero', 'A density is more than 0: type grams in one ml, or leave it empty.');
  const seen = new Set<string>();
  for (const { unit, grams } of weights) {
    ownUnit('weights', unit, refuse);
    if (isMeasured(unit))
      refuse('weights', 'weight-of-measure', `${unit} is a measure, not a piece: its weight is the density.`);
    if (isZero(grams)) refuse('weights', 'weight-zero', `One ${unit} weighs more than 0 g.`);
    if (seen.has(unit)) refuse('weights', 'weight-twice', `The weight of one ${unit} stands twice.`);
    seen.add(unit);
  }
};

const cooked = ({ cookedYields }: Ingredient, refuse: Refuse): void => {
  const seen = new Set<string>();
  for (const { name, yield: share } of cookedYields) {
    if (isZero(share))
      refuse(
        'cookedYields',
        'cooked-yield-zero',
        `A cooked yield of 0 would mean that nothing is left of it once ${name}: type a share such as 0.584, or take it out while it is not known.`,
      );
    if (seen.has(normalName(name)))
      refuse(
        'cookedYields',
        'cooked-yield-twice',
        `The yield once ${name} stands twice: keep one, or give the other a name of its own, such as "${name}, off the bone".`,
      );
    seen.add(normalName(name));
  }
};
