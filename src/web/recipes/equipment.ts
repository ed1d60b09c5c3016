import { loadWords, panWords, tinWords } from '../../core/equipment-words.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { ingredientOf } from '../../core/lookup.js';
import { inWords, showQuantity } from '../../core/quantity/show.js';
import type { Quantity } from '../../core/quantity/units.js';
import type { ScaledRecipe } from '../../core/sheets/scaled-recipe.js';
import { formatFor } from '../format.js';
import { measureInWords } from '../typed.js';

/** What a scaled recipe takes beside its ingredients and what is left over, a sentence each: of all, and of its steps. */
export const equipmentNotes = (scaled: ScaledRecipe): { whole: string[]; steps: string[] } => {
  const { equipment, facts } = scaled;
  const f = formatFor(facts.kitchen);
  const tins = tinWords(equipment);
  const steps = equipment.steps.flatMap(({ number, trays, pans, shelves, step }) => {
    const loads = shelves ? loadWords(shelves, step, facts.kitchen) : '';
    return [
      ...(pans ? [`Step ${number}: ${panWords(pans, facts.kitchen)}.`] : []),
      ...(trays !== undefined ? [`Step ${number}: ${f.count(trays, 'tray')}${loads && `, ${loads}`}.`] : []),
    ];
  });
  return { whole: [...askedWords(scaled), ...(tins ? [`${tins}.`] : [])], steps };
};

/** What was asked for in another way than portions, and what whole batches leave over. */
const askedWords = ({ asked, facts, left, factor }: ScaledRecipe): string[] => {
  if (!asked || !factor) return [];
  const words: string[] = [];
  if ('have' in asked) {
    const { name } = ingredientOf(asked.of, facts);
    words.push(
      `As far as ${measureInWords(asked.have)} of ${name}, ${asked.as === 'prepared' ? 'prepared' : 'as bought'}, goes.`,
    );
  }
  if (asked.wholeBatches)
    words.push(`${inWords({ figure: factor.toString(), unit: 'batch' })}, ${over(left, facts.kitchen)}.`);
  return words;
};

const over = (left: Quantity | undefined, kitchen: Kitchen): string => {
  if (!left) return 'nothing left over';
  const much = inWords(
    showQuantity({ ...left, value: left.value.sign < 0 ? left.value.negated() : left.value }, kitchen),
    'each',
  );
  return left.value.sign < 0 ? `and what would make ${much} more is left` : `${much} left over`;
};
