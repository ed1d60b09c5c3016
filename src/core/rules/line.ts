import type { Line, Recipe } from '../facts/recipe.js';
import { share } from '../flour.js';
import type { Known } from '../known.js';
import { Rational } from '../quantity/rational.js';
import { baseOf } from '../quantity/units.js';
import { isZero, ownUnit, type Refuse } from './refuse.js';

/** Why a line of a recipe cannot be saved. */
export const lineRules = (line: Line, known: Known, refuse: Refuse): void => {
  const at = `lines/${line.key}`;
  ownUnit(`${at}/unit`, line.unit, refuse, 'share');
  amounts(line, at, refuse);
  cooked(line, at, refuse);
  const straight = line.scales === 'straight' || line.scales === 'flour' || line.scales === 'taste';
  if (line.unit === share && !straight)
    refuse(
      `${at}/scales`,
      'share-scales',
      'A per cent of the flour grows as the flour does: let the line scale straight.',
    );
  if ('ingredient' in line.item && !known.ingredients.has(line.item.ingredient))
    refuse(
      `${at}/item`,
      'no-such-ingredient',
      `There is no ingredient with the key "${line.item.ingredient}".`,
    );
  if ('component' in line.item && !known.recipes.has(line.item.component))
    refuse(`${at}/item`, 'no-such-recipe', `There is no recipe with the key "${line.item.component}".`);
};

const amounts = ({ amount, amountTo, scales }: Line, at: string, refuse: Refuse): void => {
  if (amount === null && scales !== 'taste')
    refuse(`${at}/amount`, 'no-amount', 'Type an amount, or let the line go to taste.');
  if (amount !== null && scales !== 'taste' && isZero(amount))
    refuse(`${at}/amount`, 'amount-zero', 'An amount is more than 0: type one, or let the line go to taste.');
  if (amountTo === null) return;
  if (amount === null)
    refuse(`${at}/amount`, 'range', `A range has two ends: type the lower one too, or ${amountTo} alone.`);
  else if (Rational.parse(amountTo).compare(Rational.parse(amount)) <= 0)
    refuse(
      `${at}/amount`,
      'range',
      `A range goes up: its upper end, ${amountTo}, is not more than ${amount}. Type it as 2–3.`,
    );
};

const cooked = ({ stated, cooked: how, item, unit }: Line, at: string, refuse: Refuse): void => {
  if (stated !== 'cooked') return;
  if ('component' in item)
    refuse(
      `${at}/stated`,
      'cooked-component',
      'A recipe used in another is taken as it is made: its own page says what it loses in cooking.',
    );
  else if (how === '')
    refuse(
      `${at}/cooked`,
      'cooked-how',
      'Type how it is cooked, such as roasted: what to buy is worked out from that.',
    );
  if (unit !== share && baseOf(unit) !== 'g')
    refuse(
      `${at}/unit`,
      'cooked-weight',
      'Once cooked it is known by weight: type one such as 2.5 kg, or let the quantity state the usual.',
    );
};

const hundred = Rational.of(100);

/** Flour in per cent is all in per cent and comes to 100; and what others are a share of is one figure, no range. */
export const flourRules = ({ lines }: Recipe, refuse: Refuse): void => {
  const flour = lines.filter(({ scales, amount }) => scales === 'flour' && amount !== null);
  const shares = flour.filter(({ unit }) => unit === share);
  const last = `lines/${flour.at(-1)?.key}`;
  if (shares.length > 0 && shares.length < flour.length)
    refuse(
      `${last}/unit`,
      'flour-both',
      'The flour is partly in per cent and partly not: enter all of it in per cent, or none.',
    );
  const sum = shares.reduce((all, { amount }) => all.plus(Rational.parse(amount!)), Rational.zero);
  if (shares.length > 0 && shares.length === flour.length && !sum.equals(hundred))
    refuse(
      `${last}/amount`,
      'flour-hundred',
      `The flour is 100 per cent by itself, and these lines come to ${sum.toString()}.`,
    );
  const range = lines.some(({ unit }) => unit === share) && flour.find(({ amountTo }) => amountTo !== null);
  if (range)
    refuse(
      `lines/${range.key}/amount`,
      'flour-range',
      'Other lines are a per cent of the flour, so it is one figure: type one end of the range.',
    );
};
