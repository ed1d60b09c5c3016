import type { Kitchen, Person } from '../facts/kitchen.js';
import type { Place } from '../facts/place.js';
import type { Known } from '../known.js';
import { dietRules } from './diet.js';
import { instalmentsFault } from './quote.js';
import { isZero, ownKeys, type Refuse } from './refuse.js';

/** Why the kitchen's settings cannot be saved. */
export const kitchenRules = (kitchen: Kitchen, known: Known, refuse: Refuse): void => {
  if (known.pricedIn !== undefined && known.pricedIn !== kitchen.currency)
    refuse(
      'currency',
      'currency-fixed',
      `Prices stand in ${known.pricedIn}, so the currency stays ${known.pricedIn}; another currency needs a kitchen of its own.`,
    );
  if (!Intl.supportedValuesOf('currency').includes(kitchen.currency))
    refuse(
      'currency',
      'no-such-currency',
      `"${kitchen.currency}" is no currency code; type one such as GBP.`,
    );
  if (isZero(kitchen.scaleStep))
    refuse('scaleStep', 'no-step', 'Scales show steps of more than 0 g: type one such as 0.5 or 5.');
  if (!isTimeZone(kitchen.timeZone))
    refuse(
      'timeZone',
      'no-such-zone',
      `"${kitchen.timeZone}" is no time zone; type one such as Europe/London.`,
    );
  if (!isLocale(kitchen.locale))
    refuse('locale', 'no-such-locale', `"${kitchen.locale}" is no language tag; type one such as en-GB.`);
  ownKeys('people', kitchen.people, refuse);
  for (const person of kitchen.people) personRules(person, refuse);
  ownKeys('priceLists', kitchen.priceLists, refuse);
  ownKeys('costs', kitchen.costs, refuse);
  const shares = instalmentsFault(kitchen.terms.instalments);
  if (shares) refuse('terms/instalments', 'shares-over', shares);
  dietRules(kitchen, known, refuse);
};

const personRules = ({ key, hours }: Person, refuse: Refuse): void => {
  for (const [day, spans] of Object.entries(hours))
    for (const { from, to } of spans)
      if (to <= from)
        refuse(
          `people/${key}/hours/${day}`,
          'hours',
          `Hours that begin at ${from} end later than that, not at ${to}.`,
        );
};

/** Why a place cannot be saved. */
export const placeRules = (place: Place, known: Known, refuse: Refuse): void => {
  const isHome = place.kind === 'home';
  if (isHome && known.otherHomes.length > 0)
    refuse(
      'kind',
      'two-homes',
      `${known.otherHomes[0]} is the home kitchen, and there is one: make this a venue.`,
    );
  if (!isHome && known.otherHomes.length === 0)
    refuse('kind', 'no-home', 'There must be one home kitchen, and no other place is it.');
  if (isHome && place.archived)
    refuse('archived', 'home-archived', 'The home kitchen is always in use: it cannot be archived.');
  ownKeys('ovens', place.ovens, refuse);
  for (const { key, name, coolest, hottest } of place.ovens)
    if (hottest < coolest)
      refuse(
        `ovens/${key}/hottest`,
        'heat',
        `${name} cannot be hottest at ${hottest} °C and coolest at ${coolest} °C.`,
      );
  ownKeys('pans', place.pans, refuse);
  for (const { key, name, litres } of place.pans)
    if (isZero(litres))
      refuse(`pans/${key}/litres`, 'pan-zero', `${name} holds more than 0 litres: type how many.`);
  if (place.access && place.access.to <= place.access.from)
    refuse(
      'access',
      'hours',
      `Hours that begin at ${place.access.from} end later than that, not at ${place.access.to}.`,
    );
};

const isTimeZone = (id: string): boolean => {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: id }) !== undefined;
  } catch {
    return false;
  }
};

const isLocale = (tag: string): boolean => {
  try {
    return Intl.getCanonicalLocales(tag).length === 1;
  } catch {
    return false;
  }
};
