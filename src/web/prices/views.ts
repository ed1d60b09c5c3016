import type { BeginPage } from './begin.js';
import type { ColumnsPage } from './columns.js';
import type { PreviewPage } from './preview.js';
import type { TablePage } from './table.js';

/** The models of the pages for price lists and CSV tables. */
export type PriceViews = {
  'prices/begin': BeginPage;
  'prices/columns': ColumnsPage;
  'prices/preview': PreviewPage;
  'prices/tables': object;
  'prices/table': TablePage;
};
