/** A name as it is compared: compatible letters made one, lower case, spaces folded and trimmed. */
export const normalName = (name: string): string =>
  name.normalize('NFKC').toLowerCase().normalize('NFKC').replace(/\s+/gu, ' ').trim();
