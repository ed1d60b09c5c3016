import type { BesidePage } from './afterwards/beside.js';
import type { AfterwardsPage } from './afterwards/note.js';
import type { AveragesPage } from './averages/show.js';
import type { FewerPage } from './events/fewer.js';
import type { PricesPage } from './ingredients/prices.js';
import type { MenuEngineeringPage } from './menu-engineering/show.js';
import type { PriceMovesPage } from './price-moves/show.js';

/** The models of the pages that look back: prices over time, parties held, what was learnt of them. */
export type FiguresViews = {
  'ingredients/prices': PricesPage;
  'price-moves/show': PriceMovesPage;
  'afterwards/note': AfterwardsPage;
  'afterwards/_note': AfterwardsPage;
  'afterwards/not-yet': Pick<AfterwardsPage, 'head' | 'at'>;
  'afterwards/beside': BesidePage;
  'events/fewer': FewerPage;
  'averages/show': AveragesPage;
  'menu-engineering/show': MenuEngineeringPage;
};
