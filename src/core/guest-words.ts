import { diets } from './diets.js';

/** A guest as somebody says it on the phone. */
export type GuestWords = { count: number; name: string; diets: string[]; other: string };

/**
 * "Ana Reed, vegan", "3 vegetarians" or "2 vegans, no nuts": how many, who, and the diets this workbook knows; a
 * wish it doesn't know is kept in their own words, and nothing is dropped.
 */
export const readGuestWords = (text: string): GuestWords => {
  const parts = text
    .replace(/[()]/g, ',')
    .split(',')
    .map((part) => part.trim())
    .filter(Boolean);
  const counted = /^(\d{1,6})\s+(.+)$/.exec(parts[0] ?? '');
  const said = counted ? [counted[2]!, ...parts.slice(1)] : parts.slice(1);
  const wishes = said.filter((part) => dietOf(part) === undefined && !/^(guests?|people)$/i.test(part));
  return {
    count: counted ? Math.max(1, Number(counted[1])) : 1,
    name: counted ? '' : (parts[0] ?? ''),
    diets: [...new Set(said.flatMap((part) => dietOf(part) ?? []))],
    other: wishes.join(', '),
  };
};

const plain = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[-\s]+/g, ' ')
    .trim();

/** A diet by its name, its first words or its plural: "coeliac" is "coeliac, no gluten", "vegans" is "vegan". */
const known = new Map(
  diets.flatMap(({ id, name }) =>
    [id, name, name.split(',')[0]!].flatMap((word) => [
      [plain(word), id] as const,
      [`${plain(word)}s`, id] as const,
    ]),
  ),
);

const dietOf = (words: string): string | undefined => known.get(plain(words));
