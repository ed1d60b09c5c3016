import { wordedAs } from '../../core/quotes-of-event.js';
import { draftOffer } from '../../core/quoting/draft-offer.js';
import { selling } from '../../core/selling/selling.js';
import { wholeCost } from '../../core/whole-cost/cost-of-party.js';
import { draftQuote } from '../../store/quote-drafts.js';
import { quotes } from '../../store/quotes.js';
import { todayOf } from '../coming.js';
import { eventOf } from '../events/event.js';
import { type Form, text } from '../form.js';
import type { Answerer } from '../house.js';
import { goTo, saving } from '../save.js';
import { quoteAt } from './addresses.js';

/** Drafts the next quote of an event from how it stands today, in the words of the last one where they still fit. */
export const draftNext: Answerer = async (request, reply) => {
  const { event, facts } = await eventOf(request);
  const { db } = request.server.house;
  const last = (await quotes(db, [event.key])).at(-1)?.doc;
  const sold = selling(event, wholeCost(event, facts, 'used'), facts.kitchen);
  const offer = wordedAs(draftOffer(event, facts, sold, todayOf(request)), last, event);
  const after = Number(text(request.body as Form, 'after')) || 0;
  const draft = await draftQuote(db, event.key, { offer, after, ...saving(reply) });
  return goTo(reply, quoteAt(draft.doc.key).edit);
};
