import type { Quote } from '../../core/facts/quote.js';
import { quoteNow } from '../../core/quoting/quote-now.js';
import type { Format } from '../format.js';

/** How far a quote has come, in words with its days. */
export const stateOf = (quote: Quote, today: string, f: Format): string => {
  const { issued, answered, offer } = quote;
  const on = issued === null ? '' : `issued ${f.dateYear(issued)}`;
  const answer = answered === null ? '' : f.dateYear(answered);
  switch (quoteNow(quote, today)) {
    case 'draft':
      return 'draft, not issued';
    case 'issued':
      return offer.validUntil ? `${on}, open until ${f.dateYear(offer.validUntil)}` : `${on}, open`;
    case 'expired':
      return `${on}, expired: it was open until ${f.dateYear(offer.validUntil ?? today)}`;
    case 'accepted':
      return `accepted ${answer}`;
    case 'declined':
      return `declined ${answer}`;
    case 'replaced':
      return answer ? `accepted ${answer}, since replaced` : `${on}, replaced`;
  }
};
