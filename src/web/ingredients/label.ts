import { type AllergenList, listOf, type State } from '../../core/allergens.js';
import type { Ingredient } from '../../core/facts/ingredient.js';
import { type Marked, plainProduce, type Stamp, wholeLabelRead, withMarks } from '../../core/label.js';
import { isOfPackBefore } from '../../core/label-again.js';
import { type LabelEntry, labelOf } from '../../core/label-entries.js';
import { notPlain } from '../../core/plain-produce.js';
import { readPastDay, typedDay } from '../../core/reading-days.js';
import { photographOf } from '../../store/label-photographs.js';
import { Reading } from '../faults.js';
import { text } from '../form.js';
import { formatFor } from '../format.js';
import {
  asRead,
  isNew,
  type LabelWordsAround,
  markedRows,
  marksForm,
  refuseUnsettled,
  reread,
  typedText,
  withWords,
  wordsAround,
} from './label-words.js';
import type { At, Part } from './part.js';

export type LabelAround = LabelWordsAround & {
  entries: LabelEntry[];
  list: string;
  named: boolean;
  /** The day the photograph was taken, and whether it shows the pack bought now; one that was taken out. */
  photograph: { taken: string; former: boolean } | undefined;
  takenOut: string;
};

const states = ['contains', 'may', 'free', 'unknown'] as const;
const mostWords = 8000;

/** What its label says: its words, and for each entry of the allergen list in force what they name. */
export const label: Part<LabelAround> = {
  name: 'label',
  title: 'Label',
  button: 'Save what is marked',
  form: (doc, { kitchen, today, who }) => ({
    words: doc.labelText,
    readFrom: doc.labelText,
    ...marksForm(labelOf(doc, listOf(kitchen))),
    source: 'label',
    date: typedDay(today),
    by: who || lastReader(doc),
    photograph: '',
    taken: typedDay(today),
  }),
  press: (form, doc, at) => {
    if (text(form, 'do') !== 'read' || typedText(form).length > mostWords) return undefined;
    const stamp: Stamp = { source: 'label', date: at.today, by: '' };
    const marked = markedIn(new Reading(form), asRead(doc, form, stamp), at);
    return { form: reread(form, doc, marked, stamp, at), at: 'words' };
  },
  read: (reading, doc, at) => {
    const asked = text(reading.form, 'do');
    const stamp = readStamp(reading, asked, at);
    const labelText = typedText(reading.form);
    if (labelText.length > mostWords) {
      reading.refuse(
        'words',
        'The label’s words',
        `A label has at most ${mostWords} signs here. Leave out what is no list of ingredients.`,
      );
      return (before) => before;
    }
    const sent = { ...reading.form };
    const fresh = isNew(doc, sent, asked);
    const marked = markedIn(reading, asRead(doc, sent, stamp), at);
    if (fresh) Object.assign(reading.form, reread(sent, doc, marked, stamp, at));
    if (fresh) refuseUnsettled(reading);
    refuseConflicts(reading, asRead(doc, sent, stamp), marked, stamp, at);
    const list = listOf(at.kitchen);
    const settled = { ...sent, settle: reading.form.settle ?? [] };
    const allergensOf = (before: Ingredient) => {
      const { allergens } = withMarks(asRead(before, sent, stamp), list, marked, stamp);
      return fresh ? withWords(allergens, settled, stamp) : allergens;
    };
    if (asked === 'plain') refusePlain(reading, { ...doc, allergens: allergensOf(doc) }, at);
    return (before) => {
      const labelDate = fresh ? (labelText === '' ? null : (stamp.date ?? at.today)) : before.labelDate;
      const now = { ...before, allergens: allergensOf(before), labelText, labelDate };
      if (asked === 'whole') return wholly(now, list, stamp);
      return asked === 'plain' ? { ...now, allergens: plainProduce(now, list, stamp.by) } : now;
    };
  },
  around: async (doc, form, { kitchen, today, db }) => {
    const stamp: Stamp = { source: 'label', date: today, by: '' };
    const entries = labelOf(asRead(doc, form, stamp), listOf(kitchen));
    const named = entries.some(({ state }) => state === 'contains' || state === 'may');
    const shown = await photographOf(db, doc.key);
    const f = formatFor(kitchen);
    return {
      entries,
      list: listOf(kitchen).name,
      named,
      photograph: shown.standing && {
        taken: f.dateYear(shown.standing.taken),
        former: isOfPackBefore(shown.standing, doc),
      },
      takenOut: !shown.standing && shown.former ? f.dateYear(shown.former.taken) : '',
      ...wordsAround(doc, form),
    };
  },
};

/** The whole label was read: the rest of the list is not listed, and its words were read that day too. */
const wholly = (now: Ingredient, list: AllergenList, stamp: Stamp): Ingredient => ({
  ...now,
  allergens: wholeLabelRead(now, list, stamp),
  labelDate: now.labelText === '' ? null : stamp.date,
});

const refuseConflicts = (
  reading: Reading,
  doc: Ingredient,
  marked: Marked,
  stamp: Stamp,
  { kitchen }: At,
): void => {
  for (const { entry, substance } of withMarks(doc, listOf(kitchen), marked, stamp).conflicts)
    reading.refuse(
      `entries.${entry.id}`,
      entry.short,
      `${entry.name}: marked as not listed, and ${substance} as listed. Change one of them.`,
    );
};

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

/** Whatever is named, on the form, in the words or by its own name, speaks against plain produce. */
const refusePlain = (reading: Reading, doc: Ingredient, { kitchen }: At): void => {
  const byName = notPlain(doc);
  if (byName !== '') reading.refuse('words', 'Plain produce', `${doc.name} is not taken as plain. ${byName}`);
  for (const { item, state } of labelOf(doc, listOf(kitchen)))
    if (state === 'contains' || state === 'may')
      reading.refuse(
        `entries.${item.id}`,
        item.short,
        `${item.name} is marked, so this is no plain produce with nothing on the list. Mark it as not listed first if that is wrong.`,
      );
};
