import type { Event } from '../../core/facts/event.js';
import { headCount } from '../../core/requirements.js';
import type { CurvePoint, HeadCounts } from '../../core/whole-cost/curve.js';
import { breakEven, cheapestNear, type Priced } from '../../core/whole-cost/curve-price.js';
import { type GuestStep, nextStep } from '../../core/whole-cost/next-step.js';
import { nth } from '../../core/whole-cost/step-words.js';
import { costShown } from '../events/dishes.js';
import type { Format } from '../format.js';
import { type Html, html } from '../html.js';

type Told = {
  event: Event;
  points: readonly CurvePoint[];
  priced: readonly Priced[] | undefined;
  here: CurvePoint | undefined;
  range: HeadCounts;
};

/** The picture in one sentence. */
export const curveWords = (
  points: readonly CurvePoint[],
  here: CurvePoint | undefined,
  f: Format,
): string => {
  const byCost = [...points].sort((a, b) => a.aGuest - b.aGuest);
  const [least, most] = [byCost[0]!, byCost.at(-1)!];
  const shown = ({ aGuest, complete }: CurvePoint) => costShown(aGuest, complete, f);
  const now = here ? ` At ${f.count(here.guests, 'guest')} it is ${shown(here)}.` : '';
  return `One guest costs ${shown(most)} at ${f.count(most.guests, 'guest')} and ${shown(least)} at ${f.number(least.guests)}.${now}`;
};

/** What a guest fewer saves, from where the price covers the cost, where nearby a guest costs least. */
export const curveSaid = (told: Told, f: Format): Html[] => [
  ...fewerSaid(told, f),
  ...evenSaid(told, f),
  ...nearSaid(told, f),
  ...groupsSaid(told, f),
];

const fewerSaid = ({ points, here }: Told, f: Format): Html[] => {
  const { fewer, most } = nextStep(points, here?.guests ?? 0);
  const said: Html[] = [];
  if (fewer?.complete && fewer.more >= 0)
    said.push(html`<b>One guest fewer saves ${f.money(fewer.more)}.</b> ${whyOf(fewer)}`);
  if (here && most?.complete && most.guests !== fewer?.guests)
    said.push(
      html`<b>Nearby the ${nth(most.guests)} guest costs the most, ${f.money(most.more)}.</b> ${whyOf(most)}`,
    );
  return said;
};

const whyOf = ({ jumps }: GuestStep): Html[] =>
  jumps
    .filter(({ what }) => what.of !== 'guest')
    .slice(0, 2)
    .map(({ words }) => html`${words} `);

const evenSaid = ({ points, priced, range }: Told, f: Format): Html[] => {
  if (!priced || !points.at(-1)?.complete) return [];
  const even = breakEven(points, priced);
  if (even === undefined)
    return [html`<b class="loud">At ${f.count(range.to, 'guest')} the price does not cover the cost.</b>`];
  return even === range.from
    ? [html`The price covers the cost from ${f.number(range.from)} to ${f.count(range.to, 'guest')}.`]
    : [html`<b>Break-even is ${f.count(even, 'guest')}:</b> from there on the price covers the cost.`];
};

const nearby = 10;

const nearSaid = ({ points, here }: Told, f: Format): Html[] => {
  const near = here && cheapestNear(points, here.guests, nearby);
  if (!here || !near || !here.complete || !near.complete) return [];
  return near === here
    ? [html`Within ten guests either way none costs less a guest.`]
    : [
        html`Within ten guests either way a guest costs least at ${f.number(near.guests)}: ${f.money(near.aGuest)}.`,
      ];
};

/** "Other head-counts keep 30 adults to 8 children." */
const groupsSaid = ({ event }: Told, f: Format): Html[] => {
  const come = event.groups.filter(({ guests }) => guests > 0);
  if (headCount(event) === 0 || come.length < 2) return [];
  const [first, ...others] = come.map(({ name, guests }) => `${f.number(guests)} ${name.toLowerCase()}`);
  return [html`Other head-counts keep the proportion of ${first!} to ${f.list(others)}.`];
};
