import type { Migration } from 'kysely';
import { ground } from './0001-ground.js';
import { quantities } from './0002-quantities.js';
import { drafts } from './0003-drafts.js';
import { priceLists } from './0004-price-lists.js';
import { ticks } from './0005-ticks.js';
import { diets } from './0006-diets.js';
import { labelPhotographs } from './0007-label-photographs.js';
import { printedSheets } from './0008-printed-sheets.js';
import { costing } from './0009-costing.js';
import { quotesAtWork } from './0010-quotes-at-work.js';
import { printedLabels } from './0011-printed-labels.js';

/** Every step of the database's shape, in order; a step once released is never changed. */
export const migrations: Record<string, Migration> = {
  '0001-ground': ground,
  '0002-quantities': quantities,
  '0003-drafts': drafts,
  '0004-price-lists': priceLists,
  '0005-ticks': ticks,
  '0006-diets': diets,
  '0007-label-photographs': labelPhotographs,
  '0008-printed-sheets': printedSheets,
  '0009-costing': costing,
  '0010-quotes-at-work': quotesAtWork,
  '0011-printed-labels': printedLabels,
};
