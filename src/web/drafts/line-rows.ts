import { readAmounts } from '../../core/exchange/draft/amounts.js';
import {
  askOf,
  canHold,
  foodsIn,
  inAll,
  namesTwo,
  weightOf,
  whichWeight,
} from '../../core/exchange/draft/draft-line.js';
import type { RecipeDraft } from '../../core/exchange/recipe/draft.js';
import { foodOf, foodsLike } from '../../core/foods.js';
import { plural } from '../../core/quantity/show.js';
import { isRead, readUnitWord } from '../../core/reading.js';
import type { Fields } from '../fields.js';
import { type Form, rows, text } from '../form.js';
import { type Html, html } from '../html.js';
import { foodInWords } from '../ingredients/food-words.js';
import { typedUnit } from '../typed.js';
import type { Around, Meaning } from './around.js';
import { lineLabel } from './confirmed.js';
import { lineState, readAt, type SourceLine, sourceLines } from './states.js';

export type DraftButton = { value: string; label: string };

/** A line beside its source: what was read, what it means here, why it is unsure, and what one can do about it. */
export type LineRow = {
  at: string;
  place: number;
  label: string;
  source: string;
  out: boolean;
  open: boolean;
  /** true when its fields are to be seen. */
  shown: boolean;
  because: string[];
  summary: Html;
  ask: string;
  fresh: string;
  holds: string;
  buttons: DraftButton[];
};

export const lineRows = (form: Form, read: RecipeDraft, around: Around, fields: Fields): LineRow[] =>
  rows(form, 'lines').map((row, place) => {
    const at = `lines[${place}]`;
    const source = readAt(sourceLines(read), row);
    const { out, open, because } = lineState(row, source, around);
    const meaning = around.meaning(row);
    const measure = measureIn(row);
    const asksWeight = canHold(measure) && !weightOf(measure.unit, around.ingredient(row));
    const said = asksWeight && text(row, 'holds').trim() !== '';
    const one = measure.unit === 'each' ? 'piece' : measure.unit;
    return {
      at,
      place,
      label: lineLabel(row, place),
      source: source?.text ?? '',
      out,
      open,
      shown: fields.anyFault(at) || (open && text(row, 'item').trim() === ''),
      because: open ? because : [],
      summary: summaryOf(row, meaning, asksWeight),
      ask: (!out && !open && !said && askOf(measure, around.ingredient(row))) || '',
      fresh: meaning.fresh && !out ? freshInWords(meaning.fresh) : '',
      holds: asksWeight ? `One ${one} weighs` : '',
      buttons: open ? buttonsFor(row, place, meaning, because, { source, asksWeight }) : [],
    };
  });

/** Amount and unit as they stand in the fields, as far as they can be read. */
const measureIn = (row: Form) => {
  const word = readUnitWord(text(row, 'unit'));
  const unit = isRead(word) ? word.value : 'each';
  const amounts = readAmounts(text(row, 'amount'), unit);
  return { amount: isRead(amounts) ? amounts.value.amount : null, unit };
};

const statedWords: Record<string, string> = {
  bought: '; the weight as bought',
  prepared: '; the weight prepared',
  cooked: '; the weight cooked',
};

const summaryOf = (row: Form, { match, fresh }: Meaning, asksWeight: boolean): Html => {
  const amount = text(row, 'amount').trim();
  const unit = text(row, 'unit').trim();
  const component = !fresh && match.kind === 'exact' && 'component' in match.known.item;
  const cut = text(row, 'preparation').trim();
  const name = text(row, 'item').trim();
  const holds = text(row, 'holds').trim();
  const measure = measureIn(row);
  const many = plural(typedUnit(measure.unit), amount);
  return html`${amount ? html`<b>${amount}</b>${unit && ` ${many}`} ` : ''}<b class="food">${name}</b>${component && html`<span class="thin">, component</span>`}<span class="thin">${cut && `, ${cut}`}${amount === '' && ', to taste'}${statedWords[text(row, 'stated')] ?? ''}${holds && asksWeight && `; one ${measure.unit === 'each' ? 'piece' : measure.unit} weighs ${holds}`}</span>`;
};

const freshInWords = ({ name, food }: { name: string; food: string }): string => {
  const figures = foodOf(food);
  return figures
    ? `New ingredient “${name}”, made when you save, with the figures of ${figures.name}: ${foodInWords(figures)}.`
    : `New ingredient “${name}”, made when you save.`;
};

const mostFoods = { near: 1, none: 2 };

/** What one press settles, the likeliest first. */
const buttonsFor = (
  row: Form,
  place: number,
  { match, fresh }: Meaning,
  because: readonly string[],
  { source, asksWeight }: { source: SourceLine | undefined; asksWeight: boolean },
): DraftButton[] => {
  const name = text(row, 'item').trim();
  const all: DraftButton[] = [];
  const foods = foodsIn(name);
  if (because.includes(namesTwo) && foods.length > 1)
    all.push({ value: `split:${place}`, label: `Make ${foods.length} lines: ${foods.join(', ')}` });
  if (source?.read.kind === 'words') all.push({ value: `out:lines:${place}`, label: 'Leave it out' });
  if (fresh || match.kind === 'exact') {
    if (because.includes(whichWeight)) {
      const amount = `${text(row, 'amount').trim()} ${text(row, 'unit').trim()}`;
      all.push({ value: `stated:${place}:bought`, label: `${amount} as bought` });
      all.push({ value: `stated:${place}:prepared`, label: `${amount} of the part that is eaten` });
      return all;
    }
    const holds = asksWeight ? text(row, 'holds').trim() : '';
    all.push({
      value: `confirm:lines:${place}`,
      label: holds ? `Confirm, one ${text(row, 'unit').trim() || 'piece'} weighs ${holds}` : 'Confirm',
    });
    const total = source?.read.pack && inAll(source.read);
    if (total && !total.amountTo)
      all.push({ value: `total:${place}`, label: `Write ${total.amount} ${typedUnit(total.unit)} in all` });
    return all;
  }
  if (match.kind !== 'none')
    for (const { text: known } of match.known)
      all.push({ value: `use:${place}:${known}`, label: `Use ${known}` });
  if (name !== '' && match.kind !== 'both') {
    all.push({ value: `new:${place}`, label: `New ingredient “${name}”` });
    for (const food of foodsLike(name).slice(0, mostFoods[match.kind]))
      all.push({ value: `new:${place}:${food.id}`, label: `New, with the figures of ${food.name}` });
  }
  return all;
};
