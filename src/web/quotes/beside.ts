import type { Quote } from '../../core/facts/quote.js';
import { optionTaken } from '../../core/quoting/papers.js';
import type { AtOneTime, Changed } from '../../core/quoting/what-changed.js';
import type { Format } from '../format.js';
import { withMend } from '../mends.js';

type Figures = { cost: string; aGuest: string; price: string; margin: string };

/** What the kitchen alone sees beside a quote: what it costs, then and now, and what is different. */
export type Beside = {
  asIssued: Figures | undefined;
  now: Figures;
  sentences: string[];
  needsQuote: boolean;
  /** What the cost of today lacks, each with where it is mended. */
  missing: ReturnType<typeof withMend>[];
};

export const besideOf = ({ then, now, sentences, needsQuote }: Changed, quote: Quote, f: Format): Beside => ({
  asIssued: then && figures(then, quote, f),
  now: figures(now, quote, f),
  sentences,
  needsQuote: needsQuote && quote.state !== 'replaced' && quote.state !== 'declined',
  missing: now.cost.complete
    ? []
    : now.cost.problems.filter(({ weight }) => weight !== 'check').map(withMend),
});

const figures = ({ cost, net, margin }: AtOneTime, quote: Quote, f: Format): Figures => ({
  cost: cost.complete ? f.money(cost.total) : cost.total > 0 ? `${f.money(cost.total)} so far` : 'not known',
  aGuest:
    cost.aGuest === undefined || (!cost.complete && cost.total === 0)
      ? 'not known'
      : `${f.money(cost.aGuest)}${cost.complete ? '' : ' so far'}`,
  price: optionTaken(quote).lines.length > 0 ? f.money(net) : 'no price yet',
  margin: margin ? f.percent(margin) : 'not known',
});
