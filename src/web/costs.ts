import type { CostMoved } from '../core/costs-moved.js';
import { costsBy, figureOf, gapsOf, type KitchenCosts, type RecipeFigure } from '../core/kitchen-costs.js';
import { kitchenFacts } from '../store/facts.js';
import type { Db } from '../store/schema.js';
import type { Format } from './format.js';
import { type Html, html, nothing } from './html.js';
import { typedUnit } from './typed.js';

const latest = new WeakMap<Db, KitchenCosts>();

/** What every recipe costs by the facts that stand now; what was worked out before is used as far as it still holds. */
export const costsNow = async (db: Db): Promise<KitchenCosts> => {
  const facts = await kitchenFacts(db);
  if (!facts) throw new Error('there is no kitchen to cost');
  const before = latest.get(db);
  if (before?.facts === facts) return before;
  const costs = costsBy(facts, before);
  latest.set(db, costs);
  return costs;
};

/** "£1.84 a portion", "£6.76 a kg, a guess", "not known: no price for Saffron". */
export const eachInWords = (costs: KitchenCosts, recipe: string, f: Format): Html => {
  const figure = figureOf(costs, recipe);
  if (!figure) return nothing;
  const { complete, guess } = figure;
  if (!complete) return html`<b class="loud">not known</b>${whyOpen(costs, recipe)}`;
  return html`${figureInWords(figure, f)}${guess ? ', a guess' : ''}`;
};

const figureInWords = (figure: RecipeFigure, f: Format): string =>
  `${f.money(figure.each ?? figure.batch)}${unitInWords(figure)}`;

/** " a portion", " a kg"; by the batch where nobody has said what that makes. */
const unitInWords = ({ unit }: RecipeFigure): string =>
  ` a ${unit === 'l' ? 'litre' : unit ? typedUnit(unit) : 'batch'}`;

/** "Moves 14 recipes; most: Leek tart, £1.84 → £1.97 a portion." */
export const movedInWords = ([most, ...others]: readonly CostMoved[], f: Format): string => {
  if (!most) return 'Moves no recipe’s cost.';
  const { recipe, before, after } = most;
  const all = f.count(others.length + 1, 'recipe');
  return `Moves ${all}; most: ${recipe.name}, ${shortly(before, f)} → ${shortly(after, f)}${unitInWords(after)}.`;
};

const shortly = ({ batch, each, complete }: RecipeFigure, f: Format): string =>
  complete ? f.money(each ?? batch) : 'not known';

/** The first thing that leaves a cost open, and how many more do. */
const whyOpen = (costs: KitchenCosts, recipe: string): string => {
  const [first, ...more] = gapsOf(costs, recipe).filter(({ weight }) => weight !== 'check');
  if (!first) return '';
  const why = first.sentence.replace(/^No /, 'no ').replace(/\.$/, '');
  return `: ${why}${more.length > 0 ? `, and ${more.length} more` : ''}`;
};
