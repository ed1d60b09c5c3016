import type { Offer } from '../facts/quote.js';

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
