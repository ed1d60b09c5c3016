import published from '../../shared/label-words.json' with { type: 'json' };
import { folded, type Token } from './label-tokens.js';

/**
 * What a word or a run of words on a label means. named: it names these allergens; aside: it sounds like one and is
 * none; open: its name leaves open what it is of, which is `usual`ly one of these.
 */
export type Meaning =
  | { kind: 'named'; is: readonly string[]; why: string }
  | { kind: 'aside'; is: readonly []; why: string }
  | { kind: 'open'; is: readonly []; why: string; usual: readonly string[] };

type Phrase = { words: string[]; meaning: Meaning };

const practice = 'by common practice';

const phrases = new Map<string, Phrase[]>();
const learn = (text: string, meaning: Meaning): void => {
  const words = text.split(/[ -]+/).map(folded);
  const known = phrases.get(words[0]!) ?? [];
  known.push({ words, meaning });
  phrases.set(words[0]!, known);
};

for (const { is, law, practice: usual } of published.names) {
  for (const text of law) learn(text, { kind: 'named', is: [is], why: '' });
  // "Wheat flour" is wheat by the list's own name.
  const byLaw = (text: string) =>
    text.split(' ').some((word) => law.some((one) => folded(one) === folded(word)));
  for (const text of usual) learn(text, { kind: 'named', is: [is], why: byLaw(text) ? '' : practice });
}
for (const { words, is, why } of published.several)
  for (const text of words) learn(text, { kind: 'named', is, why });
for (const { words, why } of published.asides)
  for (const text of words) learn(text, { kind: 'aside', is: [], why });
for (const { words, why, usual = [] } of published.open)
  for (const text of words) learn(text, { kind: 'open', is: [], why, usual });
for (const list of phrases.values()) list.sort((a, b) => b.words.length - a.words.length);

/** The longest run of words from a place that means something, and how many words it has. */
export const meaningAt = (
  tokens: readonly Token[],
  at: number,
): { length: number; meaning: Meaning } | undefined => {
  const found = phrases.get(tokens[at]!.word)?.find((phrase) => fits(tokens, at, phrase));
  return found && { length: found.words.length, meaning: found.meaning };
};

/**
 * Whether a run of words stands there. "Coconut" and "milk" on two lines may be two things, so a run that would hide an
 * allergen of one of its words does not go over the end of a line; "sulphur dioxide" does.
 */
const fits = (tokens: readonly Token[], at: number, { words, meaning }: Phrase): boolean =>
  words.every((word, i) => tokens[at + i]?.word === word && (i === 0 || tokens[at + i]!.joined)) &&
  (!words.some((_, i) => i > 0 && tokens[at + i]!.wrapped) || !hides(words, meaning));

const hides = (words: readonly string[], { is }: Meaning): boolean =>
  words.some((word) => alone(word)?.is.some((id) => !is.some((one) => one === id)));

/** What one word by itself means. */
export const meaningOf = (token: Token): Meaning | undefined => alone(token.word);

const alone = (word: string): Meaning | undefined =>
  phrases.get(word)?.find(({ words }) => words.length === 1)?.meaning;

const lone = new Map(
  published.names.flatMap(({ is, law }) =>
    law.filter((text) => !text.includes(' ')).map((text): [string, string] => [folded(text), is]),
  ),
);

/**
 * The allergens whose name a word begins or ends with that is no word known here: "milkpowder", "eggwhite". Names of
 * three letters are in too many words to count at its end, and "nut" and "cod" at its beginning.
 */
export const heldIn = (word: string): string[] => {
  if (phrases.get(word)?.some(({ words }) => words.length === 1)) return [];
  const held = [...lone].filter(
    ([name]) =>
      (word.startsWith(name) && name !== 'nut' && name !== 'cod') ||
      (word.endsWith(name) && (name.length > 3 || name === 'nut')),
  );
  return [...new Set(held.map(([, is]) => is))];
};
