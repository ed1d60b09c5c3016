import { sql } from 'kysely';
import { type Offer, offer } from '../core/facts/quote.js';
import type { Db } from './schema.js';

/** What a client accepted, without what it was worked out from. */
export type AcceptedOffer = { event: string; number: number; offer: Offer; taken: string | null };

/** What clients accepted of these events, by event; none of those that have no accepted quote. */
export const acceptedOffers = async (
  db: Db,
  events: readonly string[],
): Promise<Map<string, AcceptedOffer>> => {
  const { rows } = await sql<AcceptedOffer>`
    select event, number, offer, taken from quote
    where state = 'accepted' and withdrawn_at is null and event = any(${[...events]}) order by number`.execute(
    db,
  );
  // What was issued by an earlier program may lack what facts hold today.
  return new Map(rows.map((row) => [row.event, { ...row, offer: offer.parse(row.offer) }]));
};
