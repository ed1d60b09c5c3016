import type { Ingredient } from '../../facts/ingredient.js';
import { folded } from '../../near-names.js';

export type Named = { key: string; name: string };

/** Finds ingredients by what a supplier calls a thing. */
export type Finder = {
  /** The one ingredient of this name, but for case, accents and plural. */
  same(name: string): Named | undefined;
  /** Those all of whose words stand in the name, the longest first, three at most. */
  near(name: string): Named[];
};

export const finderOf = (ingredients: readonly Ingredient[]): Finder => {
  const whole = new Map<string, Named | null>();
  const byWord = new Map<string, { named: Named; words: string[] }[]>();
  for (const { key, name, archived } of ingredients) {
    const plain = folded(name);
    if (archived || plain === '') continue;
    const named = { key, name };
    whole.set(plain, whole.has(plain) ? null : named);
    const words = plain.split(' ');
    const rarest = words.reduce((best, word) => (word.length > best.length ? word : best));
    byWord.set(rarest, [...(byWord.get(rarest) ?? []), { named, words }]);
  }
  return {
    same: (name) => whole.get(folded(name)) ?? undefined,
    near: (name) => {
      const words = new Set(folded(name).split(' '));
      const found = [...words].flatMap((word) => byWord.get(word) ?? []);
      return found
        .filter((one) => one.words.every((word) => words.has(word)))
        .map(({ named }) => named)
        .sort((a, b) => b.name.length - a.name.length)
        .slice(0, 3);
    },
  };
};
