import published from '../../../shared/allergens.json' with { type: 'json' };
import { allergenName, listOf } from '../../core/allergens.js';
import type { Ingredient } from '../../core/facts/ingredient.js';
import { type Marked, type Stamp, withMarks } from '../../core/label.js';
import { type LabelEntry, labelOf } from '../../core/label-entries.js';
import { marksOf, withLabelRead } from '../../core/label-marks.js';
import { type Led, type Remark, readLabel } from '../../core/label-text.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import type { At } from './part.js';

export type FoundRow = { state: 'contains' | 'may'; name: string; words: string };
export type LabelWordsAround = {
  found: FoundRow[];
  unsettled: Remark[];
  aside: Remark[];
  /** The words are of a pack before, so nothing is read from them until they are said to be the label again. */
  former: boolean;
  allergens: { value: string; label: string }[];
};

type Allergens = Ingredient['allergens'];

export const typedText = (form: Form): string => text(form, 'words').trim();

/** The words that the form's marks were last set from. */
const lastRead = (form: Form): string => text(form, 'readFrom').trim();

/** The ingredient as the form's marks see it: what the words last read name stands beside what is stored. */
export const asRead = (doc: Ingredient, form: Form, stamp: Stamp): Ingredient => {
  const read = lastRead(form);
  if (read === doc.labelText) return doc;
  return { ...doc, allergens: withLabelRead(doc.allergens, read, '', stamp) };
};

/** Whether the words say something that the stored marks do not hold yet. */
export const isNew = (doc: Ingredient, form: Form, asked: string): boolean =>
  typedText(form) !== doc.labelText || (asked === 'whole' && doc.labelDate === null);

/** The allergens once the words are read over the form's marks and what was not understood is settled. */
export const withWords = (allergens: Allergens, form: Form, stamp: Stamp): Allergens => {
  const after = withLabelRead(allergens, typedText(form), lastRead(form), stamp);
  for (const { as } of settledIn(form))
    if (known.has(as) && after[as]?.state !== 'contains') after[as] = { state: 'contains', ...stamp };
  return after;
};

const known = new Map([...published.substances, ...published.groups].map(({ id, name }) => [id, name]));

/** What the cook said of each word that was not understood; "none" is no allergen on any list. */
const settledIn = (form: Form): { words: string; as: string }[] =>
  rows(form, 'settle').map((row) => ({ words: text(row, 'words'), as: text(row, 'as') }));

/** The rows to settle for the words as they are now, with what was said of the same words before. */
const settleRows = (form: Form): Form[] => {
  const said = new Map(settledIn(form).map(({ words, as }) => [words, as]));
  return readLabel(typedText(form))
    .unsettled.slice(0, 40)
    .map(({ words }) => ({ words, as: said.get(words) ?? '' }));
};

/** Refuses a save while a word is not settled. */
export const refuseUnsettled = (reading: Reading): void => {
  rows(reading.form, 'settle').forEach((row, i) => {
    const as = text(row, 'as');
    if (as !== 'none' && !known.has(as))
      reading.refuse(
        `settle[${i}].as`,
        `“${text(row, 'words')}”`,
        'These words do not tell by themselves: say which allergen it is, or that it is none.',
      );
  });
};

/** The form with its marks set from the words typed. */
export const reread = (form: Form, doc: Ingredient, marked: Marked, stamp: Stamp, { kitchen }: At): Form => {
  const list = listOf(kitchen);
  const before = withMarks(asRead(doc, form, stamp), list, marked, stamp).allergens;
  const settle = settleRows(form);
  const allergens = withWords(before, form, stamp);
  const marks = marksForm(labelOf({ ...doc, allergens }, list));
  return { ...form, ...marks, settle, readFrom: typedText(form) };
};

/** What stands under an entry: its substances, and what was said of some without saying which. */
export const markedRows = ({ states, group }: LabelEntry) => [...states, ...(group ? [group] : [])];

export const marksForm = (entries: readonly LabelEntry[]): Form => ({
  entries: Object.fromEntries(entries.map(({ item, state }) => [item.id, state])),
  states: Object.fromEntries(entries.flatMap(markedRows).map(({ id, state }) => [id, state])),
});

/** What the page says of the words: what they name and why, what is to settle, what was set aside. */
export const wordsAround = (doc: Ingredient, form: Form): LabelWordsAround => {
  const words = lastRead(form);
  const former = words !== '' && words === doc.labelText && doc.labelDate === null;
  const { unsettled, aside, ...reading } = readLabel(former ? '' : words);
  const found = [...marksOf({ ...reading, unsettled, aside }).values()].map(({ id, state, led }) => ({
    state,
    name: allergenName(id),
    words: led.map(ledWords).join('; '),
  }));
  return {
    found,
    unsettled: words === doc.labelText && rows(form, 'settle').length === 0 ? [] : unsettled,
    aside,
    former,
    allergens: [
      { value: '', label: 'choose' },
      { value: 'none', label: 'no allergen on any list' },
      ...[...known].map(([value, label]) => ({ value, label })),
    ],
  };
};

/** “whey”, by common practice; “nuts” after “May contain”; “MILK”, set apart */
const ledWords = ({ words, said, emphasised, why }: Led): string =>
  [`“${words}”${said && ` after “${said}”`}`, emphasised ? 'set apart' : '', why].filter(Boolean).join(', ');
