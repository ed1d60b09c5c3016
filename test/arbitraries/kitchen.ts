import fc from 'fast-check';
import { allergenLists, cups, type Kitchen, kitchen } from '../../src/core/facts/kitchen.js';
import { type Place, place } from '../../src/core/facts/place.js';
import { listColumns } from '../../src/core/facts/price-list.js';
import { anyCostLines, anyTax, anyTerms } from './costs.js';
import { anyAmount, anyMinutes, anyMoney, keptWords, keyed, maybe, origin, span, title } from './words.js';

export const anyKitchen: fc.Arbitrary<Kitchen> = fc
  .record({
    name: title,
    currency: fc.constantFrom('GBP', 'EUR', 'JPY', 'USD', 'KWD'),
    timeZone: fc.constantFrom('Europe/London', 'Australia/Lord_Howe', 'America/St_Johns', 'UTC'),
    locale: fc.constantFrom('en-GB', 'sv', 'de-AT'),
    units: fc.constantFrom('metric', 'us'),
    scaleStep: fc.constantFrom('0.1', '0.5', '1', '5', '25'),
    heat: fc.constantFrom('C', 'F'),
    cup: fc.constantFrom(...cups),
    allergenList: fc.constantFrom(...allergenLists),
    tax: maybe(anyTax),
    costs: anyCostLines,
    marginFloor: maybe(anyAmount),
    roundTo: anyMoney,
    terms: anyTerms,
    letterKeys: fc.boolean(),
    priceLists: keyed(
      2,
      fc.record({
        supplier: title,
        decimal: fc.constantFrom('point', 'comma'),
        columns: fc.array(
          fc.record({
            is: fc.constantFrom(...listColumns),
            heading: keptWords(10),
            place: fc.integer({ min: 1, max: 200 }),
          }),
          { maxLength: 4 },
        ),
        leftOut: fc.array(keptWords(10), { maxLength: 3 }),
      }),
    ),
    people: keyed(
      3,
      fc.record({
        name: title,
        hourlyCost: maybe(anyMoney),
        hours: fc.record({ mon: fc.array(span, { maxLength: 2 }) }),
      }),
    ),
  })
  .map((doc) => kitchen.parse(doc));

export const anyPlace = (key: string, kind: Place['kind']): fc.Arbitrary<Place> =>
  fc
    .record({
      name: title,
      ovens: keyed(3, fc.record({ name: title, shelves: fc.integer({ min: 1, max: 9 }) })),
      rings: fc.nat(9),
      mixers: fc.nat(3),
      pans: keyed(3, fc.record({ name: title, litres: anyAmount, count: fc.integer({ min: 1, max: 9 }) })),
      fridgeShelves: fc.nat(30),
      water: fc.constantFrom('yes', 'no', 'unknown'),
      access: maybe(span),
      drive: maybe(anyMinutes),
      note: keptWords(60),
      archived: kind === 'home' ? fc.constant(false) : fc.boolean(),
      origin,
    })
    .map((doc) => place.parse({ key, kind, ...doc }));
