import { acceptedOf, nextNumber } from '../../core/quotes-of-event.js';
import { whatChanged } from '../../core/quoting/what-changed.js';
import type { StoredQuote } from '../../store/quotes.js';
import type { OneEvent } from '../events/event.js';

/** Why another quote is needed, in a sentence: the accepted one does not hold for the event as it is. Else empty. */
export const needOf = ({ event, facts }: OneEvent, all: readonly StoredQuote[]): string => {
  const accepted = acceptedOf(all);
  if (!accepted || event.state === 'done' || event.state === 'cancelled') return '';
  const { needsQuote, sentences } = whatChanged(accepted.doc, event, facts, nextNumber(all));
  return needsQuote ? (sentences[0] ?? '') : '';
};
