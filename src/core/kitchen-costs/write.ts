import { grown } from '../growth.js';
import { Rational } from '../quantity/rational.js';
import { componentsFirst } from './order.js';
import { type Book, readLines, takenAt, type Written } from './own.js';
import { pricedBy } from './priced-by.js';
import { open } from './sums.js';

/**
 * Writes down what one batch of every recipe costs, components first. As when a recipe is scaled, the uses of a
 * component within it are added up before a line of whole pieces, a herb or a fixed amount is worked out. Where nothing
 * below a component goes by such lines, its cost stands for all of it and nobody looks further down.
 */
export const writeCosts = (book: Book): void =>
  componentsFirst(book.facts, book.written, (recipe) => {
    const one: Written = {
      recipe,
      order: book.written.size,
      priced: pricedBy(recipe, book.facts),
      straight: 0,
      cost: 0,
      uses: [],
      bent: [],
      even: true,
      unknown: false,
      reasons: [],
      by: undefined,
      made: undefined,
    };
    readLines(one, book);
    one.straight = book.sums.sum(one.reasons.length > 0 ? open : 0);
    one.even = one.bent.length === 0 && one.uses.every(({ of, grows }) => of.even && !grows);
    one.unknown = one.uses.some(({ of, batches }) => !batches || of.unknown);
    book.written.set(recipe.key, one);
    writeCost(one, book);
  });

const writeCost = (whole: Written, book: Book): void => {
  const { sums } = book;
  const { opened, closed } = below(whole);
  whole.made = Rational.one;
  for (const one of opened) {
    const { made, recipe } = one;
    sums.part(one.straight, made ?? Rational.zero);
    for (const { of, base, unit, scales } of one.bent)
      sums.part(of, made ? grown(base, unit, scales, made) : Rational.zero);
    for (const use of one.uses) {
      const more = takenAt(use, recipe, made, book.facts);
      use.of.made = more && use.of.made?.plus(more);
    }
  }
  for (const one of closed) sums.part(one.cost, one.made ?? Rational.zero);
  whole.cost = sums.sum(whole.unknown ? open : 0);
};

/** What is below a recipe: those whose own lines must be looked at, each before its components, and those whose cost will do. */
const below = (whole: Written): { opened: Written[]; closed: Written[] } => {
  const opened = [whole];
  const closed: Written[] = [];
  for (const { uses } of opened)
    for (const { of } of uses) {
      if (of.by === whole) continue;
      of.by = whole;
      of.made = Rational.zero;
      if (whole.unknown || !of.even) opened.push(of);
      else closed.push(of);
    }
  if (opened.some(({ order }, i) => i > 0 && order > opened[i - 1]!.order))
    opened.sort((a, b) => b.order - a.order);
  return { opened, closed };
};
