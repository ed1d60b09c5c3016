import type { Answer } from '../problem.js';
import type { FullLabel } from './full-label.js';
import { wordsOf } from './label-list.js';
import { cautions, type Sheet } from './sheet.js';

export const labelRules = {
  order:
    'Ingredients stand in descending order of their weight at the time of use (Regulation (EU) No 1169/2011, article 18(1)), a compound’s own list in brackets after its name.',
  water:
    'Added water stands by what is left of it in the finished food where that is known (Annex VII, part A, 1); what goes in to taste stands last (under 2 % in any order, part A, 6).',
  law: 'For food packed before it is ordered and sold from the same place: name and full list of ingredients with the allergens emphasised (Food Information (Amendment) (England) Regulations 2019). Check your local law and take qualified advice.',
} as const;

/** The full label as tables: the label in words, and its entries with their exact weights. */
export const fullLabelSheet = ({ value, problems }: Answer<FullLabel>): Sheet => {
  const { recipe, parts, runs, may, notChecked, complete, made, useBy, labels } = value;
  return {
    sheet: 'full-label',
    title: recipe.name,
    about: {
      recipe: recipe.key,
      ingredients: wordsOf(runs),
      mayContain: may.join(', '),
      notChecked: notChecked.map(({ name }) => name).join(', '),
      complete: String(complete),
      made,
      useBy: useBy ?? '',
      labelsFrom: labels?.first ?? '',
      labelsTo: labels?.last ?? '',
    },
    get tables() {
      return [
        {
          name: 'ingredients',
          title: 'Ingredients in order',
          columns: [
            { key: 'place', label: 'Place' },
            { key: 'name', label: 'Ingredient or component' },
            { key: 'weight', label: 'Weight in one batch', unit: 'g' },
            { key: 'toTaste', label: 'To taste' },
            { key: 'words', label: 'As it stands on the label' },
          ],
          rows: parts.map(({ name, grams, toTaste, runs: words }, i) => ({
            place: String(i + 1),
            name,
            weight: grams?.toString() ?? '',
            toTaste: String(toTaste),
            words: wordsOf(words),
          })),
        },
      ];
    },
    problems,
    foot: [labelRules.order, labelRules.water, labelRules.law, cautions.allergens, cautions.keeping],
  };
};
