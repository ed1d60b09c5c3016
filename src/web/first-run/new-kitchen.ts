import { type Kitchen, kitchen } from '../../core/facts/kitchen.js';
import { type Place, place } from '../../core/facts/place.js';

/** What a new kitchen is until its owner says otherwise; the zone is that of the machine. */
export const newKitchen: Kitchen = kitchen.parse({
  name: 'Your kitchen',
  currency: 'GBP',
  timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
});

export const newHome: Place = place.parse({ key: 'home', name: 'Home kitchen', kind: 'home' });
