/** One place that two people changed to different values: a field, or a whole line, step or dish. */
export type Clash = {
  /** Where: field names and keys of lists, as in "lines/l3" or "packs/sack/supplier"; "lines#order" is a list's order. */
  path: string;
  /** What stood before, what each made of it; undefined where it does not stand. */
  base: unknown;
  yours: unknown;
  theirs: unknown;
};

export type Choice = 'yours' | 'theirs';
export type Choices = Readonly<Record<string, Choice>>;

/** `doc` holds base values at the clashes; it is complete when there are none. */
export type Merge<D> = { doc: D; clashes: Clash[]; yours: string[]; theirs: string[] };

type Value = unknown;
type Keyed = { key: string };
type Fields = Record<string, Value>;

/** Lists whose rows have keys; rows of those marked "whole" are one thing, other rows merge field by field. */
const lists: Record<string, 'whole' | 'fields'> = {
  lines: 'whole',
  steps: 'whole',
  dishes: 'whole',
  prices: 'whole',
  costs: 'whole',
  packs: 'fields',
  groups: 'fields',
  guests: 'fields',
  courses: 'fields',
  people: 'fields',
  ovens: 'fields',
  pans: 'fields',
  priceLists: 'fields',
};

/** Fields that are records: each entry is changed by itself. */
const records = new Set(['allergens', 'traits', 'keeping', 'hours', 'afterwards', 'terms', 'tax']);

/**
 * Joins two changes of one document: what only one side changed is taken; where both made the same of it, that; the
 * rest clashes, unless a choice is given for its path. Lists keep their order.
 */
export const merge = <D>(base: D, yours: D, theirs: D, choices: Choices = {}): Merge<D> => {
  const merge: Merge<D> = { doc: base, clashes: [], yours: [], theirs: [] };
  merge.doc = fields('', base as Fields, yours as Fields, theirs as Fields, { merge, choices }) as D;
  return merge;
};

type Context = { merge: Merge<unknown>; choices: Choices };

const fields = (at: string, base: Fields, yours: Fields, theirs: Fields, context: Context): Fields => {
  const merged: Fields = {};
  for (const name of new Set([...Object.keys(theirs), ...Object.keys(yours), ...Object.keys(base)])) {
    const value = field(name, join(at, name), base[name], yours[name], theirs[name], context);
    if (value !== undefined) merged[name] = value;
  }
  return merged;
};

const field = (
  name: string,
  at: string,
  base: Value,
  yours: Value,
  theirs: Value,
  context: Context,
): Value => {
  const way = lists[name];
  if (way && [base, yours, theirs].every(Array.isArray))
    return rows(way, at, base as Keyed[], yours as Keyed[], theirs as Keyed[], context);
  if (records.has(name) && [base, yours, theirs].every(isFields))
    return fields(at, base as Fields, yours as Fields, theirs as Fields, context);
  return value(at, base, yours, theirs, context);
};

const value = (at: string, base: Value, yours: Value, theirs: Value, { merge, choices }: Context): Value => {
  if (same(yours, theirs)) return theirs;
  if (same(base, yours)) {
    merge.theirs.push(at);
    return theirs;
  }
  if (same(base, theirs)) {
    merge.yours.push(at);
    return yours;
  }
  const choice = choices[at];
  if (choice) {
    merge[choice].push(at);
    return choice === 'yours' ? yours : theirs;
  }
  merge.clashes.push({ path: at, base, yours, theirs });
  return base;
};

const rows = (
  way: 'whole' | 'fields',
  at: string,
  base: Keyed[],
  yours: Keyed[],
  theirs: Keyed[],
  context: Context,
): Keyed[] => {
  const [b, y, t] = [base, yours, theirs].map((list) => new Map(list.map((row) => [row.key, row])));
  const merged = new Map<string, Keyed>();
  for (const key of new Set([...base, ...theirs, ...yours].map((row) => row.key))) {
    const row = oneRow(way, join(at, key), b?.get(key), y?.get(key), t?.get(key), context);
    if (row) merged.set(key, row);
  }
  return ordered(at, [base, yours, theirs], merged, context);
};

const oneRow = (
  way: 'whole' | 'fields',
  at: string,
  base: Keyed | undefined,
  yours: Keyed | undefined,
  theirs: Keyed | undefined,
  context: Context,
): Keyed | undefined =>
  way === 'fields' && base && yours && theirs
    ? (fields(at, base, yours, theirs, context) as Keyed)
    : (value(at, base, yours, theirs, context) as Keyed | undefined);

/** The rows that stand, in the order of the side that moved some; rows the other side added follow their neighbour. */
const ordered = (
  at: string,
  [base, yours, theirs]: Keyed[][],
  merged: Map<string, Keyed>,
  context: Context,
): Keyed[] => {
  const names = [base, yours, theirs].map((list = []) =>
    list.map(({ key }) => key).filter((key) => merged.has(key)),
  );
  const [b = [], y = [], t = []] = names;
  const shared = b.filter((key) => y.includes(key) && t.includes(key));
  const among = (list: string[]) => list.filter((key) => shared.includes(key));
  const order = value(`${at}#order`, shared, among(y), among(t), context);
  const [lead, other] = same(order, among(t)) ? [t, y] : [y, t];
  const keys = [...lead];
  for (const [place, key] of [...other, ...b].entries()) {
    if (keys.includes(key)) continue;
    const before = other.slice(0, place).findLast((one) => keys.includes(one));
    keys.splice(before === undefined ? 0 : keys.indexOf(before) + 1, 0, key);
  }
  return keys.flatMap((key) => merged.get(key) ?? []);
};

const join = (at: string, name: string): string => (at === '' ? name : `${at}/${name}`);

const isFields = (value: Value): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether two values are alike, whatever the order of their fields. */
export const same = (a: Value, b: Value): boolean => {
  if (a === b) return true;
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((one, place) => same(one, b[place]));
  if (!isFields(a) || !isFields(b)) return false;
  const names = Object.keys(a);
  return (
    names.length === Object.keys(b).length &&
    names.every((name) => Object.hasOwn(b, name) && same(a[name], b[name]))
  );
};
