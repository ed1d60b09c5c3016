import type { Ingredient } from '../../core/facts/ingredient.js';
import { readWhole } from '../../core/reading.js';
import { typedNumber } from '../typed.js';
import type { Part } from './part.js';

export const keepingStates = ['unopened', 'opened', 'cooked', 'frozen', 'thawed'] as const;

/** How long it keeps in each state. */
export const keeping: Part = {
  name: 'keeping',
  title: 'Keeping',
  button: 'Save keeping days',
  form: (doc) => ({
    keeping: Object.fromEntries(keepingStates.map((state) => [state, typedNumber(doc.keeping[state])])),
  }),
  read: (reading) => {
    const days = (state: (typeof keepingStates)[number]) =>
      reading.maybe(`keeping.${state}`, `Keeps ${state}`, (typed) =>
        readWhole(typed, `days it keeps ${state}`, 0, 3650),
      );
    const read = Object.fromEntries(keepingStates.map((state) => [state, days(state)]));
    return (before) => ({ ...before, keeping: read as Ingredient['keeping'] });
  },
  around: () => ({}),
};
