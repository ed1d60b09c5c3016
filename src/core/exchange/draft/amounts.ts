import { exact } from '../../quantity/amount.js';
import { type Read, readMoreThanZero } from '../../reading.js';

/** One figure, or both ends of a range; null for what goes in to taste. */
export type Amounts = { amount: string | null; amountTo: string | null };

/** An amount as a draft shows it: one figure, a range ("2–3", "2 to 3"), or nothing for what goes in to taste. */
export const readAmounts = (text: string): Read<Amounts> => {
  const plain = text.trim();
  if (plain === '') return { value: { amount: null, amountTo: null } };
  const [from = '', to, ...more] = plain.split(/\s*[-–—]\s*|\s+to\s+/i);
  const low = readMoreThanZero(more.length > 0 ? plain : from);
  if ('sentence' in low) return low;
  if (to === undefined) return { value: { amount: low.value, amountTo: null } };
  const high = readMoreThanZero(to);
  if ('sentence' in high) return high;
  if (exact(high.value).compare(exact(low.value)) <= 0)
    return {
      sentence: `A range goes from the smaller figure to the larger, such as 2–3. You entered ${plain.slice(0, 40)}.`,
    };
  return { value: { amount: low.value, amountTo: high.value } };
};
