/** The model of every view, by its name. A view sees these and what `Given` in page.ts names, nothing else. */
import type { MergeView } from './merge/show.js';

export type Views = {
  'merge/show': MergeView;
  'errors/show': { sentence: string; status: number };
  'errors/_notice': { sentence: string; status: number };
  'account/sign-in': { to: string };
  'account/_sign-in': { to: string };
  'menu/show': { pages: readonly { word: string; href: string }[] };
};

export type ViewName = keyof Views;
