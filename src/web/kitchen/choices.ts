import { type Kitchen, weekdays } from '../../core/facts/kitchen.js';
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

/** What the settings may be chosen from. */
export const kitchenChoices = ({ timeZone }: Pick<Kitchen, 'timeZone'>): KitchenChoices => ({
  currencies: Intl.supportedValuesOf('currency').map((code) => ({
    value: code,
    label: `${code}, ${currencyNames.of(code)}`,
  })),
  zones: [...new Set([timeZone, ...Intl.supportedValuesOf('timeZone')])]
    .sort()
    .map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') })),
  cups: [
    { value: 'metric', label: 'Metric: cup 250 ml, tablespoon 15 ml' },
    { value: 'us', label: 'US: cup 237 ml, tablespoon 14.8 ml' },
    { value: 'us-label', label: 'US labels: cup 240 ml, tablespoon 15 ml' },
    { value: 'imperial', label: 'Imperial: half a pint 284 ml, tablespoon 15 ml' },
    { value: 'australian', label: 'Australian: cup 250 ml, tablespoon 20 ml' },
  ],
  lists: [
    { value: 'eu', label: 'EU and UK: 14 allergens' },
    { value: 'us', label: 'United States: 9 allergens' },
    { value: 'ca', label: 'Canada' },
    { value: 'anz', label: 'Australia and New Zealand' },
  ],
  days: weekdays.map((day) => ({ day, name: dayNames[day] })),
});
