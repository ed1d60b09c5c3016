import type { Format } from '../format.js';

/** A cost that is not complete says so, and one of which nothing is known is never nothing. */
export const costInWords = (minor: number | undefined, complete: boolean, f: Format): string => {
  if (minor === undefined) return 'not known';
  return complete ? f.money(minor) : `${f.money(minor)} so far`;
};
