/** Keys that are addresses of pages, so that nothing can be kept under them. */
export const pageKeys: ReadonlySet<string> = new Set(['new', 'prices', 'read']);

/** A readable key from a name: "Café crème" gives "cafe-creme"; one that is taken, or is an address, gets a number. */
export const keyFrom = (name: string, taken: (key: string) => boolean = () => false): string => {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .replace(/-+$/, '');
  const key = plain || 'one';
  for (let n = 1; ; n++) {
    const numbered = n === 1 ? key : `${key}-${n}`;
    if (!pageKeys.has(numbered) && !taken(numbered)) return numbered;
  }
};

/** The next free key of a list's rows: after l1 and l7 it is l8. */
export const nextKey = (letter: string, taken: readonly string[]): string => {
  const numbers = taken.map((key) => (key.startsWith(letter) ? Number(key.slice(letter.length)) : 0));
  return `${letter}${Math.max(0, ...numbers.filter(Number.isSafeInteger)) + 1}`;
};
