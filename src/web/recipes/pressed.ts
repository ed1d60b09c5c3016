import { type Form, rows, text } from '../form.js';
import { rowsChanged } from '../rows.js';
import { emptyLine, emptyStep } from './form.js';
import type { Items } from './items.js';
import { keyed } from './steps.js';

type Pressed = { form: Form; at: string };

/** What a button within the form of a recipe asks for; undefined when the form asks to be saved or looked at. */
export const pressed = (form: Form, items: Items): Pressed | undefined => {
  const gone = takenOut(form);
  const changed = rowsChanged(form);
  if (changed) {
    if (text(form, 'do') === 'add:lines') fill(changed, 'lines', emptyLine());
    if (text(form, 'do') === 'add:steps') fill(changed, 'steps', emptyStep());
    if (gone) forget(changed.form, gone);
    return changed;
  }
  const [what, place = '', ...name] = text(form, 'do').split(':');
  const lines = rows(form, 'lines');
  if (what === 'new') {
    for (const [i, row] of lines.entries())
      if (place === 'all' ? isUnknown(row, items) : place === String(i)) row.fresh = text(row, 'item').trim();
    return { form, at: place === 'all' ? 'save' : `lines[${place}]` };
  }
  const row = what === 'use' ? lines[Number(place)] : undefined;
  if (!row) return undefined;
  row.item = name.join(':');
  return { form, at: `lines[${place}]` };
};

const isUnknown = (row: Form, items: Items): boolean => {
  const name = text(row, 'item').trim();
  return name !== '' && 'near' in items.find(name);
};

const fill = ({ form, at }: Pressed, list: string, empty: Form): void => {
  const all = rows(form, list);
  const place = all.findIndex((_, i) => `${list}[${i}]` === at);
  if (all[place]) Object.assign(all[place], empty);
};

/** The key of a step that goes, so that no other step waits for it. */
const takenOut = (form: Form): string => {
  const [what, list, place] = text(form, 'do').split(':');
  const row = what === 'out' && list === 'steps' ? keyed(form)[Number(place)] : undefined;
  return row ? text(row, 'key') : '';
};

const forget = (form: Form, gone: string): void => {
  for (const step of rows(form, 'steps'))
    step.after = rows(step, 'after').filter((after) => text(after, 'step') !== gone);
};
