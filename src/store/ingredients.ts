import { sql } from 'kysely';
import type { Ingredient } from '../core/facts/ingredient.js';
import { everyVersion } from './facts.js';
import { loadKept } from './kept.js';
import type { Db } from './schema.js';

/** What a list of ingredients shows of each; the price is the latest of the pack that lines are priced at. */
export type IngredientRow = {
  key: string;
  name: string;
  section: string;
  notBought: boolean;
  frozen: boolean;
  archived: boolean;
  origin: 'own' | 'example';
  updatedAt: Date;
  /** How many packs there are, and the one that lines are priced at: the preferred one, else the only one. */
  packs: number;
  pack: {
    supplier: string;
    brand: string;
    size: { amount: string; unit: string };
    price: { date: string; price: number; guess: boolean } | null;
  } | null;
  /** In how many recipes it stands. */
  uses: number;
};

/** Every ingredient, archived ones too, by key; the kitchen's own order of names is the reader's affair. */
export const list = async (db: Db): Promise<IngredientRow[]> => {
  const { rows } = await sql<IngredientRow>`
    select i.key, i.name, i.section, i.not_bought as "notBought", i.frozen,
      i.archived_at is not null as archived, i.origin, i.updated_at as "updatedAt",
      coalesce(p.packs, 0) as packs,
      case when p.pack_key is null then null else jsonb_build_object('supplier', p.supplier, 'brand', p.brand,
        'size', jsonb_build_object('amount', p.size_amount, 'unit', p.size_unit),
        'price', (select jsonb_build_object('date', date, 'price', price, 'guess', guess) from price
          where ingredient_id = i.id and pack = p.pack_key and withdrawn_at is null
          order by date desc, position desc limit 1)) end as pack,
      coalesce(u.uses, 0) as uses
    from ingredient i
    left join (
      select ingredient_id, count(*) as packs, case when bool_or(preferred) or count(*) = 1 then
        (array_agg(key order by preferred desc))[1] end as pack_key,
        (array_agg(supplier order by preferred desc))[1] as supplier,
        (array_agg(brand order by preferred desc))[1] as brand,
        (array_agg(size_amount order by preferred desc))[1] as size_amount,
        (array_agg(size_unit order by preferred desc))[1] as size_unit
      from pack where withdrawn_at is null group by ingredient_id
    ) p on p.ingredient_id = i.id
    left join (
      select ingredient, count(distinct recipe_id) as uses from recipe_line group by ingredient
    ) u on u.ingredient = i.key
    order by i.key collate "C"`.execute(db);
  return rows;
};

/** Every ingredient whole, archived ones too, by key; of each pack the latest price alone. */
export const everyIngredient = async (db: Db): Promise<Ingredient[]> => [
  ...(await loadKept(db, 'ingredient', await everyVersion(db, 'ingredient'))).values(),
];
