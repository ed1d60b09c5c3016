import { Rational } from './rational.js';

/**
 * A figure as a kitchen can weigh or measure it: "2.15" kg, "1" and "1/2" tsp, "4" lb and "5 1/2" oz; of a range the
 * upper end, with the lower one in `from`. For reading, never for reckoning.
 */
export type Shown = { figure: string; fraction?: string; unit: string; and?: Shown[]; from?: Shown };

/** Whether the ends of a range can share the unit that is said after them. */
export const inOneUnit = (from: Shown, to: Shown): boolean =>
  from.unit === to.unit && !from.and?.length && !to.and?.length;

/** recipe: kilos and litres to two places; prep: to one; stated: as a recipe says, where the scales can show that. */
export type Rounding = 'recipe' | 'prep' | 'stated';

const r = Rational.of;

/** The nearest multiple of a step, halves up. */
export const toStep = (value: Rational, step: Rational): Rational => r(value.over(step).round()).times(step);

/** An exact figure as text. */
export const plain = (value: Rational): string => value.toString();

/** The least step a scale of `finest` can show that is no finer than the one wanted. */
export const coarser = (wanted: Rational, finest: Rational): Rational =>
  r(wanted.over(finest).ceil()).times(finest);

/** What to say of an amount that is less than the least step. */
export const under = (step: Rational): { figure: string; fraction?: string } =>
  step.isWhole ? { figure: `under ${plain(step)}` } : { figure: 'under', fraction: `${step.n}/${step.d}` };

/** A figure as a whole number and a proper fraction. */
export const asMixed = (value: Rational): { figure: string; fraction?: string } => {
  const whole = r(value.floor());
  const rest = value.minus(whole);
  if (rest.isZero) return { figure: plain(whole) };
  return { figure: whole.isZero ? '' : plain(whole), fraction: `${rest.n}/${rest.d}` };
};

const spoonfuls = [1, 2, 3, 4, 8];
// Scales and jugs have no thirds.
export const quarters = [1, 2, 4];

/** The nearest whole, half, third, quarter or eighth; halves only above ten, whole figures above a hundred. */
export const asFraction = (value: Rational, parts = spoonfuls): { figure: string; fraction?: string } => {
  const finest = value.compare(r(100)) >= 0 ? 1 : value.compare(r(10)) >= 0 ? 2 : parts.at(-1)!;
  let best = r(value.round());
  for (const d of parts) {
    if (d > finest) break;
    const near = toStep(value, r(1, d));
    if (distance(near, value).compare(distance(best, value)) < 0) best = near;
  }
  return best.isZero && !value.isZero ? under(r(1, finest)) : asMixed(best);
};

const distance = (a: Rational, b: Rational): Rational => {
  const d = a.minus(b);
  return d.sign < 0 ? d.negated() : d;
};
