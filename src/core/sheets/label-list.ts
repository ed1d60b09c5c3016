import { allergenName } from '../allergens.js';
import { namesIn } from '../label-text.js';

/** Words of a label, and whether they are set apart: in bold and in capitals, so that it survives any printer. */
export type Run = { text: string; strong: boolean };

/** An allergen as a label names it: "WHEAT", "SULPHITES". */
export const labelWord = (id: string): string =>
  allergenName(id)
    .replace(/ (?:\(|above|at exactly).*$/, '')
    .replace(/^cereals containing /, '')
    .toUpperCase();

/**
 * A text with the names of allergens set apart: those of `ids` by the words that name them, and, where no word of the
 * lists themselves does, by the name of the list in brackets after it ("tahini (SESAME)").
 */
export const setApart = (text: string, ids: readonly string[]): Run[] => {
  const { plain, names } = namesIn(text);
  const wanted = new Set(ids);
  const named = new Set<string>();
  const runs: Run[] = [];
  let at = 0;
  for (const { from, to, is, why } of names.toSorted((a, b) => a.from - b.from)) {
    const own = is.filter((id) => wanted.has(id));
    if (own.length === 0 || from < at) continue;
    if (why === '') for (const id of own) named.add(id);
    runs.push({ text: plain.slice(at, from), strong: false });
    runs.push({ text: plain.slice(from, to).toUpperCase(), strong: true });
    at = to;
  }
  runs.push({ text: plain.slice(at), strong: false });
  const unnamed = ids.filter((id) => !named.has(id));
  if (unnamed.length > 0) runs.push(...inBrackets(unnamed.map(strongly)));
  return runs.filter(({ text }) => text !== '');
};

const strongly = (id: string): Run[] => [{ text: labelWord(id), strong: true }];

/** " (MILK, WHEAT)" */
const inBrackets = (all: readonly Run[][]): Run[] => [plainly(' ('), ...joined(all), plainly(')')];

export const plainly = (text: string): Run => ({ text, strong: false });

/** Parts one after the other with commas between. */
export const joined = (all: readonly Run[][]): Run[] =>
  all.flatMap((runs, i) => (i === 0 ? runs : [plainly(', '), ...runs]));

/** What a run of words says without its emphasis; capitals stay. */
export const wordsOf = (runs: readonly Run[]): string => runs.map(({ text }) => text).join('');

const statement =
  /(?:^|[.;\n])\s*(?:may |contains?\b|allerg|for allergens?|made in|produced|packed|manufactured|store|keep|nutrition|best before|suitable|not suitable|warning|free from)/i;

/** The list of ingredients in a label's text: after "Ingredients:", up to the first sentence that says something else. */
export const ownList = (text: string): string => {
  const after = text.replace(/^[\s\S]{0,200}?\bingredients?\b(?:\*\*|<\/\w+>)?\s*:\s*/i, '');
  const end = after.search(statement);
  return (end < 0 ? after : after.slice(0, end))
    .replace(/\s+/g, ' ')
    .replace(/[\s.]+$/, '')
    .trim();
};
