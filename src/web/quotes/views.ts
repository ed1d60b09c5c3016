import type { QuoteEdit } from './edit.js';
import type { QuotesPage } from './list.js';
import type { NumberedPage } from './paper-show.js';
import type { NotNow } from './quote.js';
import type { QuotePage } from './show.js';

/** The models of the pages of quotes. */
export type QuoteViews = {
  'quotes/list': QuotesPage;
  'quotes/edit': QuoteEdit;
  'quotes/show': QuotePage;
  'quotes/not-now': NotNow;
  'quotes/numbered': NumberedPage;
};
