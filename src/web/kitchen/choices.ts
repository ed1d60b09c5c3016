import { type Kitchen, weekdays } from '../../core/facts/kitchen.js';
import { cupChoices } from '../cups.js';
import type { Choice } from '../fields.js';
import { dayNames } from './form.js';

export type KitchenChoices = {
  currencies: Choice[];
  zones: Choice[];
  cups: Choice[];
  lists: Choice[];
  days: { day: string; name: string }[];
};

const currencyNames = new Intl.DisplayNames('en', { type: 'currency' });

const currencies: Choice[] = Intl.supportedValuesOf('currency').map((code) => ({
  value: code,
  label: `${code}, ${currencyNames.of(code)}`,
}));

const zoneNames = Intl.supportedValuesOf('timeZone');

/** What the settings may be chosen from. */
export const kitchenChoices = ({ timeZone }: Pick<Kitchen, 'timeZone'>): KitchenChoices => ({
  currencies,
  zones: [...new Set([timeZone, ...zoneNames])]
    .sort()
    .map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') })),
  cups: cupChoices,
  lists: [
    { value: 'eu', label: 'EU and UK: 14 allergens' },
    { value: 'us', label: 'United States: 9 allergens' },
    { value: 'ca', label: 'Canada' },
    { value: 'anz', label: 'Australia and New Zealand' },
  ],
  days: weekdays.map((day) => ({ day, name: dayNames[day] })),
});
