import type { Event } from '../../core/facts/event.js';
import type { Facts } from '../../core/facts/facts.js';
import { type Selling, selling } from '../../core/selling/selling.js';
import { askingCost } from '../../core/whole-cost/asking-cost.js';
import { wholeCost } from '../../core/whole-cost/cost-of-party.js';
import type { CostView, WholeCost } from '../../core/whole-cost/whole-cost.js';
import { costShown } from '../events/dishes.js';
import type { Format } from '../format.js';

export type Cell = { value: string; more: string; loud: boolean };
export type FigureRow = { label: string; cells: Cell[] };
export type FigureGroup = { name: string; rows: FigureRow[] };

/** One of the parties that stand side by side, in both views. */
export type Party = { event: Event; facts: Facts };
type Worked = { cost: WholeCost; sold: Selling };

const views: { view: CostView; name: string }[] = [
  { view: 'used', name: 'Food as used' },
  { view: 'bought', name: 'Food as bought' },
];

/** What a guest and the party cost, what it is sold at and what that leaves, side by side, the first as it is now. */
export const figuresOf = (parties: readonly Party[], beside: readonly Event[], f: Format): FigureGroup[] =>
  views.map(({ view, name }) => ({
    name,
    rows: rowsOf(
      parties.map((party) => work(party, view, beside)),
      f,
    ),
  }));

const work = ({ event, facts }: Party, view: CostView, beside: readonly Event[]): Worked => {
  const cost = wholeCost(event, facts, view, beside);
  return { cost, sold: selling(event, cost, facts.kitchen, askingCost(event, facts, cost)) };
};

/** What stands in the way of a party's cost, each said once; empty when all of it is known. */
export const lackingIn = ({ event, facts }: Party): string[] => {
  const { problems } = wholeCost(event, facts, 'used');
  const open = problems.filter(({ weight }) => weight !== 'check').map(({ sentence }) => sentence);
  return [...new Set(open)];
};

const rowsOf = (all: readonly Worked[], f: Format): FigureRow[] => [
  { label: 'A guest costs', cells: moneyCells(all, ({ cost }) => cost.aGuest, f) },
  { label: 'In all', cells: moneyCells(all, ({ cost }) => cost.total, f) },
  {
    label: 'Price, before tax',
    cells: all.map(({ sold }) => plain(sold.rows.length > 0 ? f.money(sold.net) : 'no price')),
  },
  {
    label: 'Margin',
    cells: all.map(({ sold, cost }) => marginCell(sold, cost, f)),
  },
];

const plain = (value: string, loud = false): Cell => ({ value, more: '', loud });

const moneyCells = (all: readonly Worked[], figure: (one: Worked) => number | undefined, f: Format): Cell[] =>
  all.map((one, i) => {
    const [value, now] = [figure(one), figure(all[0]!)];
    const cell = plain(costShown(value, one.cost.complete, f), !one.cost.complete);
    const known = one.cost.complete && all[0]!.cost.complete && value !== undefined && now !== undefined;
    return i > 0 && known ? { ...cell, more: difference(value - now, f) } : cell;
  });

const difference = (more: number, f: Format): string =>
  more === 0 ? 'the same' : more > 0 ? `+${f.money(more)}` : f.money(more);

const marginCell = ({ margin, floor }: Selling, cost: WholeCost, f: Format): Cell =>
  margin
    ? plain(f.percent(margin), (floor?.short ?? 0) > 0)
    : plain(cost.complete ? '' : 'not known', !cost.complete);
