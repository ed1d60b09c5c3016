import type { Kitchen } from '../../core/facts/kitchen.js';
import type { Tin } from '../../core/facts/recipe.js';
import { readTin, type Shape } from '../../core/reading-tins.js';
import { sidesInWords } from '../../core/tins.js';
import type { Reading } from '../faults.js';
import type { Choice } from '../fields.js';
import type { Form } from '../form.js';
import { typedAmount } from '../typed.js';

export const shapeChoices: (Choice & { value: Shape })[] = [
  { value: 'round', label: 'round' },
  { value: 'square', label: 'square' },
  { value: 'rectangular', label: 'rectangular' },
  { value: 'ring', label: 'ring' },
  { value: 'loaf', label: 'loaf' },
];

/** A recipe's tin as its form shows it. */
export const tinForm = (tin: Tin | null): Form => ({
  shape: tin?.shape ?? 'round',
  sides: tin ? sidesInWords(tin) : '',
  count: tin && tin.count > 1 ? String(tin.count) : '',
  depth: tin?.depth ? `${typedAmount(tin.depth)} ${tin.unit}` : '',
});

/** The tin a recipe's form says, with what can't be read noted in `reading`; none where nothing is typed. */
export const readRecipeTin = (reading: Reading, kitchen: Kitchen): Tin | null => {
  const typed = (name: string) => reading.text(`tin.${name}`);
  const [sides, count, depth] = [typed('sides'), typed('count'), typed('depth')];
  if (sides === '' && count === '' && depth === '') return null;
  const labels = { shape: 'Tin', sides: 'Tin, inside', count: 'Tins, how many', depth: 'Tin, depth' };
  return readTin({ shape: typed('shape'), sides, count, depth }, kitchen, (field, sentence) =>
    reading.refuse(`tin.${field}`, labels[field], sentence),
  );
};
