import { normalName } from './names.js';

/** Names of a list that a mistyped one may mean, the likeliest first, three at most; none when nothing is near. */
export const nearNames = (typed: string, names: readonly string[]): string[] => {
  const wanted = folded(typed);
  if (wanted.length < 2) return [];
  const scored = names
    .map((name) => ({ name, far: distance(wanted, folded(name)) }))
    .filter(({ far }) => far <= 1);
  return scored
    .sort((a, b) => a.far - b.far || a.name.length - b.name.length)
    .slice(0, 3)
    .map(({ name }) => name);
};

/** Whether two names are one but for case, accents and plural endings. */
export const sameName = (a: string, b: string): boolean => folded(a) === folded(b);

/** Without accents and plural endings, so that "Onions" is "onion"; what two names are compared by. */
export const folded = (name: string): string =>
  normalName(name)
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
    .map(singular)
    .join(' ');

const singular = (word: string): string => {
  if (word.length < 4) return word;
  if (word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  if (/(ch|sh|ss|x|o)es$/.test(word)) return word.slice(0, -2);
  return word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;
};

/** 0 for the same, up to 1 for what may still be meant: slipped letters, or all words of one within the other. */
const distance = (a: string, b: string): number => {
  if (a === b) return 0;
  const most = Math.min(3, Math.floor(Math.min(a.length, b.length) / 3));
  const slips = edits(a, b, most);
  if (slips <= most) return slips / (most + 1);
  const [few, many] = [a.split(' '), b.split(' ')].sort((x, y) => x.length - y.length);
  return few!.every((word) => many!.includes(word)) ? 1 : 2;
};

/** Letters to put in, leave out, change or swap with their neighbour; `most + 1` when there are more. */
const edits = (a: string, b: string, most: number): number => {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      next[j] = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + cost);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) next[j] = Math.min(next[j]!, before[j - 2]! + 1);
    }
    before = row;
    row = next;
    if (Math.min(...row) > most && i > 1) return most + 1;
  }
  return row[b.length]!;
};
