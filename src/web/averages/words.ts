import type { EatenAverage } from '../../core/averages.js';
import type { Format } from '../format.js';

/** "last 3 parties", "one party". */
export const partiesInWords = (n: number, f: Format): string =>
  n === 1 ? 'one party' : `last ${f.count(n, 'party', 'parties')}`;

/** That more might have been eaten, where nothing came back. */
export const ranOutWords = ({ ranOut, parties }: EatenAverage, f: Format): string => {
  if (ranOut === 0) return '';
  if (parties === 1) return 'nothing was left, so more might have been eaten';
  return `nothing was left at ${f.number(ranOut)} of them, so more might have been eaten`;
};
