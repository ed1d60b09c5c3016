import { listOf, type State } from '../../core/allergens.js';
import type { Ingredient } from '../../core/facts/ingredient.js';
import { type Marked, plainProduce, type Stamp, wholeLabelRead, withMarks } from '../../core/label.js';
import { type LabelEntry, labelOf } from '../../core/label-entries.js';
import { readPastDay, typedDay } from '../../core/reading-days.js';
import type { Reading } from '../faults.js';
import { text } from '../form.js';
import type { At, Part } from './part.js';

export type LabelAround = { entries: LabelEntry[]; list: string; named: boolean };

const states = ['contains', 'may', 'free', 'unknown'] as const;

/** What its label says of each entry of the allergen list in force. */
export const label: Part<LabelAround> = {
  name: 'label',
  title: 'Label',
  button: 'Save what is marked',
  form: (doc, { kitchen, today, who }) => {
    const entries = labelOf(doc, listOf(kitchen));
    return {
      entries: Object.fromEntries(entries.map(({ item, state }) => [item.id, state])),
      states: Object.fromEntries(entries.flatMap(markedRows).map(({ id, state }) => [id, state])),
      source: 'label',
      date: typedDay(today),
      by: who || lastReader(doc),
    };
  },
  read: (reading, doc, at) => {
    const asked = text(reading.form, 'do');
    const stamp = readStamp(reading, asked, at);
    const marked = markedIn(reading, doc, at);
    const list = listOf(at.kitchen);
    if (asked === 'plain') refusePlain(reading, doc, marked, at);
    for (const { entry, substance } of withMarks(doc, list, marked, stamp).conflicts)
      reading.refuse(
        `entries.${entry.id}`,
        entry.short,
        `${entry.name}: marked as not listed, and ${substance} as listed. Change one of them.`,
      );
    return (before) => {
      const { allergens } = withMarks(before, list, marked, stamp);
      const now = { ...before, allergens };
      if (asked === 'whole') return { ...now, allergens: wholeLabelRead(now, list, stamp) };
      return asked === 'plain' ? { ...now, allergens: plainProduce(now, list, stamp.by) } : now;
    };
  },
  around: (doc, _form, { kitchen }) => {
    const entries = labelOf(doc, listOf(kitchen));
    const named = entries.some(({ state }) => state === 'contains' || state === 'may');
    return { entries, list: listOf(kitchen).name, named };
  },
};

/** What stands under an entry: its substances, and what was said of some without saying which. */
const markedRows = ({ states, group }: LabelEntry) => [...states, ...(group ? [group] : [])];

const lastReader = ({ allergens }: Ingredient): string =>
  Object.values(allergens)
    .filter(({ by }) => by !== '')
    .sort((a, b) => ((a.date ?? '') < (b.date ?? '') ? 1 : -1))[0]?.by ?? '';

/** Reading the whole label is reading a label; the cook's word has no date. */
const readStamp = (reading: Reading, asked: string, { today }: At): Stamp => {
  const by = reading.text('by');
  const chosen = reading.oneOf('source', ['label', 'cook', 'reference'], 'label');
  const source = asked === 'whole' ? 'label' : asked === 'plain' ? 'cook' : chosen;
  if (source !== 'label') return { source, date: null, by };
  const date = reading.take('date', 'Label read on', (typed) => readPastDay(typed, today), today);
  return { source, date, by };
};

const markedIn = (reading: Reading, doc: Ingredient, { kitchen }: At): Marked => {
  const entries: Record<string, State> = {};
  const substances: Record<string, State> = {};
  for (const entry of labelOf(doc, listOf(kitchen))) {
    const { id: law } = entry.item;
    entries[law] = reading.oneOf(`entries.${law}`, states, 'unknown');
    for (const { id } of markedRows(entry)) substances[id] = reading.oneOf(`states.${id}`, states, 'unknown');
  }
  return { entries, states: substances };
};

const refusePlain = (reading: Reading, doc: Ingredient, { entries }: Marked, { kitchen }: At): void => {
  for (const { item } of labelOf(doc, listOf(kitchen)))
    if (entries[item.id] === 'contains' || entries[item.id] === 'may')
      reading.refuse(
        `entries.${item.id}`,
        item.short,
        `${item.name} is marked, so this is no plain produce with nothing on the list. Mark it as not listed first if that is wrong.`,
      );
};
