import { type Diet, diets } from './diets.js';

/** A guest as somebody says it on the phone. */
export type GuestWords = { count: number; name: string; diets: string[]; other: string };

/**
 * "Ana Reed, vegan", "3 vegetarians" or "2 vegans, no nuts": how many, who, and the diets this workbook knows; a
 * wish it doesn't know is kept in their own words, and nothing is dropped.
 */
export const readGuestWords = (text: string, own: readonly Pick<Diet, 'id' | 'name'>[] = []): GuestWords => {
  const dietsIn = (words: string): string[] => dietsNamed(words, named(own));
  const parts = text
    .replace(/[();:]|\s[-–—]\s/g, ',')
    .split(',')
    .map((part) => part.trim())
    .filter(Boolean);
  const counted = /^(\d{1,6})\s+(.+)$/.exec(inFigures(parts[0] ?? ''));
  const { name, wish } = counted ? { name: '', wish: counted[2]! } : nameAndWish(parts[0] ?? '', dietsIn);
  const said = [wish, ...parts.slice(1)].filter(Boolean);
  const wishes = said.filter((part) => dietsIn(part).length === 0 && !/^(guests?|people)$/i.test(part));
  return {
    count: counted ? Math.max(1, Number(counted[1])) : 1,
    name,
    diets: [...new Set(said.flatMap(dietsIn))],
    other: wishes.join(', '),
  };
};

const numbers = 'one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** "Two vegans" are 2; what is written large behind it is a name: "Seven Askerby". */
const inFigures = (text: string): string =>
  text.replace(/^\p{L}+(?= +\p{Ll})/u, (word) => {
    const at = numbers.indexOf(word.toLowerCase());
    return at < 0 ? word : String(at + 1);
  });

/** Words that a name does not have and a wish begins with, or ends with after what it is about. */
const begins =
  /^(no|not|without|allergic|avoids?|hates|can['’]?t|cannot|doesn['’]?t|don['’]?t|only|low|on)$/i;
const ends = /^(free|allergy|intolerant|intolerance)$/i;

type DietsIn = (words: string) => string[];

/** "Pip no nuts" and "Rowan vegan" without a comma: a wish left in the name would let its guest eat everything. */
const nameAndWish = (first: string, dietsIn: DietsIn): { name: string; wish: string } => {
  const words = first.split(/\s+/);
  const at = words.findIndex(
    (word, i) =>
      begins.test(word) ||
      ends.test(words[i + 1] ?? '') ||
      namesDiet(words.slice(i).join(' '), dietsIn) ||
      hints(word, dietsIn),
  );
  return at < 0
    ? { name: first, wish: '' }
    : { name: words.slice(0, at).join(' '), wish: words.slice(at).join(' ') };
};

const illness = /^(?:allerg|anaphyl|co?eliac|diabet|intoleran|lactose)/i;

/** A word that speaks of a diet, whatever stands around it: "coeliac disease", "nut-allergic", "nuts+milk". */
const hints = (word: string, dietsIn: DietsIn): boolean =>
  word
    .split(/[^\p{L}]+/u)
    .some(
      (part) =>
        illness.test(part) || (dietsIn(part).length > 0 && !(isAvoided(part) && /^\p{Lu}/u.test(part))),
    );

const isAvoided = (word: string): boolean => plain(word).replace(/s$/, '') in avoided;

/** What a diet avoids may be a family's name as well: Ana Fish. */
const namesDiet = (words: string, dietsIn: DietsIn): boolean =>
  dietsIn(words).length > 0 && !(plain(words) in avoided);

const plain = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[-\s]+/g, ' ')
    .trim();

/** What is also said for what a diet avoids. Shellfish are both kinds; who avoids gluten is taken for a coeliac. */
const avoided: Record<string, string[]> = {
  gluten: ['coeliac'],
  wheat: ['no-wheat'],
  milk: ['no-milk'],
  dairy: ['no-milk'],
  egg: ['no-eggs'],
  fish: ['no-fish'],
  crustacean: ['no-crustaceans'],
  mollusc: ['no-molluscs'],
  shellfish: ['no-crustaceans', 'no-molluscs'],
  nut: ['no-nuts'],
  'tree nut': ['no-nuts'],
  peanut: ['no-peanuts'],
  soya: ['no-soya'],
  soy: ['no-soya'],
  celery: ['no-celery'],
  mustard: ['no-mustard'],
  sesame: ['no-sesame'],
  sulphite: ['no-sulphites'],
  sulfite: ['no-sulphites'],
  lupin: ['no-lupin'],
  pork: ['no-pork'],
  beef: ['no-beef'],
  alcohol: ['no-alcohol'],
  gelatine: ['no-gelatine'],
};

const also: Record<string, string[]> = {
  celiac: ['coeliac'],
  veggie: ['vegetarian'],
  pescetarian: ['pescatarian'],
};

/** A diet by its name, its first words or its plural: "coeliac" is "coeliac, no gluten", "vegans" is "vegan". */
const named = (list: readonly Pick<Diet, 'id' | 'name'>[]): [string, string[]][] =>
  list.flatMap(({ id, name }) =>
    [id, name, name.split(',')[0]!].map((word): [string, string[]] => [plain(word), [id]]),
  );

const known = new Map<string, string[]>([
  ...Object.entries(also),
  ...named(diets),
  ...Object.entries(avoided).flatMap(([what, ids]) =>
    [what, `${what} free`, `${what} allergy`].map((word): [string, string[]] => [word, ids]),
  ),
]);

/** "gluten free", "no dairy", "allergic to nuts" and "vegans" name diets; what names none is none. */
const dietsNamed = (words: string, own: readonly [string, string[]][]): string[] => {
  const all = new Map([...own, ...known]);
  const said = plain(words).replace(/^(no|not|without|allergic to|avoids) /, '');
  return all.get(plain(words)) ?? all.get(said) ?? all.get(said.replace(/s$/, '')) ?? [];
};
