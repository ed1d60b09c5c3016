import type { Line } from '../../facts/recipe.js';
import { folded, nearNames } from '../../near-names.js';

type Item = Line['item'];
type Named = { key: string; name: string; archived: boolean };

/** What a line of a draft may be matched to: an ingredient or a recipe, by the text it is typed with. */
export type Known = { text: string; item: Item; archived: boolean };

/** exact: one thing of that name; both: an ingredient and a recipe have it; near: names like it, the likeliest first. */
export type Match =
  | { kind: 'exact'; known: Known }
  | { kind: 'both' | 'near'; known: Known[] }
  | { kind: 'none' };

type Entry = { known: Known; words: string[] };

const mostNear = 3;

/**
 * The names of a kitchen, looked up by what a recipe calls a thing. Case, accents and plural endings make no
 * difference, and "unsalted butter" is "Butter, unsalted".
 */
export class KitchenNames {
  private readonly exact = new Map<string, Known[]>();
  private readonly byWord = new Map<string, Entry[]>();
  private readonly byLetter = new Map<string, string[]>();
  /** What is offered while one types: what is not archived. */
  readonly offered: Known[] = [];

  constructor({ ingredients, recipes }: { ingredients: readonly Named[]; recipes: readonly Named[] }) {
    const plain = ({ name }: { name: string }) => readingOf(name).ways[0]!;
    const names = new Set(ingredients.map(plain));
    const twice = new Set(recipes.map(plain).filter((name) => names.has(name)));
    const put = (kind: string, { name, archived }: Named, item: Item) =>
      this.put({ text: twice.has(plain({ name })) ? `${name} (${kind})` : name, item, archived }, name);
    for (const one of ingredients) put('ingredient', one, { ingredient: one.key });
    for (const one of recipes) put('recipe', one, { component: one.key });
  }

  private put(known: Known, name: string): void {
    const { ways, words } = readingOf(name);
    for (const way of ways) add(this.exact, way, known);
    if (known.text !== name) add(this.exact, folded(known.text), known);
    if (known.archived) return;
    this.offered.push(known);
    const entry = { known, words };
    for (const word of new Set(entry.words)) {
      if (!this.byWord.has(word)) add(this.byLetter, word.charAt(0), word);
      add(this.byWord, word, entry);
    }
  }

  /** What a name means in this kitchen. */
  match(name: string): Match {
    const found = this.exact.get(folded(name)) ?? [];
    const live = found.filter(({ archived }) => !archived);
    const [first, second] = live.length > 0 ? live : found;
    if (second) return { kind: 'both', known: live.length > 0 ? live : found };
    if (first) return { kind: 'exact', known: first };
    const near = this.near(name);
    return near.length > 0 ? { kind: 'near', known: near } : { kind: 'none' };
  }

  /** Names that share the noun, or most of the words, with what was read. */
  private near(name: string): Known[] {
    const wanted = folded(inOrder(name))
      .split(' ')
      .filter((word) => word.length > 1)
      .slice(0, 8)
      .map((word) => this.spelt(word));
    const shared = new Map<Entry, number>();
    for (const word of new Set(wanted))
      for (const entry of this.byWord.get(word) ?? []) shared.set(entry, (shared.get(entry) ?? 0) + 1);
    return [...shared]
      .map(([entry, count]) => ({ entry, score: likeness(entry.words, wanted, count) }))
      .filter(({ score }) => score > half)
      .sort((a, b) => b.score - a.score || a.entry.known.text.length - b.entry.known.text.length)
      .slice(0, mostNear)
      .map(({ entry }) => entry.known);
  }

  /** A word of the kitchen's own that a slip of the pen stands for. */
  private spelt(word: string): string {
    if (this.byWord.has(word) || word.length < 4) return word;
    const alike = (this.byLetter.get(word.charAt(0)) ?? []).filter(
      (one) => Math.abs(one.length - word.length) < 3,
    );
    return nearNames(word, alike)[0] ?? word;
  }
}

type Reading = { ways: string[]; words: string[] };
const kept = new Map<string, Reading>();

/** The ways a name is asked for, its own first, and its words. A kitchen's names are the same from page to page. */
const readingOf = (name: string): Reading => {
  let reading = kept.get(name);
  if (!reading) {
    const ways = [...new Set([name, inOrder(name)].map(folded))];
    reading = { ways, words: ways.at(-1)!.split(' ') };
    if (kept.size < 50_000) kept.set(name, reading);
  }
  return reading;
};

const half = 0.5;

/** The share of words both have, more where the noun is the same or one name is all within the other. */
const likeness = (words: readonly string[], wanted: readonly string[], count: number): number => {
  const noun = words.at(-1) === wanted.at(-1) ? half : 0;
  const share = count / Math.max(words.length, wanted.length);
  return count === Math.min(words.length, wanted.length) ? share * 1.4 + noun : share + noun;
};

/** "Butter, unsalted" as it is spoken: "unsalted Butter". */
const inOrder = (name: string): string =>
  name
    .split(',')
    .map((part) => part.trim())
    .reverse()
    .join(' ');

const add = <V>(map: Map<string, V[]>, key: string, value: V): void => {
  const there = map.get(key);
  if (there) there.push(value);
  else map.set(key, [value]);
};
