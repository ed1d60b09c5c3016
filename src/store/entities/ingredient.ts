import { type Selectable, sql } from 'kysely';
import type { Ingredient, Pack } from '../../core/facts/ingredient.js';
import { normalName } from '../../core/names.js';
import type { IngredientTable, PackTable, PriceTable } from '../tables.js';
import { type Part, placed, type Shape } from './shape.js';

type IngredientRow = Selectable<IngredientTable> & {
  pack: Selectable<PackTable>[];
  price: Selectable<PriceTable>[];
};

const packs: Part<Ingredient> = {
  table: 'pack',
  owner: 'ingredient_id',
  identity: ['key'],
  order: 'position',
  withdraws: true,
  rows: (doc) =>
    placed(doc.packs, (pack) => ({
      key: pack.key,
      supplier: pack.supplier,
      brand: pack.brand,
      code: pack.code,
      size_amount: pack.size.amount,
      size_unit: pack.size.unit,
      preferred: pack.preferred,
    })),
};

const prices: Part<Ingredient> = {
  table: 'price',
  owner: 'ingredient_id',
  identity: ['pack', 'key'],
  order: 'position',
  withdraws: true,
  written: ['date', 'price', 'guess'],
  latest: sql`select latest.* from t join pack k on k.ingredient_id = t.id and k.withdrawn_at is null
    cross join lateral (select * from price where ingredient_id = t.id and pack = k.key and withdrawn_at is null
      order by date desc, position desc limit 1) as latest`,
  rows: (doc) =>
    doc.packs.flatMap((pack) =>
      placed(pack.prices, ({ key, date, price, guess }) => ({ pack: pack.key, key, date, price, guess })),
    ),
};

export const ingredientShape: Shape<'ingredient'> = {
  table: 'ingredient',
  row: (doc) => ({
    name: doc.name,
    name_key: normalName(doc.name),
    section: doc.section,
    not_bought: doc.notBought,
    frozen: doc.frozen,
    edible_yield: doc.edibleYield,
    cooked_yields: doc.cookedYields,
    density: doc.density,
    weights: doc.weights,
    allergens: doc.allergens,
    label_text: doc.labelText,
    label_date: doc.labelDate,
    substitutes: doc.substitutes,
    traits: doc.traits,
    keeping: doc.keeping,
    note: doc.note,
    origin: doc.origin,
  }),
  parts: [packs, prices],
  doc: (row: IngredientRow) => ({
    key: row.key,
    name: row.name,
    section: row.section,
    notBought: row.not_bought,
    frozen: row.frozen,
    packs: row.pack.map((pack) => packOf(pack, row.price)),
    edibleYield: row.edible_yield,
    cookedYields: row.cooked_yields,
    density: row.density,
    weights: row.weights,
    allergens: row.allergens,
    labelText: row.label_text,
    labelDate: row.label_date,
    substitutes: row.substitutes,
    traits: row.traits,
    keeping: row.keeping,
    note: row.note,
    archived: row.archived_at !== null,
    origin: row.origin,
  }),
};

const packOf = (row: Selectable<PackTable>, prices: Selectable<PriceTable>[]): Pack => ({
  key: row.key,
  supplier: row.supplier,
  brand: row.brand,
  code: row.code,
  size: { amount: row.size_amount, unit: row.size_unit },
  preferred: row.preferred,
  prices: prices
    .filter(({ pack }) => pack === row.key)
    .map(({ key, date, price, guess }) => ({ key, date, price, guess })),
});
