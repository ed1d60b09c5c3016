import type { Figure } from './figure.js';
import type { Ground } from './ground.js';
import { measureCosts } from './parts/costs.js';
import { measureCurve } from './parts/curve.js';
import { measureGrowth } from './parts/growth.js';
import { measureLists } from './parts/lists.js';
import { measurePages } from './parts/pages.js';
import { measurePriceList } from './parts/price-list.js';
import { measureStart } from './parts/start.js';
import { measureWayOut } from './parts/way-out.js';

export type Part = (ground: Ground) => Promise<Figure[]>;

/** Every part of the bench, by the name it is asked for alone. */
export const parts: Readonly<Record<string, Part>> = {
  pages: measurePages,
  costs: measureCosts,
  curve: measureCurve,
  lists: measureLists,
  growth: measureGrowth,
  'price-list': measurePriceList,
  start: measureStart,
  'way-out': measureWayOut,
};
