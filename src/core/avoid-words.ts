import { generalName } from './content.js';
import { normalName } from './names.js';
import { nearNames } from './near-names.js';
import type { Read } from './reading.js';

type Named = { key: string; name: string };

/**
 * Ingredients as somebody says that they do not eat them, "onions, olives": each by its name, else all that are so
 * called in general. Says what is near where there is none.
 */
export const readAvoids = (text: string, ingredients: readonly Named[]): Read<string[]> => {
  const parts = text
    .split(/[,;]|\band\b/)
    .map((part) => part.trim())
    .filter(Boolean);
  const found = new Set<string>();
  for (let at = 0; at < parts.length; ) {
    const { keys, length } = meantBy(parts, at, ingredients);
    if (keys.length === 0) return { sentence: notFound(parts[at]!, ingredients) };
    for (const key of keys) found.add(key);
    at += length;
  }
  return { value: [...found] };
};

/** A name may hold a comma itself, so the longest run of parts that is one comes first. */
const meantBy = (
  parts: readonly string[],
  at: number,
  ingredients: readonly Named[],
): { keys: string[]; length: number } => {
  for (let length = Math.min(4, parts.length - at); length > 0; length--) {
    const wanted = normalName(parts.slice(at, at + length).join(', '));
    const one = ingredients.find(({ name }) => normalName(name) === wanted);
    if (one) return { keys: [one.key], length };
  }
  const wanted = generalName(parts[at]!);
  const keys = ingredients.filter(({ name }) => generalName(name) === wanted).map(({ key }) => key);
  return { keys: wanted === '' ? [] : keys, length: 1 };
};

const notFound = (part: string, ingredients: readonly Named[]): string => {
  const near = nearNames(
    part,
    ingredients.map(({ name }) => name),
  );
  const guess =
    near.length > 0 ? ` Did you mean ${near.join(' or ')}?` : ' Write it as a wish in their own words.';
  return `No ingredient is called ${part.slice(0, 60)}.${guess}`;
};
