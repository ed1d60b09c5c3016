import type { Problem } from '../problem.js';
import type { CostView } from '../whole-cost/whole-cost.js';
import type { BuildUp, Rung } from './build-up.js';
import { type Costing, costingSheet } from './costing.js';
import { conventions, decimalMoney, type Sheet, type Table } from './sheet.js';

/** The two views as every sheet names them. */
export const viewNames: Record<CostView, string> = {
  used: 'food as used',
  bought: 'food as bought',
};

export const viewFoot: Record<CostView, string> = {
  used: 'Food as used: what the recipes use, at the unit price of the pack.',
  bought:
    'Food as bought: whole packs, or this event’s share of packs that are bought for several events together; the shares add up to what is paid.',
};

/** The whole costing of an event in one view as tables: the build-up, the price by group, its food. */
export const buildUpSheet = (built: BuildUp, food: Costing, problems: readonly Problem[]): Sheet => {
  const { event, facts, cost, sold, price } = built;
  const { currency } = facts.kitchen;
  const money = (minor: number | undefined) => (minor === undefined ? '' : decimalMoney(minor, currency));
  const inFull = (minor: number | undefined, complete: boolean) => (complete ? money(minor) : '');
  const ofFood = costingSheet({ value: food, problems: [] });
  return {
    sheet: 'costing',
    title: `Costing, ${event.name}, ${viewNames[cost.view]}`,
    about: {
      event: event.key,
      date: event.date,
      guests: String(cost.guests),
      view: cost.view,
      food: inFull(cost.food.cost, cost.food.complete),
      foodKnown: money(cost.food.cost),
      cost: inFull(cost.total, cost.complete),
      costKnown: money(cost.total),
      costAGuest: inFull(cost.aGuest, cost.complete),
      price: price ? money(sold.total) : '',
      priceWithoutTax: price ? money(sold.net) : '',
      tax: price ? money(sold.tax) : '',
      margin: sold.margin?.toFixed(1) ?? '',
      marginFloor: facts.kitchen.marginFloor ?? '',
      short: money(sold.floor?.short),
      currency,
      complete: String(cost.complete),
    },
    get tables() {
      return [
        rungTable(built, money),
        priceTable(built, money),
        ...ofFood.tables.filter(({ name }) => name === 'dishes' || cost.view === 'used'),
        ...(cost.view === 'bought' ? [packTable(built, money)] : []),
      ];
    },
    problems: [...problems],
    foot: [
      viewFoot[cost.view],
      ...ofFood.foot.filter((said) => cost.view === 'used' || said !== conventions.prices),
    ],
  };
};

type Money = (minor: number | undefined) => string;

const rungTable = ({ rungs, margin, tax, facts, cost }: BuildUp, money: Money): Table => ({
  name: 'build-up',
  title: 'How the price builds up',
  columns: [
    { key: 'what', label: 'What' },
    { key: 'kind', label: 'Kind' },
    { key: 'hours', label: 'Hours of all together', unit: 'h' },
    { key: 'people', label: 'People' },
    { key: 'steps', label: 'Steps begun' },
    { key: 'aGuest', label: 'A guest', unit: facts.kitchen.currency },
    { key: 'amount', label: 'Known', unit: facts.kitchen.currency },
    { key: 'complete', label: 'Complete' },
  ],
  rows: [...rungs, ...(margin ? [margin] : []), ...(tax ? [tax] : [])].map((rung) => ({
    what: whatOf(rung, cost.view, facts.kitchen.tax?.name),
    kind: rung.part?.line.kind ?? rung.of,
    hours: rung.part?.hours?.toString() ?? '',
    people: rung.part?.people === undefined ? '' : String(rung.part.people),
    steps: rung.part?.steps === undefined ? '' : String(rung.part.steps),
    aGuest: known(rung) ? money(rung.aGuest) : '',
    amount: known(rung) ? money(rung.cost) : '',
    complete: rung.complete ? 'yes' : 'no',
  })),
});

/** Nothing known of it is no figure. */
const known = ({ complete, cost }: Rung): boolean => complete || cost > 0;

const whatOf = ({ of, part }: Rung, view: CostView, tax = 'Tax'): string =>
  part?.line.name ?? { food: viewNames[view].replace('f', 'F'), line: '', margin: 'Margin', tax }[of];

const priceTable = ({ sold, facts }: BuildUp, money: Money): Table => ({
  name: 'price',
  title: 'The price',
  columns: [
    { key: 'what', label: 'What' },
    { key: 'each', label: 'Each', unit: facts.kitchen.currency },
    { key: 'guests', label: 'Guests' },
    { key: 'amount', label: 'Amount', unit: facts.kitchen.currency },
  ],
  rows: [
    ...sold.rows.map(({ group, each, guests, amount }) => ({
      what: group.name,
      each: money(each),
      guests: String(guests),
      amount: money(amount),
    })),
    ...alone('Up to the minimum', sold.minimum, money),
    ...alone('Discount', -sold.discount, money),
  ],
});

const alone = (what: string, amount: number, money: Money) =>
  amount === 0 ? [] : [{ what, each: '', guests: '', amount: money(amount) }];

const packTable = ({ cost, facts }: BuildUp, money: Money): Table => ({
  name: 'packs',
  title: 'Packs bought',
  columns: [
    { key: 'ingredient', label: 'Ingredient' },
    { key: 'need', label: 'Packs this event uses' },
    { key: 'packs', label: 'Packs bought together' },
    { key: 'each', label: 'A pack', unit: facts.kitchen.currency },
    { key: 'paid', label: 'Paid together', unit: facts.kitchen.currency },
    { key: 'share', label: 'Share of this event', unit: facts.kitchen.currency },
    { key: 'complete', label: 'Complete' },
  ],
  rows: cost.food.packs.map(({ ingredient, need, packs, each, receipt, cost: share, complete }) => ({
    ingredient: ingredient.name,
    need: need.toString(),
    packs: String(packs),
    each: money(each),
    paid: money(receipt),
    share: money(share),
    complete: complete ? 'yes' : 'no',
  })),
});
