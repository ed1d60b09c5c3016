import { percentMore } from './price-history.js';
import { Rational } from './quantity/rational.js';

/** Minor units as planned and as really paid, each as far as known; what it is more only where all of both is known. */
export type MoneyBeside = {
  planned: number;
  plannedKnown: boolean;
  real: number;
  realKnown: boolean;
  /** Minor units, below 0 for less. */
  more: number | undefined;
  /** Per cent of what was planned; undefined too where that was nothing. */
  percent: Rational | undefined;
};

/** What was planned beside what was real, whole minor units; the per cent is exact. */
export const moneyBeside = (
  planned: number,
  plannedKnown: boolean,
  real: number,
  realKnown: boolean,
): MoneyBeside => {
  const known = plannedKnown && realKnown;
  return {
    planned,
    plannedKnown,
    real,
    realKnown,
    more: known ? real - planned : undefined,
    percent: known ? percentMore(Rational.of(planned), Rational.of(real)) : undefined,
  };
};
