import type { Ingredient } from '../facts/ingredient.js';
import type { Kitchen } from '../facts/kitchen.js';
import { toMinor } from '../money.js';
import type { PriceLine } from '../price-history.js';
import { decimalMoney, type Sheet } from './sheet.js';

/** Every price of an ingredient, pack by pack, as a table. */
export const priceHistorySheet = (
  ingredient: Ingredient,
  lines: readonly PriceLine[],
  { currency }: Pick<Kitchen, 'currency'>,
): Sheet => ({
  sheet: 'price-history',
  title: `Prices of ${ingredient.name}`,
  about: { ingredient: ingredient.name, key: ingredient.key, currency },
  get tables() {
    return [
      {
        name: 'prices',
        title: 'Prices',
        columns: [
          { key: 'date', label: 'Day' },
          { key: 'pack', label: 'Pack' },
          { key: 'packUnit', label: 'Unit of the pack' },
          { key: 'from', label: 'From' },
          { key: 'brand', label: 'Brand' },
          { key: 'price', label: 'Price of a pack', unit: currency },
          { key: 'guess', label: 'A guess' },
          { key: 'each', label: 'Price of one unit', unit: currency },
          { key: 'unit', label: 'Unit' },
          { key: 'since', label: 'More than the last', unit: '%' },
        ],
        rows: lines.flatMap(({ unit, packs }) =>
          packs.flatMap(({ pack, points }) =>
            points.map(({ price, each, since }) => ({
              date: price.date,
              pack: pack.size.amount,
              packUnit: pack.size.unit,
              from: pack.supplier,
              brand: pack.brand,
              price: decimalMoney(price.price, currency),
              guess: price.guess ? 'yes' : '',
              each: decimalMoney(toMinor(each), currency),
              unit,
              since: since?.toFixed(1) ?? '',
            })),
          ),
        ),
      },
    ];
  },
  problems: [],
  foot: [comparing],
});

export const comparing =
  'Each price is compared with the one before of the same pack. Packs compare by what one unit costs, worked out by the weights and density known of the ingredient.';
