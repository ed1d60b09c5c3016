import type { Payment, Quote } from '../../core/facts/quote.js';
import { counting, paidUpOn } from '../../core/quotes-of-event.js';
import { accountOf, type DueSum } from '../../core/quoting/dues.js';
import type { Format } from '../format.js';
import type { PaperRow } from './paper.js';

/** The parts of a total with their days; of an accepted quote also what of them was received, and when. */
export const dueRows = (
  dues: readonly DueSum[],
  total: number,
  { state }: Quote,
  payments: readonly Payment[],
  f: Format,
  today: string,
): PaperRow[] => {
  const paid = state === 'accepted' ? counting(payments) : [];
  const account = accountOf(total, dues, paid, today);
  const days = paidUpOn(account.dues, paid);
  return account.dues.map(({ words, amount, date, open }, i) => ({
    amount: f.money(amount),
    words: days[i]
      ? `${words}. Received ${f.dayOfMonth(days[i])}, thank you`
      : `${words}, ${date === null ? 'due on acceptance' : `due by ${f.fullDate(date)}`}${open < amount ? `. ${f.money(open)} of it is open` : ''}`,
  }));
};
