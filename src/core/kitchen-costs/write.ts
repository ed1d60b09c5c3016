import { grown } from '../growth.js';
import { Rational } from '../quantity/rational.js';
import type { Below, Book } from './book.js';
import { componentsFirst } from './order.js';
import { readLines, takenAt } from './own.js';
import { open } from './sums.js';

/**
 * Writes down what one batch of every recipe costs, components first. As when a recipe is scaled, the uses of a
 * component within it are added up before a line of whole pieces, a herb or a fixed amount is worked out. Where nothing
 * below a component goes by such lines, its cost stands for all of it and nobody looks further down.
 */
export const writeCosts = (book: Book): void =>
  componentsFirst(book, (recipe) => {
    readLines(recipe, book);
    book.cost.push(writeCost(book.add(recipe), book));
  });

const writeCost = (whole: number, book: Book): number => {
  const { sums, uses, usesFrom, bent, bentFrom, taken, recipes } = book;
  const { opened, opens, closed, closes } = lookBelow(whole, book);
  taken[whole] = Rational.one;
  for (let at = 0; at < opens; at += 1) {
    const one = opened[at]!;
    const made = taken[one];
    sums.part(book.straight[one]!, made ?? Rational.zero);
    for (let i = bentFrom[one]!; i < bentFrom[one + 1]!; i += 1) {
      const { of, base, unit, scales } = bent[i]!;
      sums.part(of, made ? grown(base, unit, scales, made) : Rational.zero);
    }
    for (let i = usesFrom[one]!; i < usesFrom[one + 1]!; i += 1) {
      const use = uses[i]!;
      const more = takenAt(use, made, recipes[one]!, book);
      taken[use.of] = more && taken[use.of]?.plus(more);
    }
  }
  for (let at = 0; at < closes; at += 1) {
    const one = closed[at]!;
    sums.part(book.cost[one]!, taken[one] ?? Rational.zero);
  }
  return sums.sum(book.unknown[whole] ? open : 0);
};

/** Finds what is below a recipe, of which nothing is taken yet. */
const lookBelow = (whole: number, { uses, usesFrom, by, taken, even, unknown, below }: Book): Below => {
  const { opened, closed } = below;
  const openAll = unknown[whole]!;
  let opens = 1;
  let closes = 0;
  let inOrder = true;
  opened[0] = whole;
  for (let at = 0; at < opens; at += 1) {
    const one = opened[at]!;
    for (let i = usesFrom[one]!; i < usesFrom[one + 1]!; i += 1) {
      const { of } = uses[i]!;
      if (by[of] === whole) continue;
      by[of] = whole;
      taken[of] = Rational.zero;
      if (openAll || !even[of]) {
        inOrder &&= of < opened[opens - 1]!;
        opened[opens++] = of;
      } else closed[closes++] = of;
    }
  }
  if (!inOrder) opened.subarray(0, opens).sort().reverse();
  below.opens = opens;
  below.closes = closes;
  return below;
};
