import { addDays, daysBetween } from '../calendar.js';
import type { Terms } from '../facts/price.js';
import type { Due, Offer, Payment } from '../facts/quote.js';
import { allocate } from '../money.js';
import { exact } from '../quantity/amount.js';
import { Rational, sum } from '../quantity/rational.js';
import { counting } from '../quotes-of-event.js';

/** `date` is null while it is due on an acceptance that has not come. */
export type DueSum = { words: string; amount: number; date: string | null };

/** What terms ask for before the balance, then the balance, with their days; those on acceptance come first. */
export const duesFrom = (terms: Terms, when: string): Due[] =>
  [
    ...terms.instalments.map(({ words, percent, days }) => ({
      words: words || 'instalment',
      percent,
      date: days === null ? null : addDays(when, -days),
    })),
    { words: 'balance', percent: null, date: addDays(when, -terms.balanceDays) },
  ].sort(byDate);

const byDate = (a: { date: string | null }, b: { date: string | null }): number =>
  (a.date ?? '') < (b.date ?? '') ? -1 : (a.date ?? '') > (b.date ?? '') ? 1 : 0;

const hundred = Rational.of(100);

/**
 * The deposit, instalments and balance of an offer in minor units, by their days; they add up to the total, and what
 * no line asks for is a balance on the party's day. What would have been due before it was accepted is due then.
 */
export const duesOf = (offer: Offer, total: number, accepted: string | null): DueSum[] => {
  const { dues } = offer;
  const asked = sharesOf(dues.map(({ percent }) => percent));
  const rest = hundred.minus(sum(asked));
  const all = rest.isZero ? dues : [...dues, { words: 'balance', date: offer.when }];
  const amounts = allocate(total, rest.isZero ? asked : [...asked, rest]);
  return all
    .map(({ words, date }, i) => ({ words, amount: amounts[i]!, date: dueOn(date, accepted) }))
    .filter(({ amount }) => amount > 0)
    .sort(byDate);
};

/** Per cent of each: as asked while anything is left; what is left goes to the first line that asks for all the rest. */
const sharesOf = (percents: readonly (string | null)[]): Rational[] => {
  let left = hundred;
  const shares = percents.map((percent) => {
    const share = percent === null ? Rational.zero : least(exact(percent), left);
    left = left.minus(share);
    return share;
  });
  const rest = percents.indexOf(null);
  return shares.map((share, i) => (i === rest ? left : share));
};

const least = (a: Rational, b: Rational): Rational => (a.compare(b) < 0 ? a : b);

const dueOn = (date: string | null, accepted: string | null): string | null =>
  date === null || (accepted !== null && date < accepted) ? accepted : date;

/** The same dues when a party is put off to another day: those with a day move as far as the party does. */
export const duesIfPostponed = (
  offer: Offer,
  total: number,
  accepted: string | null,
  to: string,
): DueSum[] => {
  const by = daysBetween(offer.when, to);
  const dues = offer.dues.map((due) => ({ ...due, date: due.date && addDays(due.date, by) }));
  return duesOf({ ...offer, when: to, dues }, total, accepted);
};

/** `open`: what of a due is not paid yet; `late`: its day is past and something of it is open. */
export type DueOpen = DueSum & { open: number; late: boolean };

/** What is paid and what is owed, in minor units; `owed` is below 0 when more was paid than the total. */
export type Account = { paid: number; owed: number; dues: DueOpen[] };

/** Payments beside a total as they stand on a day: they count for its dues in order, money given back against them. */
export const accountOf = (
  total: number,
  dues: readonly DueSum[],
  payments: readonly Payment[],
  today: string,
): Account => {
  const paid = paidOf(payments);
  let left = paid;
  const open = dues.map((due) => {
    const met = Math.max(0, Math.min(left, due.amount));
    left -= met;
    return {
      ...due,
      open: due.amount - met,
      late: met < due.amount && due.date !== null && due.date < today,
    };
  });
  return { paid, owed: total - paid, dues: open };
};

/** What came in less what went back, in minor units; what was struck out counts for nothing. */
export const paidOf = (payments: readonly Payment[]): number =>
  counting(payments).reduce((all, { amount, back }) => all + (back ? -amount : amount), 0);
