import { foodsIn, inAll, isEitherWeight } from '../../core/exchange/draft/draft-line.js';
import type { RecipeDraft } from '../../core/exchange/recipe/draft.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, rows, text } from '../form.js';
import { nextKey } from '../keys.js';
import { typedUnit } from '../typed.js';
import type { Around } from './around.js';
import { readHead, readLine, readStep } from './confirmed.js';
import { typedAmounts } from './form.js';
import { lineState, readAt, sourceLines } from './states.js';

/** What a button did to the form, the row to go on after, and why it would not. */
export type Pressed = { at: string; faults: readonly Fault[] };
type Context = { read: RecipeDraft; around: Around; kitchen: Kitchen };

/** Does in the form what a button within it asks; undefined when the form asks to be made a recipe. */
export const pressed = (form: Form, context: Context): Pressed | undefined => {
  const [what = '', place = '', ...rest] = text(form, 'do').split(':');
  const act = acts[what];
  return act?.(form, place, rest.join(':'), context);
};

type Act = (form: Form, place: string, rest: string, context: Context) => Pressed;

const done = (at: string): Pressed => ({ at, faults: [] });
const lineAt = (form: Form, place: string): Form => rows(form, 'lines')[Number(place)] ?? {};

/** Choosing what a line is settles it, unless what a tin holds or which weight is meant is asked of what was chosen. */
const chosen = (row: Form, { read }: Context): Form => {
  const line = readAt(sourceLines(read), row)?.read;
  const asks = line && (line.pack || isEitherWeight(line));
  return { confirmed: asks ? '' : 'on' };
};

/** On to the next line, or to the same one where it asks more. */
const goOn = (row: Form, place: string): Pressed =>
  done(`lines:${text(row, 'confirmed') === 'on' ? place : Number(place) - 1}`);

const acts: Record<string, Act> = {
  /** `confirm:head`, `confirm:lines:3`, `confirm:steps:1` */
  confirm: (form, list, place, context) => {
    const reading = new Reading(form);
    const row = list === 'head' ? form : rows(form, list)[Number(place)];
    if (!row) return done('');
    if (list === 'head') readHead(reading, context, true);
    else if (list === 'lines') readLine(reading, row, Number(place), context, true);
    else readStep(reading, row, Number(place), context, true);
    const at = list === 'head' ? 'head' : `${list}:${place}`;
    if (reading.faults.length > 0) return { at, faults: reading.faults };
    row[list === 'head' ? 'head' : 'confirmed'] = 'on';
    return done(at);
  },
  use: (form, place, name, context) => {
    const row = lineAt(form, place);
    Object.assign(row, { item: name, fresh: '', food: '', ...chosen(row, context) });
    return goOn(row, place);
  },
  /** `new:3`, `new:3:leek-raw` with a food's figures, `new:all` */
  new: (form, place, food, context) => {
    const make = (row: Form) =>
      Object.assign(row, { fresh: text(row, 'item').trim(), food, ...chosen(row, context) });
    if (place === 'all') {
      for (const row of allNew(form, context)) make(row);
      return done('head');
    }
    const row = lineAt(form, place);
    if (text(row, 'item').trim() !== '') make(row);
    return goOn(row, place);
  },
  reopen: (form, list, place) => {
    Object.assign(rows(form, list)[Number(place)] ?? {}, { confirmed: '', fresh: '', food: '', out: '' });
    return done(`${list}:${Number(place) - 1}`);
  },
  out: (form, list, place) => {
    Object.assign(rows(form, list)[Number(place)] ?? {}, { out: 'on', confirmed: '' });
    return done(`${list}:${place}`);
  },
  untimed: (form, place) => {
    Object.assign(rows(form, 'steps')[Number(place)] ?? {}, { minutes: '', untimed: 'on', confirmed: 'on' });
    return done(`steps:${place}`);
  },
  /** "salt and pepper" as two lines, each with the amount of both. */
  split: (form, place) => {
    const all = rows(form, 'lines');
    const row = lineAt(form, place);
    const taken = all.map((one) => text(one, 'key'));
    const more = foodsIn(text(row, 'item')).map((item, i) => {
      const key = i === 0 ? text(row, 'key') : nextKey('l', taken);
      taken.push(key);
      return { ...row, key, item, split: 'on', confirmed: '' };
    });
    if (more.length > 1) form.lines = all.toSpliced(Number(place), 1, ...more);
    return done(`lines:${Number(place) - 1}`);
  },
  /** `stated:3:bought`, `stated:3:prepared` */
  stated: (form, place, stated) => {
    if (stated === 'bought' || stated === 'prepared')
      Object.assign(lineAt(form, place), { stated, confirmed: 'on' });
    return done(`lines:${place}`);
  },
  /** "2 x 400 g tins" as 800 g in all. */
  total: (form, place, _, { read }) => {
    const row = lineAt(form, place);
    const source = readAt(sourceLines(read), row);
    const total = source && inAll(source.read);
    if (total)
      Object.assign(row, {
        amount: typedAmounts(total),
        unit: typedUnit(total.unit),
        holds: '',
        confirmed: 'on',
      });
    return done(`lines:${place}`);
  },
  add: (form, list) => {
    const all = rows(form, list);
    const key = nextKey(
      list.charAt(0),
      all.map((row) => text(row, 'key')),
    );
    const more: Form =
      list === 'steps'
        ? { key, from: '', part: '0', added: 'on', attended: 'on' }
        : { key, from: '', part: '0' };
    if (list === 'lines' || list === 'steps') form[list] = [...all, more];
    return done(`${list}:${all.length - 1}`);
  },
};

/** The lines that were read without doubt and whose food the kitchen has not. */
export const allNew = (form: Form, { read, around }: Pick<Context, 'read' | 'around'>): Form[] =>
  rows(form, 'lines').filter((row) => {
    const source = readAt(sourceLines(read), row);
    const { open, because } = lineState(row, source, around);
    const { match, fresh } = around.meaning(row);
    return open && !fresh && match.kind === 'none' && because.length === 1 && text(row, 'item').trim() !== '';
  });
