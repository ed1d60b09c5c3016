import type { Event } from '../../core/facts/event.js';
import { type Facts, factsOf } from '../../core/facts/facts.js';
import { minorDigits } from '../../core/money.js';
import { readWhole } from '../../core/reading.js';
import { headCount } from '../../core/requirements.js';
import { askingCost } from '../../core/whole-cost/asking-cost.js';
import { type CurvePoint, curveOf, type HeadCounts } from '../../core/whole-cost/curve.js';
import { heldPrice, type Priced, pricedAt } from '../../core/whole-cost/curve-price.js';
import { jumpName } from '../../core/whole-cost/step-words.js';
import type { CostView } from '../../core/whole-cost/whole-cost.js';
import { costShown } from '../events/dishes.js';
import { Reading } from '../faults.js';
import { Fields } from '../fields.js';
import { type Format, formatFor } from '../format.js';
import type { Html } from '../html.js';
import { curveSaid, curveWords } from './curve-said.js';
import { curveSvg, type Drawing } from './curve-svg.js';

/** What is asked of the curve: from the address `?from=&to=`, or as the head-count suggests. */
type CurveAsked = {
  event: Event;
  facts: Facts;
  view: CostView;
  beside: readonly Event[];
  /** Where the page with the curve stands, and what its address says. */
  page: string;
  query: Record<string, unknown>;
};

type CurveRow = {
  guests: string;
  aGuest: string;
  total: string;
  margin: string;
  /** What steps up here, in words. */
  jumps: string[];
  now: boolean;
  complete: boolean;
};

/** What `costing/_curve` draws; the including page hands it on as `curve`. */
export type CurveModel = {
  page: string;
  view: string;
  title: string;
  /** Drawn for a desk and paper, and narrow for a phone. */
  picture: { wide: Html; narrow: Html };
  /** The picture in one sentence. */
  inWords: string;
  /** What a guest more or fewer changes, the break-even, the cheapest head-count nearby. */
  said: Html[];
  rows: CurveRow[];
  priced: boolean;
  fields: Fields;
};

/** The curve of what one guest costs over a range of head-counts, to be shown by `costing/_curve`. */
export const curveModel = ({ event, facts: today, view, beside, page, query }: CurveAsked): CurveModel => {
  const facts = factsOf(event, today);
  const { kitchen } = facts;
  const f = formatFor(kitchen);
  const { range, fields } = rangeOf(event, query);
  const now = headCount(event);
  const { points } = curveOf(event, today, view, range, beside);
  const here = points.find(({ guests }) => guests === now);
  const atNow =
    here ?? (now > 0 ? curveOf(event, today, view, { from: now, to: now }, beside).points[0] : undefined);
  const price = atNow && heldPrice(event, askingCost(event, today, { ...atNow, view }), kitchen);
  const priced = price && pricedAt(points, price, kitchen);
  const drawing = drawingOf(points, priced, here, f, facts);
  return {
    page,
    view: typeof query.view === 'string' ? query.view : '',
    title: `What one guest costs, ${f.number(range.from)} to ${f.count(range.to, 'guest')}`,
    picture: { wide: curveSvg(drawing, 640), narrow: curveSvg(drawing, 350) },
    inWords: curveWords(points, here, f),
    said: curveSaid({ event, points, priced, here, range }, f),
    rows: points.map((point, i) => rowOf(point, priced?.[i], now, f)),
    priced: priced !== undefined,
    fields,
  };
};

const widest = 500;

/** From half the guests there are to half as many again, of very many those nearest to them. */
const usualAt = (now: number): HeadCounts => {
  const [half, more] = [Math.max(1, Math.floor(now / 2)), Math.max(10, Math.ceil(now * 1.5))];
  if (more - half <= widest) return { from: half, to: more };
  return { from: now - widest / 2, to: now + widest / 2 };
};

/** The usual head-counts, unless the address says from where to where. */
const rangeOf = (event: Event, query: Record<string, unknown>): { range: HeadCounts; fields: Fields } => {
  const usual = usualAt(Math.max(1, headCount(event)));
  const asked = (name: string) => (typeof query[name] === 'string' ? String(query[name]) : '');
  const form = { from: asked('from') || String(usual.from), to: asked('to') || String(usual.to) };
  const reading = new Reading(form);
  const read = (typed: string) => readWhole(typed, 'the number of guests', 1, 100_000);
  const range = {
    from: reading.take('from', 'From', read, usual.from),
    to: reading.take('to', 'To', read, usual.to),
  };
  if (reading.faults.length === 0) {
    if (range.to <= range.from)
      reading.refuse('to', 'To', `Enter more guests than ${range.from}, where the curve begins.`);
    else if (range.to - range.from > widest)
      reading.refuse(
        'to',
        'To',
        `A curve shows ${widest} head-counts at most. Enter ${range.from + widest} or fewer.`,
      );
  }
  return { range: reading.faults.length > 0 ? usual : range, fields: new Fields(form, reading.faults) };
};

/** Floats, for drawing only. */
const drawingOf = (
  points: readonly CurvePoint[],
  priced: readonly Priced[] | undefined,
  here: CurvePoint | undefined,
  f: Format,
  { kitchen }: Facts,
): Drawing => {
  const costs = points.map(({ exact, guests }) => exact.toNumber() / guests);
  // What can't be seen to rise is drawn as part of the run; the table names it.
  const seen = (Math.max(...costs) - Math.min(...costs)) / 70;
  const each = (of: (one: Priced) => number | undefined) =>
    (priced ?? []).flatMap((one, i) => (of(one) === undefined ? [] : [of(one)! / points[i]!.guests]));
  const [bring, may] = [each(({ net }) => net.toNumber()), each(({ keeps }) => keeps?.toNumber())];
  const at = here ? points.indexOf(here) : points.length - 1;
  const digits = minorDigits(kitchen.currency);
  const minor = (value: number) => f.money(Math.round(value));
  const level = (line: number[], words: string) => (line.length > 0 ? { at: line, words } : undefined);
  return {
    points: points.map(({ guests, jumps }, i) => ({
      guests,
      aGuest: costs[i]!,
      jump: jumps[0] && i > 0 && costs[i]! - costs[i - 1]! > seen ? jumpName(jumps[0]) : undefined,
    })),
    now: here
      ? { guests: here.guests, words: `${here.guests}: ${costShown(here.aGuest, here.complete, f)}` }
      : { guests: 0, words: '' },
    price: level(bring, `price ${minor(bring[at] ?? 0)}${kitchen.tax ? ' before tax' : ''}`),
    keeps: level(
      may,
      `under ${minor(may[at] ?? 0)} keeps ${f.percent(kitchen.marginFloor ?? '0').replace('.0%', '%')}`,
    ),
    money: (value) =>
      digits > 0 ? f.money(value).replace(new RegExp(`[.,]0{${digits}}(?=\\D*$)`), '') : f.money(value),
  };
};

const rowOf = (
  { guests, aGuest, total, jumps, complete }: CurvePoint,
  priced: Priced | undefined,
  now: number,
  f: Format,
): CurveRow => ({
  guests: f.number(guests),
  aGuest: costShown(aGuest, complete, f),
  total: costShown(total, complete, f),
  margin: priced?.margin ? f.percent(priced.margin) : '',
  // A batch that begins is a step of the hands, the ovens and the hob alike: it is named once.
  jumps: [...new Set(jumps.map(jumpName))],
  now: guests === now,
  complete,
});
