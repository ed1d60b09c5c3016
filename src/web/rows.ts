import { type Form, rows, text } from './form.js';
import { nextKey } from './keys.js';

/**
 * What a button of a row asks: `do=add:lines`, `out:lines:3`, `up:lines:3` or `down:lines:3`. Gives the form with
 * that done and the name of the row to go on in; undefined when the form asks to be saved.
 */
export const rowsChanged = (form: Form): { form: Form; at: string } | undefined => {
  const [what = '', list = '', place = ''] = text(form, 'do').split(':');
  if (!['add', 'out', 'up', 'down'].includes(what) || !/^[a-z]\w{0,39}$/i.test(list)) return undefined;
  const now = rows(form, list);
  const at = Number(place);
  const to = what === 'up' ? at - 1 : at + 1;
  if (what === 'add') now.push({});
  else if (!now[at]) return { form, at: '' };
  else if (what === 'out') now.splice(at, 1);
  else if (now[to]) now.splice(Math.min(at, to), 2, now[Math.max(at, to)]!, now[Math.min(at, to)]!);
  const then =
    what === 'add'
      ? now.length - 1
      : what === 'out'
        ? Math.min(at, now.length - 1)
        : Math.min(Math.max(to, 0), now.length - 1);
  return { form: { ...form, [list]: now }, at: then < 0 ? '' : `${list}[${then}]` };
};

/** Gives every row of a list that has none a key of its own, so that it is known from one save to the next. */
export const withKeys = (form: Form, list: string, letter: string): Form[] => {
  const all = rows(form, list);
  const taken = all.map((row) => text(row, 'key')).filter(Boolean);
  for (const row of all) {
    if (text(row, 'key') !== '') continue;
    row.key = nextKey(letter, taken);
    taken.push(row.key);
  }
  return all;
};
