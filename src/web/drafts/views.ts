import type { ReadPage } from './begin.js';
import type { DraftPage } from './draw.js';

/** The models of the pages that recipes are read in by. */
export type DraftViews = {
  'drafts/begin': ReadPage;
  'drafts/show': DraftPage;
  'drafts/_form': DraftPage;
};
