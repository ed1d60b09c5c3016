import type { BuildUp, Rung } from '../../core/sheets/build-up.js';
import { viewNames } from '../../core/sheets/build-up-sheet.js';
import { costShown } from '../events/dishes.js';
import { type Format, formatFor } from '../format.js';
import type { Html } from '../html.js';
import { gutterCost } from './rows.js';

/** A bar of the ladder: what it is, of a guest and in all; from and to in minor units, for drawing. */
export type RungRow = {
  aGuest: Html;
  what: string;
  cost: string;
  complete: boolean;
  from: number;
  to: number;
};

export type Ladder = {
  scale: number;
  floor: number | undefined;
  costs: RungRow[];
  cost: RungRow;
  margin: (RungRow & { percent: string; none: boolean }) | undefined;
  tax: RungRow | undefined;
  price: (RungRow & { alike: boolean; inFull: string }) | undefined;
  /** With the tax that is added to it; nothing where there is none. */
  toPay: RungRow | undefined;
  /** "red line: £26.11 would give your 30%". */
  redLine: string;
  short: boolean;
};

/** The ladder of an event's price as it is drawn. */
export const ladderOf = (built: BuildUp): Ladder => {
  const { cost, sold, facts, margin, tax, price, scale, floor } = built;
  const { kitchen } = facts;
  const f = formatFor(kitchen);
  const row = (what: string, rung: Omit<Rung, 'of' | 'part'>): RungRow => ({
    aGuest: gutterCost(rung.aGuest, rung.complete, f),
    what,
    cost: costShown(rung.cost, rung.complete, f),
    complete: rung.complete,
    from: rung.from,
    to: rung.from + rung.cost,
  });
  const named = kitchen.tax ? `${kitchen.tax.name}, ${share(kitchen.tax.rate, f)}` : '';
  const whole = (total: number, aGuest: number | undefined) => ({
    aGuest,
    cost: total,
    from: 0,
    complete: true,
  });
  return {
    scale,
    floor,
    costs: built.rungs.map((rung) => row(wordsOf(rung, built, f), rung)),
    cost: row('Cost a guest', { ...whole(cost.total, cost.aGuest), complete: cost.complete }),
    margin: margin && {
      ...row('', margin),
      from: Math.min(margin.from, margin.from + margin.cost),
      to: Math.max(margin.from, margin.from + margin.cost),
      percent: sold.margin ? f.percent(sold.margin) : '',
      none: margin.cost < 0,
    },
    tax: tax && row(named, tax),
    price: price && {
      ...row('Price a guest', whole(price.total, price.aGuest)),
      alike: built.alike,
      inFull: sold.aGuest === undefined ? '' : f.money(sold.aGuest),
    },
    toPay:
      tax && !kitchen.tax?.included
        ? row(`With ${kitchen.tax!.name}`, { ...whole(sold.total, (price?.aGuest ?? 0) + (tax.aGuest ?? 0)) })
        : undefined,
    redLine: redLineOf(built, f),
    short: (sold.floor?.short ?? 0) > 0,
  };
};

/** "Food as used, 8 dishes", "Serving hands, 3 people × 4 h", "Crockery hire, 2 × £27.00". */
const wordsOf = ({ part }: Rung, { cost }: BuildUp, f: Format): string => {
  if (!part) {
    const dishes = f.count(cost.food.dishes.length, 'dish', 'dishes');
    return `${viewNames[cost.view].replace(/^f/, 'F')}, ${dishes}`;
  }
  return [part.line.name, countOf(part, f)].filter(Boolean).join(', ');
};

const countOf = ({ line: { by }, hours, people, steps }: NonNullable<Rung['part']>, f: Format): string => {
  if ('step' in by)
    return steps === undefined
      ? ''
      : `${f.number(steps)} × ${by.step === null ? 'not known' : f.money(by.step)}`;
  if ('percent' in by)
    return `${share(by.percent, f)} of ${by.of === 'food' ? 'the food' : 'the costs above'}`;
  if (!('rate' in by) || hours === undefined) return '';
  const all = `${f.number(hours.toFixed(1).replace(/\.0$/, ''))} h`;
  if (people === undefined || people < 2) return all;
  return /^[a-z]/.test(by.hours) ? `${people} people, ${all}` : `${people} people × ${by.hours} h`;
};

/** "20%", "17.5%". */
const share = (percent: string, f: Format): string => f.percent(percent).replace('.0%', '%');

const redLineOf = ({ sold: { floor }, facts }: BuildUp, f: Format): string => {
  if (!floor) return '';
  const at = floor.aGuest ?? floor.total;
  if (at === undefined) return '';
  const price = `${f.money(at)}${floor.aGuest === undefined ? ' in all' : ''}`;
  const taxed = facts.kitchen.tax ? (facts.kitchen.tax.included ? ' with tax' : ' before tax') : '';
  const percent = share(floor.margin, f);
  return floor.short === undefined || floor.short > 0
    ? `red line: ${price}${taxed} would give your ${percent}`
    : `red line: ${price}${taxed} still gives your ${percent}`;
};
