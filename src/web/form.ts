/** What a form sent: text, several texts of one name, or rows and groups of these. */
export type Form = { [name: string]: FormValue };
export type FormValue = string | FormValue[] | Form;

const limits = { pairs: 30_000, name: 120, depth: 6, index: 4999 };
const segment = /^(?:\.?([a-z][\w-]{0,39})|\[(\d{1,4})\])/i;
const forbidden = new Set(['__proto__', 'constructor', 'prototype']);

export class FormError extends Error {
  readonly statusCode = 400;
}

/**
 * Reads a form's body. `lines[3].amount` is field `amount` of the fourth row of `lines`; a name sent several times
 * gives a list. Rows keep their order and lose their gaps.
 */
export const parseForm = (body: string): Form => {
  const form: Form = {};
  let pairs = 0;
  for (const [name, value] of new URLSearchParams(body)) {
    if (++pairs > limits.pairs) throw new FormError('This form has more fields than the workbook reads.');
    put(form, pathOf(name), value.replaceAll('\r\n', '\n'));
  }
  return closeGaps(form) as Form;
};

const pathOf = (name: string): (string | number)[] => {
  const path: (string | number)[] = [];
  let rest = name.length > limits.name ? '' : name;
  while (rest !== '') {
    const found = segment.exec(rest);
    const [all = '', word, index] = found ?? [];
    const fits = found && path.length < limits.depth && !forbidden.has(word ?? '');
    if (!fits || (path.length === 0 && all.startsWith('.'))) return badName(name);
    path.push(word ?? boundedIndex(Number(index), name));
    rest = rest.slice(all.length);
  }
  return path.length === 0 || typeof path[0] === 'number' ? badName(name) : path;
};

const boundedIndex = (index: number, name: string): number => (index <= limits.index ? index : badName(name));

const badName = (name: string): never => {
  throw new FormError(`The form sent a field this workbook does not know: ${name.slice(0, 40)}.`);
};

type Rows = Map<number, Slot>;
type Slot = FormValue | Rows;

const put = (form: Form, path: (string | number)[], value: string): void => {
  let here: Form | Rows = form;
  path.forEach((step, depth) => {
    const last = depth === path.length - 1;
    const old = read(here, step);
    if (last) add(here, step, old, value);
    else {
      const next = typeof path[depth + 1] === 'number' ? new Map<number, Slot>() : {};
      const kept = old === undefined ? next : old;
      if (!(kept instanceof Map) && (typeof kept !== 'object' || Array.isArray(kept)))
        badName(path.join('.'));
      if (kept instanceof Map !== next instanceof Map) badName(path.join('.'));
      write(here, step, kept);
      here = kept as Form | Rows;
    }
  });
};

const read = (where: Form | Rows, step: string | number): Slot | undefined =>
  where instanceof Map ? where.get(step as number) : Object.hasOwn(where, step) ? where[step] : undefined;

const write = (where: Form | Rows, step: string | number, value: Slot): void => {
  if (where instanceof Map) where.set(step as number, value);
  else where[step] = value as FormValue;
};

const add = (where: Form | Rows, step: string | number, old: Slot | undefined, value: string): void => {
  if (old === undefined) write(where, step, value);
  else if (Array.isArray(old)) old.push(value);
  else if (typeof old === 'string') write(where, step, [old, value]);
  else throw new FormError('The form sent one name both as a field and as a group.');
};

const closeGaps = (value: Slot): FormValue => {
  if (value instanceof Map)
    return [...value.entries()].sort(([a], [b]) => a - b).map(([, row]) => closeGaps(row));
  if (typeof value !== 'object' || Array.isArray(value)) return value;
  for (const [name, inner] of Object.entries(value)) value[name] = closeGaps(inner as Slot);
  return value;
};

/** The text of a field, "" when it was not sent. A name sent several times gives its last text. */
export const text = (form: Form, name: string): string => {
  const value = valueAt(form, name);
  const one = Array.isArray(value) ? value.at(-1) : value;
  return typeof one === 'string' ? one : '';
};

/** Every text sent under a name: none, one or several. */
export const texts = (form: Form, name: string): string[] => {
  const value = valueAt(form, name);
  const all = Array.isArray(value) ? value : [value];
  return all.filter((one) => typeof one === 'string');
};

/** The rows sent under a name, each a form of its own. */
export const rows = (form: Form, name: string): Form[] => {
  const value = valueAt(form, name);
  return Array.isArray(value) ? value.filter((row): row is Form => typeof row === 'object') : [];
};

/** What stands in a form at a full name such as `lines[3].amount`. */
export const valueAt = (form: Form, name: string): FormValue | undefined => {
  let here: FormValue | undefined = form;
  for (const step of name.match(/[^.[\]]+/g) ?? []) {
    if (typeof here !== 'object') return undefined;
    here = Object.hasOwn(here, step) ? (here as Form)[step] : undefined;
  }
  return here;
};
