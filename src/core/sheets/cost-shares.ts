import type { CourseCost, DishCost, EventCost } from '../costing.js';
import { allocate, toMinor } from '../money.js';
import { Rational, sum } from '../quantity/rational.js';

export type DishShare = {
  dish: DishCost;
  /** Minor units, halves up; undefined without portions. */
  aPortion: number | undefined;
  /** Per cent of the event's cost as far as it is known, in tenths; all dishes together come to 100.0. */
  share: Rational;
};

export type CourseShare = {
  course: CourseCost;
  /** Minor units; the courses add up to the event's total, and those of a guest to what one guest costs. */
  cost: number;
  /** Where its cost begins when each course stands on the one before. */
  from: number;
  aGuest: number | undefined;
  complete: boolean;
  dishes: DishShare[];
};

/** How an event's food cost is made up of courses and dishes; the parts add up to the penny. */
export const costShares = (cost: EventCost): CourseShare[] => {
  const { courses, aGuest } = cost;
  const dishes = courses.flatMap((course) => course.dishes);
  const tenths = allocate(
    1000,
    dishes.map(({ exact }) => exact),
  );
  const guest = aGuest !== undefined && allocate(aGuest, courses.map(exactOf));
  const costs = courses.map((course) => course.dishes.reduce((total, dish) => total + dish.cost, 0));
  let next = 0;
  return courses.map((course, i) => ({
    course,
    cost: costs[i]!,
    from: costs.slice(0, i).reduce((total, before) => total + before, 0),
    aGuest: guest ? guest[i] : undefined,
    complete: course.dishes.every(({ complete }) => complete),
    dishes: course.dishes.map((dish) => ({
      dish,
      aPortion: aPortionOf(dish),
      share: Rational.of(tenths[next++]!, 10),
    })),
  }));
};

const exactOf = ({ dishes }: CourseCost): Rational => sum(dishes.map(({ exact }) => exact));

const aPortionOf = ({ exact, need: { portions } }: DishCost): number | undefined =>
  portions.isZero ? undefined : toMinor(exact.over(portions));
