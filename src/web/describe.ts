import type { Format } from './format.js';

type Fields = Record<string, unknown>;

const dayNames: Record<string, string> = {
  mon: 'Monday',
  tue: 'Tuesday',
  wed: 'Wednesday',
  thu: 'Thursday',
  fri: 'Friday',
  sat: 'Saturday',
  sun: 'Sunday',
};

const rowNames: Record<string, string> = {
  lines: 'Line',
  steps: 'Step',
  dishes: 'Dish',
  packs: 'Pack',
  prices: 'Price',
  groups: 'Group',
  guests: 'Guest',
  courses: 'Course',
  costs: 'Cost',
  people: 'Person',
  ovens: 'Oven',
  pans: 'Pan',
  priceLists: 'Price list',
};

/** What a path of a document is called: "lines/l3" is its third line, "keeping/opened" is "Keeping, opened". */
export const placeName = (path: string, ...docs: unknown[]): string => {
  if (path.endsWith('#order')) return `Order of ${path.slice(0, -6)}`;
  const steps = path.split('/');
  const words: string[] = [];
  for (let i = 0; i < steps.length; i++) {
    const rowName = rowNames[steps[i]!];
    const key = rowName && steps[i + 1];
    if (!key) words.push(spaced(steps[i]!));
    else {
      words.push(numbered(rowName, steps.slice(0, i + 1), key, docs));
      i++;
    }
  }
  const named = words.join(', ');
  return named.charAt(0).toUpperCase() + named.slice(1);
};

const numbered = (rowName: string, at: string[], key: string, docs: unknown[]): string => {
  for (const doc of docs) {
    const list = standsAt(doc, at.join('/'));
    const place = Array.isArray(list) ? list.findIndex((row: Fields) => row.key === key) : -1;
    const row = Array.isArray(list) ? (list[place] as Fields | undefined) : undefined;
    if (row)
      return typeof row.name === 'string' && row.name ? `${rowName} ${row.name}` : `${rowName} ${place + 1}`;
  }
  return rowName;
};

/** Whether somebody typed what stands at a path: whose row it was is no change that a reader looks for. */
export const isTyped = (path: string): boolean => path !== 'origin';

/** What stands at a path of a document; rows of lists are found by their keys. */
export const standsAt = (doc: unknown, path: string): unknown => {
  let here = doc;
  for (const step of path.replace(/#order$/, '').split('/')) {
    if (Array.isArray(here)) here = here.find((row: Fields) => row.key === step);
    else here = (here as Fields | undefined | null)?.[step];
  }
  return path.endsWith('#order') && Array.isArray(here) ? here.map(({ key }: Fields) => key) : here;
};

/** Whole numbers in these fields are money. */
const sums = new Set([
  'price',
  'hourlyCost',
  'paid',
  'fixed',
  'aGuest',
  'step',
  'rate',
  'total',
  'minimum',
  'off',
  'roundTo',
]);

/** A value in plain words, without the keys that hold the workbook together. */
export const inPlainWords = (value: unknown, f: Format, field = ''): string => {
  if (value === undefined) return 'taken out';
  if (value === null || value === '') return 'nothing';
  if (field === 'served') return `kept as it stood on ${f.dateYear((value as { date: string }).date)}`;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return sums.has(field) ? f.money(value) : f.number(value);
  if (typeof value === 'string') return /^\d{4}-\d\d-\d\d$/.test(value) ? f.dateYear(value) : value;
  if (Array.isArray(value))
    return value.length === 0 ? 'nothing' : value.map((one) => inPlainWords(one, f)).join(', ');
  return row(value as Fields, f);
};

const row = (fields: Fields, f: Format): string => {
  if ('from' in fields && 'to' in fields) return `${fields.from} to ${fields.to}`;
  const said = Object.entries(fields).filter(
    ([name, value]) => name !== 'key' && value !== null && value !== '' && value !== false,
  );
  const unit =
    typeof fields.amount === 'string' ? [`${ends(fields)} ${String(fields.unit ?? '')}`.trim()] : [];
  const rest = said
    .filter(([name]) => unit.length === 0 || !['amount', 'amountTo', 'unit'].includes(name))
    .map(([name, value]) => {
      const words = inPlainWords(value, f, name);
      return ['name', 'item', 'words', 'recipe', 'ingredient', 'component', 'preparation'].includes(name)
        ? words
        : value === true
          ? spaced(name)
          : `${spaced(name)} ${words}`;
    });
  return [...unit, ...rest].join(', ');
};

/** An amount, or both ends of a range. */
const ends = ({ amount, amountTo }: Fields): string =>
  typeof amountTo === 'string' ? `${amount}–${amountTo}` : String(amount);

const spaced = (name: string): string =>
  dayNames[name] ?? name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
