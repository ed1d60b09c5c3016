import { doubtsOf, namesTwo } from '../../core/exchange/draft/draft-line.js';
import { needsOf } from '../../core/exchange/draft/presets.js';
import type { LineReading } from '../../core/exchange/lines/reading.js';
import { noTime, type StepReading } from '../../core/exchange/method/read-method.js';
import type { RecipeDraft } from '../../core/exchange/recipe/draft.js';
import { type Form, text, valueAt } from '../form.js';
import type { Around } from './around.js';

/** How a row of a draft stands: left out, settled, or open, with the reasons in words. */
export type RowState = { out: boolean; open: boolean; because: string[] };

const settled: RowState = { out: false, open: false, because: [] };
const leftOut: RowState = { out: true, open: false, because: [] };
const opened = (because: string[]): RowState => ({ out: false, open: because.length > 0, because });

export type SourceLine = { text: string; read: LineReading };
export const sourceLines = (read: RecipeDraft): SourceLine[] => read.sections.flatMap(({ lines }) => lines);

export const readAt = <T>(all: readonly T[], row: Form): T | undefined =>
  text(row, 'from') === '' ? undefined : all[Number(text(row, 'from'))];

/** A line is settled once the cook confirmed it, or when it was read without doubt and the kitchen has its food. */
export const lineState = (row: Form, source: SourceLine | undefined, around: Around): RowState => {
  if (text(row, 'out') === 'on') return leftOut;
  const { match, fresh } = around.meaning(row);
  const known = fresh !== undefined || match.kind === 'exact';
  if (text(row, 'confirmed') === 'on' && known) return settled;
  const split = text(row, 'split') === 'on';
  const read = source && {
    ...source.read,
    stated:
      (['bought', 'prepared'] as const).find((one) => one === text(row, 'stated')) ?? source.read.stated,
    because: source.read.because.filter((why) => !(split && why === namesTwo)),
  };
  return opened(doubtsOf(read, fresh ? undefined : match, text(row, 'item'), around.ingredient(row)));
};

/** A step is settled once confirmed, or when its words say all that is asked. */
export const stepState = (row: Form, read: StepReading | undefined): RowState => {
  if (text(row, 'out') === 'on') return leftOut;
  if (text(row, 'confirmed') === 'on') return settled;
  if (!read)
    return opened([
      text(row, 'added') === 'on'
        ? 'This step is new: say how long it takes.'
        : 'No method was found. One line with its minutes is enough.',
    ]);
  const because = read.because.filter((why) => why !== noTime || text(row, 'minutes').trim() === '');
  const { preset, kind } = needsOf(read);
  if (preset.includes('oven') && text(row, 'oven') !== '')
    because.push(`The oven’s heat is what is usual for ${kind}.`);
  return opened(because);
};

const noMethod = 'No method was found.';
// A recipe keeps one figure of portions, so the reader's word that both are kept would not be true of it.
const aRange = /^A range of portions/;

/** The name and what the recipe makes. */
export const headState = (form: Form, { unsure, yield: made }: RecipeDraft): RowState => {
  if (text(form, 'head') === 'on') return settled;
  // A method that was not found is asked for where the method stands.
  const because = unsure.filter((why) => why !== noMethod && !aRange.test(why));
  if (made.portionsTo) because.unshift(`“${made.text}” is a range: a recipe goes by one of its figures.`);
  const makes = ['portions', 'weight', 'volume'].some((name) =>
    String(valueAt(form, `yield.${name}`) ?? '').trim(),
  );
  if (!makes && because.length === 0) because.push('What it makes is not said.');
  return opened(because);
};
