import type { CostLine } from './facts/cost-line.js';
import type { Event } from './facts/event.js';
import type { Kitchen } from './facts/kitchen.js';
import type { SellingPrice } from './facts/price.js';
import { startingCosts } from './whole-cost/cost-of-party.js';

/** What a new event starts with beside its menu. */
export type Starting = Pick<Event, 'costs' | 'price'>;

/**
 * The costs and the price rule a new event starts with: those of the event whose menu it copies, else the kitchen's
 * usual ones. A total and a discount were for that party alone and are not copied; groups are matched by name.
 */
export const startingWith = (from: Event | undefined, to: Event, kitchen: Kitchen): Starting => ({
  costs: costsOf(from, kitchen),
  price: from ? priceOf(from, to, kitchen) : { ...to.price, roundTo: kitchen.roundTo },
});

/** A price rule for another way to set it: groups keep theirs, the kitchen's rounding holds, no minimum. */
export const priceBy = (price: SellingPrice, by: SellingPrice['by'], { roundTo }: Kitchen): SellingPrice => ({
  ...price,
  by,
  roundTo,
  minimum: null,
});

const costsOf = (from: Event | undefined, kitchen: Kitchen): CostLine[] =>
  from && from.costs.length > 0 ? structuredClone(from.costs) : startingCosts(kitchen);

const priceOf = (from: Event, to: Event, { roundTo }: Kitchen): SellingPrice => {
  const { by, groups } = from.price;
  const nameOf = (key: string) =>
    from.groups
      .find((group) => group.key === key)
      ?.name.trim()
      .toLowerCase();
  return {
    ...from.price,
    by: by && 'total' in by ? null : by,
    roundTo: by === null ? roundTo : from.price.roundTo,
    groups: groups.flatMap(({ group, pays }) => {
      const name = nameOf(group);
      const other = to.groups.find((one) => one.name.trim().toLowerCase() === name);
      return other ? [{ group: other.key, pays }] : [];
    }),
    discount: null,
    discountFor: '',
  };
};
