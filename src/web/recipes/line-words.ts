import type { Line } from '../../core/facts/recipe.js';
import type { Choice } from '../fields.js';

/** How a line may scale, as the form of a recipe offers it. */
export const scaleChoices: (Choice & { value: Line['scales'] })[] = [
  { value: 'straight', label: 'straight' },
  { value: 'pieces', label: 'whole pieces' },
  { value: 'herb', label: 'as a herb' },
  { value: 'chilli', label: 'as hot chilli' },
  { value: 'batch', label: 'once a batch' },
  { value: 'flour', label: 'as flour' },
  { value: 'taste', label: 'to taste' },
];

/** What a quantity may state. */
export const statedChoices: (Choice & { value: Line['stated'] })[] = [
  { value: 'usual', label: 'the usual: weights prepared, counts as bought' },
  { value: 'prepared', label: 'the prepared amount' },
  { value: 'bought', label: 'the amount as bought' },
  { value: 'cooked', label: 'the weight once cooked' },
];
