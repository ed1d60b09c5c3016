import { atThePot } from '../core/line-problems.js';
import type { Problem } from '../core/problem.js';
import { pageOf, whereMended } from './links.js';

/** What the button beside a problem does, by the problem's code. */
const mends: Record<string, string> = {
  'nothing-to-eat': 'Find the smallest way out',
  'too-few-portions': 'Find the smallest way out',
  'not-known': 'See who can eat what',
  'may-contain': 'See who can eat what',
  'not-answered': 'Open diets',
  'own-words': 'Open diets',
  'diet-caution': 'Open diets',
  'not-kept-apart': 'Change menu',
  'too-many-answers': 'Open diets',
  'oven-clash': 'Change menu',
  'no-drive': 'Add the drive',
  'to-taste': 'Open the recipe',
  'label-not-read': 'Read the label',
  'label-list-open': 'Enter its label',
  'label-place-open': 'Look at the line',
  'label-to-taste': 'Look at the line',
  'label-use-by-open': 'Enter the days',
  'no-price': 'Add a price',
  'no-preferred-pack': 'Choose a pack',
  'guessed-price': 'Enter the price',
  'no-yield': 'Add the yield',
  'no-density': 'Add the density',
  'no-weight': 'Add the weight',
  'no-cooked-yield': 'Add the cooked yield',
  'no-flour': 'Look at the flour',
  'scaled-far': 'Look at the line',
  'minutes-far': 'Look at the steps',
  'no-recipe-yield': 'Say what it makes',
  'odd-yield': 'Look at the figures',
  'no-lines': 'Add lines',
  'eaten-whole': 'Look at the yield',
  'no-steps': 'Add steps',
  'no-tin': 'Add the tin',
  'no-pans': 'Add its pans',
  'no-cost': 'Add the cost',
  'no-rate': 'Add the rate',
  'no-work': 'Add steps',
  'no-minutes': 'Add the minutes',
};

/** What goes in to taste, or may not scale straight, is decided at the pot; there is nothing to settle about it. */
export const toSettle = (problem: Problem): boolean => !atThePot(problem);

/** Things to settle that one button mends, told in one place; each keeps the place of the first. */
export const together = <T extends { href: string; mend: string; sentence: string }>(
  items: readonly T[],
  same: (item: T) => string,
): (T & { sentences: string[] })[] => {
  const found = new Map<string, T & { sentences: string[] }>();
  for (const item of items) {
    const key = [same(item), item.href, item.mend].join(' ');
    const first = found.get(key);
    if (first) first.sentences.push(item.sentence);
    else found.set(key, { ...item, sentences: [item.sentence] });
  }
  return [...found.values()];
};

/** What a guest finds to eat is seen beside the dishes, not where guests are entered. */
const ofCoverage = ['not-known', 'may-contain'];

/** Somebody goes without, and the search says by how little that is mended. */
const ofWayOut = ['nothing-to-eat', 'too-few-portions'];

/** What the button beside a problem says and where it leads. */
export const mendOf = ({ code, subject }: Problem): { mend: string; href: string } => ({
  mend: mends[code] ?? `Open ${subject.name}`,
  href: hrefOf(code, subject),
});

const hrefOf = (code: string, subject: Problem['subject']): string => {
  if (ofWayOut.includes(code)) return `${pageOf('event', subject.key)}/way-out`;
  return ofCoverage.includes(code)
    ? `${pageOf('event', subject.key)}/allergens#guests`
    : whereMended(subject);
};

/** A problem with what its button says and where that leads. */
export const withMend = (problem: Problem): Problem & { mend: string; href: string } => ({
  ...problem,
  ...mendOf(problem),
});
