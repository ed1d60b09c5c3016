import { cupOf } from './batch.js';
import type { Measure } from './facts/common.js';
import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import type { Recipe } from './facts/recipe.js';
import { growth } from './growth.js';
import { atLeast, mixedLimit, noLimit, throughLimit } from './how-much-problems.js';
import type { LineNeed } from './line-need.js';
import { ingredientOf } from './lookup.js';
import type { Problem } from './problem.js';
import { missingFact } from './problems.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { type Base, quantity } from './quantity/units.js';
import { closureOf, scale } from './scaling.js';
import { boughtIn, isMissing, weigh } from './weighing.js';

/** What a cook has of an ingredient that is to be used up. */
export type Have = { have: Measure; of: string; as: 'bought' | 'prepared' };

/** One line that takes of it: how much at so many batches of its own recipe, of which each of the whole takes some. */
type Use = { need: LineNeed; each: Rational; batches: Rational };

/**
 * The most batches that what is at hand of an ingredient makes, through every component it goes into; exact. Lines that
 * grow by the spice rule are turned round along their slopes; whole pieces and amounts once for each batch only where
 * nothing else takes of it. Otherwise the problem says why it can't set the amount.
 */
export const batchesFrom = (recipe: Recipe, asked: Have, facts: Facts): Rational | Problem => {
  const ingredient = ingredientOf(asked.of, facts);
  const at = quantity(exact(asked.have.amount), asked.have.unit, cupOf(recipe, facts));
  const base = asked.as === 'prepared' ? 'g' : at.base;
  const all = asked.as === 'prepared' ? weigh(ingredient, at, false).prepared : at.value;
  if (isMissing(all)) return missingFact(ingredient, all, 'prepared');
  const uses = usesOf(recipe, ingredient, asked.as, base, facts);
  if (!Array.isArray(uses)) return uses;
  const stepped = uses.filter(({ need }) => need.line.scales === 'pieces' || need.line.scales === 'batch');
  if (stepped.length === 0) return uses.length > 0 ? along(uses, all) : noLimit(recipe, ingredient);
  return uses.length > 1 ? mixedLimit(recipe, ingredient) : wholeOnes(recipe, ingredient, uses[0]!, all);
};

const usesOf = (
  recipe: Recipe,
  ingredient: Ingredient,
  as: Have['as'],
  base: Base,
  facts: Facts,
): Use[] | Problem => {
  const uses: Use[] = [];
  const bent = new Set<string>();
  for (const { recipe: one, lines, factor } of scale(recipe, Rational.one, facts).value) {
    for (const need of lines) {
      const { line, component, amount } = need;
      if (component && amount && (bent.has(one.key) || !isStraight(need))) bent.add(component.key);
      if (need.ingredient !== ingredient || line.amount === null) continue;
      if (bent.has(one.key)) return throughLimit(recipe, ingredient, one);
      if (!factor || !amount) return need.problems[0] ?? noLimit(recipe, ingredient);
      if (factor.isZero || amount.isZero) continue;
      const taken =
        as === 'prepared' ? need.prepared : need.bought && boughtIn(ingredient, need.bought, base);
      if (!taken) return need.problems[0] ?? noLimit(recipe, ingredient);
      if (isMissing(taken)) return missingFact(ingredient, taken);
      uses.push({ need, each: taken.over(amount), batches: factor });
    }
  }
  return uses;
};

const isStraight = ({ line: { scales } }: LineNeed): boolean =>
  scales === 'straight' || scales === 'flour' || scales === 'taste';

/** What all lines take at so many batches of the whole, where none goes by whole ones. */
const taken = (uses: readonly Use[], factor: Rational): Rational =>
  uses.reduce((sum, { need, each, batches }) => {
    const grown = need.base!.times(growth(need.line.scales, batches.times(factor)));
    return sum.plus(each.times(grown));
  }, Rational.zero);

const two = Rational.of(2);

/** Where lines together take just so much: between two bends they grow straight. */
const along = (uses: readonly Use[], all: Rational): Rational => {
  const bends = uses.filter(({ need }) => !isStraight(need)).map(({ batches }) => two.over(batches));
  let from = Rational.zero;
  for (const bend of bends.sort((a, b) => a.compare(b))) {
    if (taken(uses, bend).compare(all) >= 0) break;
    from = bend;
  }
  const next = bends.find((bend) => bend.compare(from) > 0) ?? from.plus(Rational.one);
  const [least, most] = [taken(uses, from), taken(uses, next)];
  return from.plus(next.minus(from).times(all.minus(least)).over(most.minus(least)));
};

/** As many whole pieces, or batches begun, as there are. */
const wholeOnes = (recipe: Recipe, ingredient: Ingredient, use: Use, all: Rational): Rational | Problem => {
  const { need, each, batches } = use;
  const { line, unit, base } = need;
  if (line.scales === 'batch') {
    const begun = Rational.of(all.over(each.times(base!)).floor());
    return begun.isZero ? atLeast(recipe, ingredient, base!, unit) : begun.over(batches);
  }
  const single = unit === 'dozen' ? Rational.of(12) : Rational.one;
  const pieces = Rational.of(all.over(each).times(single).floor());
  if (pieces.isZero) return atLeast(recipe, ingredient, Rational.one, unit === 'dozen' ? 'each' : unit);
  return pieces.over(single).over(base!).over(batches);
};

/** What can be asked for by an ingredient at hand: all that go in with an amount, through every component. */
export const atHand = (recipe: Recipe, facts: Facts): Ingredient[] => {
  const found = new Set<Ingredient>();
  for (const one of closureOf(recipe, facts))
    for (const { item, amount } of one.lines)
      if ('ingredient' in item && amount !== null) found.add(ingredientOf(item.ingredient, facts));
  return [...found];
};
