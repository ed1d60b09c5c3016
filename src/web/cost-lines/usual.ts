import type { CostLine } from '../../core/facts/cost-line.js';
import { type Form, rows, text } from '../form.js';
import type { Format } from '../format.js';
import { nextKey } from '../keys.js';
import { lineForm } from './form.js';

/** A form with the kitchen's usual lines below its own; one that stands there by its name is not added again. */
export const withUsual = (form: Form, usual: readonly CostLine[], f: Format): Form => {
  const own = rows(form, 'costs').filter((row) => text(row, 'name').trim() !== '');
  const names = new Set(own.map((row) => text(row, 'name').trim().toLowerCase()));
  const taken = own.map((row) => text(row, 'key'));
  const added = usual.filter(({ name }) => !names.has(name.toLowerCase()));
  for (const line of added) {
    const key = taken.includes(line.key) ? nextKey('c', taken) : line.key;
    taken.push(key);
    own.push(lineForm({ ...line, key }, f));
  }
  return { ...form, costs: own };
};
