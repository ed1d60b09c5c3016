import type { Read } from '../../reading.js';
import { readRange } from '../../reading-range.js';

/** One figure, or both ends of a range; null for what goes in to taste. */
export type Amounts = { amount: string | null; amountTo: string | null };

/** An amount of a unit as a draft shows it: a figure or a range as cooks write it, or nothing for what goes in to taste. */
export const readAmounts = (text: string, unit = ''): Read<Amounts> =>
  text.trim() === '' ? { value: { amount: null, amountTo: null } } : readRange(text, unit);
