import { money } from '../facts/common.js';
import type { Due, Offer, Option } from '../facts/quote.js';
import { Rational } from '../quantity/rational.js';
import { offerComes } from '../quoting/offer-comes.js';

/** Why an offer cannot be issued today, in sentences; none when it can. */
export const notYetIssuable = (offer: Offer, today: string): string[] => {
  const { options, validUntil, finalCount, when, guests } = offer;
  const said = options.map((option) => priceFault(option, offer)).filter(Boolean);
  if (guests === 0) said.push('It is for 0 guests: say how many come under Change the draft.');
  const names = options.map(({ name }) => name.trim().toLowerCase());
  if (options.length > 1 && names.some((name, at) => name === '' || names.indexOf(name) !== at))
    said.push(
      'There is more than one menu to choose from: give each a name of its own under Change the draft.',
    );
  if (validUntil !== null && validUntil < today)
    said.push('The day until which it is open has passed: set a later one under Change the draft.');
  if (finalCount !== null && finalCount > when)
    said.push('The final number is asked for after the party: set an earlier day under Change the draft.');
  return said;
};

/** Why a menu cannot be sold at its price, in a sentence; empty when it can. */
const priceFault = (option: Option, offer: Offer): string => {
  const { name, lines, discount } = option;
  const what = name || 'The menu';
  if (lines.length === 0)
    return `${what} has no price yet: say how many guests pay how much under Change the draft.`;
  const { gross, minimum, total } = offerComes(option, offer);
  if (discount && 'off' in discount && discount.off > gross + minimum)
    return `More is taken off than ${name || 'the menu'} comes to: take less off under Change the draft.`;
  return money.safeParse(gross + minimum).success && money.safeParse(total).success
    ? ''
    : `${what} comes to more than can be kept here: look at how many pay how much under Change the draft.`;
};

/** Why instalments of a kitchen's terms cannot be asked for, in a sentence; empty when the balance is what they leave. */
export const instalmentsFault = (instalments: readonly { percent: string }[]): string =>
  duesFault([...instalments, { percent: null }]);

/** Why parts of a total cannot be asked for as they are, in a sentence; empty when they add up to it. */
export const duesFault = (dues: readonly Pick<Due, 'percent'>[]): string => {
  const shares = dues.flatMap(({ percent }) => (percent === null ? [] : [Rational.parse(percent)]));
  const all = shares.reduce((sum, one) => sum.plus(one), Rational.zero).compare(Rational.of(100));
  const rest = dues.length - shares.length;
  if (rest > 1) return 'Only one part can be all that is left: give the others a share in per cent.';
  if (all > 0) return 'The shares come to more than 100 per cent: make them less.';
  return dues.length > 0 && rest === 0 && all < 0
    ? 'The shares leave something over: leave the share of the balance empty, and it takes all that is left.'
    : '';
};
