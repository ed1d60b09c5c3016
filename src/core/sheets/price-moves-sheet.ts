import type { Kitchen } from '../facts/kitchen.js';
import { toMinor } from '../money.js';
import type { PriceMoves } from '../price-history.js';
import type { Touched } from '../prices-touch.js';
import { decimalMoney, type Sheet } from './sheet.js';

/** What moved since a day, and what that does to events to come, as tables. */
export const priceMovesSheet = (
  since: string,
  { moves, first }: PriceMoves,
  touched: readonly Touched[],
  { currency }: Pick<Kitchen, 'currency'>,
): Sheet => ({
  sheet: 'price-moves',
  title: 'What moved',
  about: { since, currency },
  get tables() {
    return [
      {
        name: 'prices',
        title: 'Prices',
        columns: [
          { key: 'ingredient', label: 'Ingredient' },
          { key: 'before', label: 'One unit then', unit: currency },
          { key: 'after', label: 'One unit now', unit: currency },
          { key: 'unit', label: 'Unit' },
          { key: 'percent', label: 'More', unit: '%' },
          { key: 'guess', label: 'Now a guess' },
        ],
        rows: moves.map(({ ingredient, before, after, unit, percent }) => ({
          ingredient: ingredient.name,
          before: decimalMoney(toMinor(before.each), currency),
          after: decimalMoney(toMinor(after.each), currency),
          unit,
          percent: percent?.toFixed(1) ?? '',
          guess: after.price.guess ? 'yes' : '',
        })),
      },
      {
        name: 'events',
        title: 'Events to come',
        columns: [
          { key: 'event', label: 'Event' },
          { key: 'date', label: 'Day' },
          { key: 'costBefore', label: 'Cost then', unit: currency },
          { key: 'costAfter', label: 'Cost now', unit: currency },
          { key: 'more', label: 'More', unit: currency },
          { key: 'marginBefore', label: 'Margin then', unit: '%' },
          { key: 'marginAfter', label: 'Margin now', unit: '%' },
          { key: 'complete', label: 'Complete' },
        ],
        rows: touched.map(({ event, before, after, more, marginBefore, marginAfter }) => ({
          event: event.name,
          date: event.date,
          costBefore: decimalMoney(before.total, currency),
          costAfter: decimalMoney(after.total, currency),
          more: decimalMoney(toMinor(more), currency),
          marginBefore: marginBefore?.toFixed(1) ?? '',
          marginAfter: marginAfter?.toFixed(1) ?? '',
          complete: before.complete && after.complete ? 'yes' : 'no',
        })),
      },
    ];
  },
  problems: [],
  foot: [
    asUsed,
    ...(first.length > 0 ? [`First priced since then: ${first.map(({ name }) => name).join(', ')}.`] : []),
  ],
});

export const asUsed =
  'Costs are as used, by the prices that stood on that day and those that stand now; all else as it stands now. Margins are of the price without tax that the client accepted, else of the one that is set now.';
