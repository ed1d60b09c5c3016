import { type Ingredient, ingredient } from '../../core/facts/ingredient.js';
import { type Line, scalings, stateds } from '../../core/facts/recipe.js';
import { normalName } from '../../core/names.js';
import { isRead, readUnitWord } from '../../core/reading.js';
import { readRange, readRangeWithUnit } from '../../core/reading-range.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import { keyFrom } from '../keys.js';
import type { FoundItem, Items } from './items.js';

/** Ingredients that a form is the first to name, by their names as compared. */
export type Added = Map<string, Ingredient>;

const lineFields = ['amount', 'unit', 'item', 'preparation'];
const isBlank = (row: Form): boolean => lineFields.every((name) => text(row, name).trim() === '');

/**
 * The lines a form says, with what can't be read noted in `reading`; rows left blank are no lines. New rows get a key
 * by what they name, so that lines that two people add do not meet.
 */
export const readLines = (reading: Reading, items: Items, isTaken: (key: string) => boolean) => {
  const all = rows(reading.form, 'lines');
  const added: Added = new Map();
  const lines = all.flatMap((row, at) => {
    if (isBlank(row)) return [];
    const line = readLine(reading, row, `lines[${at}]`, about(row, at), { items, added, isTaken });
    const taken = all.map((other) => text(other, 'key'));
    if (text(row, 'key') === '') row.key = keyFrom(text(row, 'item'), (key) => taken.includes(key));
    return line ? [{ ...line, key: text(row, 'key') }] : [];
  });
  return { lines, added: [...added.values()] };
};

/** "Line 4, rapeseed oil" */
const about = (row: Form, at: number): string => {
  const name = text(row, 'item').split(',')[0]!.trim();
  return name ? `Line ${at + 1}, ${name.charAt(0).toLowerCase()}${name.slice(1)}` : `Line ${at + 1}`;
};

type Context = { items: Items; added: Added; isTaken: (key: string) => boolean };

const readLine = (
  reading: Reading,
  row: Form,
  at: string,
  label: string,
  context: Context,
): Omit<Line, 'key'> | undefined => {
  const scales = reading.oneOf(`${at}.scales`, scalings, 'straight');
  const measure = readQuantity(reading, at, label, scales === 'taste');
  const item = readItem(reading, row, at, label, context);
  if (!item) return undefined;
  return {
    ...measure,
    item,
    preparation: reading.text(`${at}.preparation`),
    stated: reading.oneOf(`${at}.stated`, stateds, 'usual'),
    cooked: reading.text(`${at}.cooked`),
    scales,
  };
};

type Measured = Pick<Line, 'amount' | 'amountTo' | 'unit'>;

/** Quantity and unit; "700 g" and "2 x 400 g" may stand in the quantity alone. */
const readQuantity = (reading: Reading, at: string, label: string, toTaste: boolean): Measured => {
  const typed = reading.text(`${at}.amount`);
  const unit = reading.take(`${at}.unit`, `${label}: unit`, readUnitWord, 'each');
  if (typed === '') {
    if (!toTaste)
      reading.refuse(
        `${at}.amount`,
        `${label}: quantity`,
        'Enter a quantity, such as 700 or 3/4, or let the line go to taste.',
      );
    return { amount: null, amountTo: null, unit };
  }
  const both = reading.text(`${at}.unit`) === '' ? readRangeWithUnit(typed) : undefined;
  const read = both?.range ?? readRange(typed, unit);
  if (isRead(read)) return { ...read.value, unit: both?.unit ?? unit };
  reading.refuse(`${at}.amount`, `${label}: quantity`, read.sentence);
  return { amount: null, amountTo: null, unit };
};

const readItem = (
  reading: Reading,
  row: Form,
  at: string,
  label: string,
  { items, added, isTaken }: Context,
): Line['item'] | undefined => {
  const field = `${at}.item`;
  const name = text(row, 'item').trim();
  if (name === '') {
    reading.refuse(field, `${label}: ingredient`, 'Enter an ingredient, or a recipe to use as a component.');
    return undefined;
  }
  const found = items.find(name);
  if ('item' in found) return found.item;
  if (isFresh(row)) return newItem(name, added, isTaken);
  reading.refuse(field, `${label}: ingredient`, notFound(found, name));
  return undefined;
};

/** Whether the cook asked to make the ingredient that a row names. */
export const isFresh = (row: Form): boolean =>
  text(row, 'fresh') !== '' && normalName(text(row, 'fresh')) === normalName(text(row, 'item'));

const newItem = (name: string, added: Added, isTaken: (key: string) => boolean): Line['item'] => {
  const same = added.get(normalName(name));
  if (same) return { ingredient: same.key };
  const keys = [...added.values()].map(({ key }) => key);
  const key = keyFrom(name, (one) => isTaken(one) || keys.includes(one));
  added.set(normalName(name), ingredient.parse({ key, name: name.slice(0, 120) }));
  return { ingredient: key };
};

const notFound = (found: FoundItem, name: string): string => {
  if ('both' in found)
    return `There is an ingredient and a recipe called ${name}: enter “${name} (ingredient)” or “${name} (recipe)”.`;
  const near = 'near' in found ? found.near : [];
  const guess = near.length > 0 ? ` Did you mean ${near.join(' or ')}?` : '';
  return `There is no ingredient or recipe called ${name.slice(0, 60)} yet.${guess}`;
};
