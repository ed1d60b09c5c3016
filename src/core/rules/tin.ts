import type { Recipe } from '../facts/recipe.js';
import { Rational } from '../quantity/rational.js';
import { isZero, type Refuse } from './refuse.js';

/** Why a recipe's tin can't be one: a side of nothing, or a hole as wide as the ring. */
export const tinRules = ({ tin }: Recipe, refuse: Refuse): void => {
  if (!tin) return;
  for (const side of ['diameter', 'side', 'length', 'width', 'hole', 'depth'] as const) {
    const amount = side in tin ? (tin as Record<string, unknown>)[side] : null;
    if (typeof amount === 'string' && isZero(amount))
      refuse(`tin/${side}`, 'tin-zero', `The ${side} of a tin is more than 0: type it, or take the tin out.`);
  }
  if (tin.shape === 'ring' && Rational.parse(tin.hole).compare(Rational.parse(tin.diameter)) >= 0)
    refuse(
      'tin/hole',
      'tin-hole',
      `A hole of ${tin.hole} ${tin.unit} leaves nothing of a ring of ${tin.diameter} ${tin.unit}: type the hole smaller.`,
    );
};
