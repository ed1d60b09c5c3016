import type { EventCost } from '../costing.js';
import type { Event } from '../facts/event.js';
import { decimalMoney, type Sheet } from './sheet.js';

/** An event and its food cost at the head of a sheet; a cost that isn't complete is told as what is known of it. */
export const aboutCost = (event: Event, cost: EventCost, currency: string): Sheet['about'] => ({
  event: event.key,
  date: event.date,
  guests: String(cost.guests),
  cost: cost.complete ? decimalMoney(cost.total, currency) : '',
  costKnown: decimalMoney(cost.total, currency),
  costAGuest: cost.complete && cost.aGuest !== undefined ? decimalMoney(cost.aGuest, currency) : '',
  currency,
  complete: String(cost.complete),
});
