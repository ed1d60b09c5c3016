import type { Selectable } from 'kysely';
import type { KitchenTable } from '../tables.js';
import type { Shape } from './shape.js';

export const kitchenKey = 'kitchen';

export const kitchenShape: Shape<'kitchen'> = {
  table: 'kitchen',
  row: (doc) => ({
    name: doc.name,
    currency: doc.currency,
    time_zone: doc.timeZone,
    locale: doc.locale,
    units: doc.units,
    scale_step: doc.scaleStep,
    heat: doc.heat,
    cup: doc.cup,
    paper: doc.paper,
    allergen_list: doc.allergenList,
    tax: doc.tax,
    costs: doc.costs,
    margin_floor: doc.marginFloor,
    round_to: doc.roundTo,
    terms: doc.terms,
    diets: doc.diets,
    diets_kept_days: doc.dietsKeptDays,
    letter_keys: doc.letterKeys,
    people: doc.people,
    price_lists: doc.priceLists,
  }),
  parts: [],
  doc: (row: Selectable<KitchenTable>) => ({
    name: row.name,
    currency: row.currency,
    timeZone: row.time_zone,
    locale: row.locale,
    units: row.units,
    scaleStep: row.scale_step,
    heat: row.heat,
    cup: row.cup,
    paper: row.paper,
    allergenList: row.allergen_list,
    tax: row.tax,
    costs: row.costs,
    marginFloor: row.margin_floor,
    roundTo: row.round_to,
    terms: row.terms,
    diets: row.diets,
    dietsKeptDays: row.diets_kept_days,
    letterKeys: row.letter_keys,
    people: row.people,
    priceLists: row.price_lists,
  }),
};
