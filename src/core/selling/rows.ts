import type { Event, Group } from '../facts/event.js';
import { allocate } from '../money.js';
import { exact } from '../quantity/amount.js';
import { Rational, sum } from '../quantity/rational.js';

/** What a group of guests comes to; `each` is undefined where a total is shared out that does not divide. */
export type SoldRow = { group: Group; each: number | undefined; guests: number; amount: number };

/** What one of a group pays: a price of their own, or a share of the full one. */
type Payer = { group: Group; own: number } | { group: Group; share: Rational };

/** The groups that come, each with what one of it pays; a group not named pays in full. */
export const payersOf = ({ groups, price }: Event): Payer[] => {
  const pays = new Map(price.groups.map((one) => [one.group, one.pays]));
  return groups
    .filter(({ guests }) => guests > 0)
    .map((group) => {
      const said = pays.get(group.key);
      if (said && 'aGuest' in said) return { group, own: said.aGuest };
      return { group, share: said ? exact(said.percent).over(Rational.of(100)) : Rational.one };
    });
};

/** How many full prices the guests pay together, and what those with a price of their own come to. */
export const weightOf = (payers: readonly Payer[]): { full: Rational; own: number } => ({
  full: sum(
    payers.map((one) => ('share' in one ? one.share.times(Rational.of(one.group.guests)) : Rational.zero)),
  ),
  own: payers.reduce((all, one) => all + ('own' in one ? one.own * one.group.guests : 0), 0),
});

/**
 * The rows at a full price. A share of it is worked out, so it goes up to a multiple of `step`, but a share of no more
 * than all of it never above it.
 */
export const rowsAt = (payers: readonly Payer[], aGuest: number, step: number): SoldRow[] =>
  payers.map((payer) => rowOf(payer.group, 'own' in payer ? payer.own : shareAt(payer.share, aGuest, step)));

const rowOf = (group: Group, each: number): SoldRow => ({
  group,
  each,
  guests: group.guests,
  amount: each * group.guests,
});

const shareAt = (share: Rational, aGuest: number, step: number): number => {
  const up = Number(share.times(Rational.of(aGuest)).over(Rational.of(step)).ceil()) * step;
  return share.compare(Rational.one) > 0 ? up : Math.min(up, aGuest);
};

/**
 * The rows of a total: at a full price where it divides to the minor unit, else the total stands and is shared out
 * among those without a price of their own; undefined where nobody is there to pay what is left of it.
 */
export const rowsOfTotal = (
  payers: readonly Payer[],
  total: number,
): { rows: SoldRow[]; aGuest: number | undefined } | undefined => {
  const { full, own } = weightOf(payers);
  const rest = total - own;
  if (rest < 0 || (full.isZero && rest > 0)) return undefined;
  const price = full.isZero ? Rational.zero : Rational.of(rest).over(full);
  const whole = (one: Payer) => 'own' in one || one.share.times(price).isWhole;
  if (price.isWhole && payers.every(whole))
    return { rows: rowsAt(payers, Number(price.floor()), 1), aGuest: Number(price.floor()) };
  const parts = allocate(
    rest,
    payers.map((one) => ('own' in one ? Rational.zero : one.share.times(Rational.of(one.group.guests)))),
  );
  const rows = payers.map((one, i) =>
    'own' in one
      ? rowOf(one.group, one.own)
      : { group: one.group, each: undefined, guests: one.group.guests, amount: parts[i]! },
  );
  return { rows, aGuest: undefined };
};

/** The amounts a paper has a line for: what is shared out of a total stands on one. */
export const linesOf = (rows: readonly SoldRow[]): number[] => {
  const shared = rows.filter(({ each }) => each === undefined).reduce((all, { amount }) => all + amount, 0);
  const named = rows.filter(({ each }) => each !== undefined).map(({ amount }) => amount);
  return shared ? [shared, ...named] : named;
};
