import type { PricesPage } from './ingredients/prices.js';
import type { PriceMovesPage } from './price-moves/show.js';

/** The models of the pages that look back: prices over time, parties held, what was learnt of them. */
export type FiguresViews = {
  'ingredients/prices': PricesPage;
  'price-moves/show': PriceMovesPage;
};
