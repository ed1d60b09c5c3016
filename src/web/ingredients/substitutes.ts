import type { Ingredient, Substitute } from '../../core/facts/ingredient.js';
import { readMoreThanZero } from '../../core/reading.js';
import { namesOf } from '../../store/names.js';
import { asWritten } from '../as-written.js';
import type { Reading } from '../faults.js';
import { type Form, text } from '../form.js';
import { inOrder } from '../listing.js';
import { Items } from '../recipes/items.js';
import { rowsChanged, withKeys } from '../rows.js';
import type { At, Part } from './part.js';

export type SubstitutesAround = { items: { name: string; isRecipe: boolean }[] };

/** What may stand in for it, how much of it, and what to mind. */
export const substitutes: Part<SubstitutesAround> = {
  name: 'substitutes',
  title: 'What may stand in for it',
  button: 'Save what may stand in for it',
  form: async (doc, at) => {
    const items = await itemsOf(at);
    const list = doc.substitutes.map(
      ({ key, item, ratio, caution }): Form => ({ key, item: items.textOf(item), ratio, caution }),
    );
    return { substitutes: list.length > 0 ? list : [{}] };
  },
  press: (form) => rowsChanged(form),
  read: async (reading, doc, at) => {
    const items = await itemsOf(at);
    const read = readSubstitutes(reading, doc, items);
    return (before) => asWritten(before, { ...before, substitutes: read });
  },
  around: async (doc, _form, at) => ({
    items: inOrder((await itemsOf(at)).offered, at.kitchen.locale).filter(({ name }) => name !== doc.name),
  }),
};

const itemsOf = async ({ db }: At): Promise<Items> => new Items(await namesOf(db));

const isBlank = (row: Form): boolean =>
  ['item', 'ratio', 'caution'].every((name) => text(row, name).trim() === '');

const readSubstitutes = (reading: Reading, doc: Ingredient, items: Items): Substitute[] => {
  const all = withKeys(reading.form, 'substitutes', 's');
  return all.flatMap((row, i) => {
    if (isBlank(row)) return [];
    const label = `Substitute ${i + 1}`;
    const at = `substitutes[${i}]`;
    const old = doc.substitutes.find(({ key }) => key === text(row, 'key'));
    return [
      {
        key: text(row, 'key'),
        item: readItem(reading, `${at}.item`, `${label}: what`, items) ??
          old?.item ?? { ingredient: doc.key },
        ratio:
          text(row, 'ratio').trim() === ''
            ? '1'
            : reading.take(`${at}.ratio`, `${label}: how much`, readMoreThanZero, '1'),
        caution: text(row, 'caution').trim(),
      },
    ];
  });
};

const readItem = (
  reading: Reading,
  field: string,
  label: string,
  items: Items,
): Substitute['item'] | undefined => {
  const typed = reading.text(field);
  if (typed === '') return refused(reading, field, label, 'Type what stands in for it, or take the row out.');
  const found = items.find(typed);
  if ('item' in found) return found.item;
  if ('both' in found)
    return refused(
      reading,
      field,
      label,
      `There is an ingredient and a recipe ${found.both}: type which, as "${found.both} (recipe)".`,
    );
  const near = found.near.length > 0 ? ` Did you mean ${found.near.join(' or ')}?` : ' Add it first.';
  return refused(reading, field, label, `There is no ingredient or recipe called ${typed}.${near}`);
};

const refused = (reading: Reading, field: string, label: string, sentence: string): undefined => {
  reading.refuse(field, label, sentence);
};
