import { type CostKind, costKinds, type WorkHours, workHours } from '../../core/facts/cost-line.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import type { Choice } from '../fields.js';
import { type Form, rows, text } from '../form.js';
import { formatFor } from '../format.js';
import type { Basis } from './form.js';

export type LineChoices = {
  kinds: Choice[];
  bases: Choice[];
  works: Choice[];
  people: Choice[];
  shares: Choice[];
};

export const kindWords: Record<CostKind, string> = {
  hands: 'People’s time',
  hire: 'Hire',
  travel: 'Travel',
  venue: 'Venue',
  energy: 'Energy',
  packaging: 'Packaging',
  sundries: 'Sundries',
  overhead: 'Overhead',
  contingency: 'Contingency',
  other: 'Something else',
};

const basisWords: Record<Basis, string> = {
  fixed: 'once for the event',
  aGuest: 'for each guest',
  step: 'for every so many guests',
  hours: 'hours at a rate',
  percent: 'per cent of other costs',
};

const workWords: Record<WorkHours | 'typed', string> = {
  typed: 'as many as I say',
  cooking: 'cooking, by the recipes',
  driving: 'driving there and back',
  ovens: 'ovens, by the recipes',
  rings: 'hob, by the recipes',
};

/** What the row of a cost line offers; somebody who left the kitchen still stands where a line names them. */
export const lineChoices = (kitchen: Kitchen, form: Form): LineChoices => {
  const f = formatFor(kitchen);
  const named = rows(form, 'costs').map((row) => text(row, 'person'));
  const gone = [...new Set(named)].filter(
    (person) => person !== '' && kitchen.people.every(({ key }) => key !== person),
  );
  return {
    kinds: costKinds.map((value) => ({ value, label: kindWords[value] })),
    bases: Object.entries(basisWords).map(([value, label]) => ({ value, label })),
    works: (['typed', ...workHours] as const).map((value) => ({ value, label: workWords[value] })),
    people: [
      { value: '', label: 'nobody by name' },
      ...kitchen.people.map(({ key, name, hourlyCost }) => ({
        value: key,
        label: hourlyCost === null ? `${name}, hour not known` : `${name}, ${f.money(hourlyCost)}`,
      })),
      ...gone.map((value) => ({ value, label: `${value}, who left` })),
    ],
    shares: [
      { value: 'food', label: 'of the food' },
      { value: 'costs', label: 'of all above it' },
    ],
  };
};
