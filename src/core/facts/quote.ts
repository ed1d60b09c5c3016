import { z } from 'zod';
import { date, key, money, name, percent } from './common.js';
import { event, served } from './event.js';
import { discount, tax, terms } from './price.js';

/** Past validUntil an issued quote counts as expired; that follows from the day and is not stored. */
export const quoteStates = ['draft', 'issued', 'accepted', 'declined', 'replaced'] as const;
export type QuoteState = (typeof quoteStates)[number];

const line = z.string().trim().max(1000);
const short = z.string().trim().max(200);

export const priceLine = z
  .strictObject({
    words: short.min(1).describe('What is sold, in words for the client: "guests", "children to 12".'),
    count: z.int().min(0).max(100_000).describe('How many.'),
    each: money.describe('What one of them costs, as prices are named.'),
  })
  .describe('So many at a price each.');
export type PriceLine = z.infer<typeof priceLine>;

/** One menu at its price; a quote has one, or several to choose from. */
export const option = z
  .strictObject({
    key,
    name: z.string().trim().max(120).default('').describe('What it is called where there are several.'),
    menu: z
      .array(
        z.strictObject({
          course: short.describe('The course in words for the client.'),
          dishes: z.array(short.min(1)).max(60).describe('Its dishes in words for the client.'),
        }),
      )
      .max(30)
      .default([])
      .describe('The menu.'),
    lines: z.array(priceLine).max(30).default([]).describe('What it comes to.'),
    minimum: money
      .nullable()
      .default(null)
      .describe('The least it comes to, before what is taken off; null for none.'),
    discount: discount.nullable().default(null),
    discountFor: z.string().trim().max(120).default('').describe('What that is for.'),
    tiers: z
      .array(
        z.strictObject({
          from: z.int().min(1).max(100_000).describe('From so many guests.'),
          each: money.describe('A guest costs so much.'),
        }),
      )
      .max(20)
      .default([])
      .describe('Prices a guest by how many come.'),
  })
  .describe('A menu at its price.')
  .meta({ id: 'option' });
export type Option = z.infer<typeof option>;

export const due = z
  .strictObject({
    words: short.min(1).describe('What the client calls it: "deposit, one quarter".'),
    percent: percent.nullable().describe('So many per cent of the total; null for all that is left.'),
    date: date.nullable().describe('When it is due; null on acceptance.'),
  })
  .describe('A part of the total, and when it is due.');
export type Due = z.infer<typeof due>;

/** What is offered, all that the paper says. */
export const offer = z
  .strictObject({
    title: name.describe("The party in the client's words."),
    client: z.string().trim().max(120).default('').describe('For whom.'),
    when: date.describe('The day of the party.'),
    place: short.default('').describe('Where, in words for the client: "in the village hall".'),
    serve: short.default('').describe('When it is served, in words.'),
    guests: z.int().min(0).max(100_000).describe('For how many.'),
    options: z.array(option).min(1).max(6).describe('What is offered; the client takes one.'),
    terms,
    dues: z
      .array(due)
      .max(13)
      .default([])
      .describe('Deposit, instalments and balance, in order of their days.'),
    validUntil: date.nullable().default(null).describe('The last day it may be accepted.'),
    finalCount: date.nullable().default(null).describe('The last day to say how many come.'),
    tax: tax.nullable().default(null).describe('Tax as it stood; null when none is charged.'),
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/)
      .describe('ISO 4217 code of all its prices.'),
    from: z.string().trim().max(120).describe('The kitchen that offers it.'),
  })
  .describe('What is offered.')
  .meta({ id: 'offer' });
export type Offer = z.infer<typeof offer>;

/** The facts it was worked out from, without the guests and what they eat. */
export const basis = z
  .strictObject({ event: event.omit({ guests: true, served: true }), served })
  .describe('The event, its recipes, prices and kitchen as they stood when it was issued.');
export type Basis = z.infer<typeof basis>;

export const quote = z
  .strictObject({
    key,
    event: key.describe('The event it is for.'),
    number: z.int().min(1).max(10_000).describe('The first quote of an event is 1.'),
    state: z.enum(quoteStates).default('draft').describe('How far it has come.'),
    offer,
    issued: date.nullable().default(null).describe('The day it was issued; null for a draft.'),
    answered: date.nullable().default(null).describe('The day it was accepted or declined.'),
    taken: key.nullable().default(null).describe('The option that was accepted.'),
    basis: basis.nullable().default(null),
  })
  .describe('A quote. Once issued its offer and basis never change.')
  .meta({ id: 'quote' });
export type Quote = z.infer<typeof quote>;

/** Money that came, or went back. */
export const payment = z
  .strictObject({
    key,
    event: key.describe('The event it is for.'),
    date: date.describe('The day it came.'),
    amount: money.min(1).describe('How much, always above 0.'),
    back: z.boolean().default(false).describe('true for money given back.'),
    words: short.default('').describe('How and what for: "deposit, by bank".'),
    struck: date
      .nullable()
      .default(null)
      .describe(
        'The day it was struck out as entered by mistake; it counts for nothing. null while it counts.',
      ),
  })
  .describe('A payment of the client.')
  .meta({ id: 'payment' });
export type Payment = z.infer<typeof payment>;

/** What a numbered paper says, as it was issued. */
export const numberedPaper = z
  .strictObject({
    kind: z
      .enum(['invoice', 'receipt', 'credit'])
      .describe('Which paper it is; a credit takes an invoice back.'),
    number: z.int().min(1).max(1_000_000).describe('Counted by kind over the whole kitchen, without gaps.'),
    date: date.describe('The day it was issued.'),
    event: key.describe('The event it is for. It may be gone since.'),
    of: z
      .int()
      .min(1)
      .nullable()
      .default(null)
      .describe('The invoice that a credit takes back, by its number.'),
    payment: key.nullable().default(null).describe('The payment that a receipt is for, by its key.'),
    from: z.string().trim().max(120).describe('The kitchen.'),
    client: z.string().trim().max(120).default('').describe('To whom.'),
    title: name.describe('The party.'),
    when: date.describe('The day of the party.'),
    lines: z
      .array(
        z.strictObject({
          words: short.min(1).describe('What it is for.'),
          count: z.int().min(0).max(100_000).nullable().describe('How many; null for a sum.'),
          each: money.nullable().describe('What one of them costs; null for a sum.'),
          amount: z
            .int()
            .min(-1_000_000_000_000)
            .max(1_000_000_000_000)
            .describe('What it comes to, in minor units.'),
        }),
      )
      .max(60)
      .describe('What it is made of.'),
    tax: tax.nullable().describe('Tax as it stood.'),
    taxAmount: money.describe('How much tax is in the total.'),
    total: money.describe('What it comes to, tax with it.'),
    paid: money.describe('What of it was paid by then.'),
    words: line.default('').describe('When the rest is due, or how it was paid.'),
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/)
      .describe('ISO 4217 code.'),
  })
  .describe('An invoice, a receipt or a credit, as it was issued.')
  .meta({ id: 'numberedPaper' });
export type NumberedPaper = z.infer<typeof numberedPaper>;
