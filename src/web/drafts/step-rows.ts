import { type Need, needsOf } from '../../core/exchange/draft/presets.js';
import type { RecipeDraft } from '../../core/exchange/recipe/draft.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { asDialled, typedHeat } from '../../core/reading-measures.js';
import type { Fields } from '../fields.js';
import { type Form, rows, text } from '../form.js';
import { formatFor } from '../format.js';
import { readAt, stepState } from './states.js';

/** A step beside its source: its minutes, whether somebody stands there, and what else it needs, in words. */
export type StepRow = {
  at: string;
  place: number;
  source: string;
  out: boolean;
  open: boolean;
  shown: boolean;
  untimed: boolean;
  because: string[];
  needs: string;
};

export const stepRows = (form: Form, read: RecipeDraft, kitchen: Kitchen, fields: Fields): StepRow[] =>
  rows(form, 'steps').map((row, place) => {
    const at = `steps[${place}]`;
    const source = readAt(read.steps, row);
    const { out, open, because } = stepState(row, source);
    const rare = ['words', 'longest', 'oven', 'tolerance', 'rings', 'mixers', 'fridgeShelves', 'equipment'];
    return {
      at,
      place,
      source: source?.words ?? '',
      out,
      open,
      shown: !source || rare.some((name) => fields.fault(`${at}.${name}`)),
      untimed: text(row, 'untimed') === 'on' && text(row, 'minutes').trim() === '',
      because: open ? because : [],
      needs: needsInWords(row, source && needsOf(source), kitchen),
    };
  });

const fieldOf: Partial<Record<Need, string>> = {
  oven: 'oven',
  rings: 'rings',
  fridgeShelves: 'fridgeShelves',
};

/** "Oven 200 °C, 1 hob ring (usual for a roast)" */
const needsInWords = (row: Form, read: ReturnType<typeof needsOf> | undefined, kitchen: Kitchen): string => {
  const f = formatFor(kitchen);
  const typed = (name: string) => text(row, name).trim();
  const usual = (need: Need): string => {
    if (!read?.preset.includes(need)) return '';
    const own =
      need === 'oven'
        ? typedHeat(asDialled(read.needs.oven?.heat ?? 0, kitchen), kitchen)
        : String(read.needs[need]);
    return typed(fieldOf[need] ?? '') === own ? `, preset: usual for ${read.kind}` : '';
  };
  const counted = (name: 'rings' | 'mixers' | 'fridgeShelves', noun: string) =>
    /^[1-9]\d*$/.test(typed(name)) ? `${f.count(Number(typed(name)), noun)}${usual(name)}` : '';
  const said = [
    typed('longest') &&
      `at most ${/^\d+$/.test(typed('longest')) ? `${typed('longest')} min` : typed('longest')}`,
    typed('oven') && `oven ${typed('oven')} °${kitchen.heat}${usual('oven')}`,
    counted('rings', 'hob ring'),
    counted('mixers', 'mixer'),
    counted('fridgeShelves', 'fridge shelf'),
    typed('equipment') && `food touches the ${typed('equipment')}`,
  ].filter(Boolean);
  const words = said.join('; ');
  return words && `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
};
