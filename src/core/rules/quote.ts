import type { Due, Offer } from '../facts/quote.js';
import { Rational } from '../quantity/rational.js';

/** Why an offer cannot be issued today, in sentences; none when it can. */
export const notYetIssuable = ({ options, validUntil }: Offer, today: string): string[] => {
  const said: string[] = [];
  for (const { name, lines } of options)
    if (lines.length === 0)
      said.push(
        `${name || 'The menu'} has no price yet: say how many guests pay how much under Change the draft.`,
      );
  const names = options.map(({ name }) => name.trim().toLowerCase());
  if (options.length > 1 && names.some((name, at) => name === '' || names.indexOf(name) !== at))
    said.push(
      'There is more than one menu to choose from: give each a name of its own under Change the draft.',
    );
  if (validUntil !== null && validUntil < today)
    said.push('The day until which it is open has passed: set a later one under Change the draft.');
  return said;
};

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
