import type { FastifyReply } from 'fastify';
import { type Offer, offer as offerType } from '../../core/facts/quote.js';
import { saveDraft } from '../../store/quote-drafts.js';
import type { StoredQuote } from '../../store/quotes.js';
import { inZone } from '../clock.js';
import { type EventHead, headOf } from '../events/event.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { rowsChanged, withKeys } from '../rows.js';
import { goTo, saving } from '../save.js';
import { quoteAt } from './addresses.js';
import { offerForm, withSpareRows } from './form.js';
import { joined, type Meanwhile } from './meanwhile.js';
import { formatOfOffer, notNow, type OneQuote, quoteOf } from './quote.js';
import { readOffer } from './read.js';

export type QuoteEdit = {
  head: EventHead;
  at: ReturnType<typeof quoteAt>;
  number: number;
  options: number;
  currency: string;
  tax: string;
  meanwhile: { by: string; at: string; places: Meanwhile[] } | undefined;
  goOn: string;
};

/** The form of a draft; what was issued has none. */
export const askForOffer: Answerer = async (request, reply) => {
  const quote = await quoteOf(request);
  const { doc, revision } = quote;
  if (doc.state !== 'draft') return reply.redirect(quoteAt(doc.key).page, 303);
  return draw(reply, quote, formOf(doc.offer, revision, formatOfOffer(request, doc.offer)));
};

const formOf = (offer: Offer, revision: number, f: Parameters<typeof offerForm>[1]): Form => ({
  ...offerForm(offer, f),
  revision: String(revision),
  base: JSON.stringify(offer),
});

/** Saves a draft; a button of a row only draws the form again, a draft saved meanwhile is joined and shown. */
export const saveOffer: Answerer = async (request, reply) => {
  const quote = await quoteOf(request);
  const form = request.body as Form;
  if (quote.doc.state !== 'draft')
    return notNow(
      reply,
      quote,
      ['It was issued meanwhile, and what is issued stays. Draft another one.'],
      409,
    );
  const changed = rowsChanged(form);
  if (changed) {
    withKeys(changed.form, 'options', 'o');
    return draw(reply, quote, changed.form, { goOn: changed.at });
  }
  const base = baseOf(form) ?? quote.doc.offer;
  const reading = new Reading(form);
  const offer = readOffer(reading, base);
  if (reading.faults.length > 0) return draw(reply.code(422), quote, form, { faults: reading.faults });
  const revision = Number(text(form, 'revision'));
  const saved = await saveDraft(request.server.house.db, quote.doc.key, {
    offer,
    revision,
    ...saving(reply),
  });
  if (saved.outcome === 'saved') return goTo(reply, quoteAt(quote.doc.key).page);
  if (saved.outcome === 'stale') return drawJoined(reply, quote, saved.quote, { base, offer });
  return reply.callNotFound();
};

/** What the form began from, as it carried it. */
const baseOf = (form: Form): Offer | undefined => {
  try {
    return offerType.parse(JSON.parse(text(form, 'base')));
  } catch {
    return undefined;
  }
};

const drawJoined = async (
  reply: FastifyReply,
  quote: OneQuote,
  stands: StoredQuote,
  { base, offer }: { base: Offer; offer: Offer },
) => {
  const { kitchen } = reply.request;
  const f = formatOfOffer(reply.request, offer);
  const theirs = stands.doc.offer;
  const { form, places } = joined(offerForm(base, f), offerForm(offer, f), offerForm(theirs, f));
  const at = stands.updatedAt && inZone(stands.updatedAt, kitchen.timeZone);
  return draw(
    reply.code(409),
    { ...quote, ...stands },
    { ...form, revision: String(stands.revision), base: JSON.stringify(theirs) },
    {
      meanwhile: {
        by: stands.updatedBy || 'somebody',
        at: at ? `${f.date(at.date)}, ${at.time}` : '',
        places,
      },
    },
  );
};

type Drawn = { faults?: readonly Fault[]; goOn?: string; meanwhile?: QuoteEdit['meanwhile'] };

const draw = async (
  reply: FastifyReply,
  quote: OneQuote,
  form: Form,
  { faults = [], goOn = '', meanwhile }: Drawn = {},
) => {
  const { doc, one } = quote;
  const f = formatOfOffer(reply.request, doc.offer);
  const spaced = withSpareRows(form);
  return page(reply, 'quotes/edit', {
    title: `Quote ${doc.number}, draft, ${one.event.name}`,
    nav: 'Events',
    form: spaced,
    faults,
    head: await headOf(reply.request, one),
    at: quoteAt(doc.key),
    number: doc.number,
    options: (spaced.options as Form[]).length,
    currency: doc.offer.currency,
    tax: doc.offer.tax
      ? `${doc.offer.tax.name}, ${f.percent(doc.offer.tax.rate)}, ${doc.offer.tax.included ? 'is in these prices' : 'is added to these prices'}.`
      : 'No tax is added.',
    meanwhile,
    goOn,
  });
};
