import type { Problem } from '../core/problem.js';

/** What the button beside a problem does, by the problem's code. */
const mends: Record<string, string> = {
  'label-not-read': 'Read the label',
  'no-price': 'Add a price',
  'no-preferred-pack': 'Choose a pack',
  'guessed-price': 'Enter the price',
  'no-yield': 'Add the yield',
  'no-density': 'Add the density',
  'no-weight': 'Add the weight',
  'no-recipe-yield': 'Say what it makes',
  'odd-yield': 'Look at the figures',
  'no-lines': 'Add lines',
  'no-steps': 'Add steps',
};

/** A problem with what its button says. */
export const withMend = (problem: Problem): Problem & { mend: string } => ({
  ...problem,
  mend: mends[problem.code] ?? `Open ${problem.subject.name}`,
});
