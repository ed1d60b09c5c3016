import { addDays, clockOf } from '../../core/calendar.js';
import { inWords, showQuantity } from '../../core/quantity/show.js';
import { headCount } from '../../core/requirements.js';
import { firstCourse, leaveKitchen } from '../../core/service.js';
import { type BuildUp, buildUp } from '../../core/sheets/build-up.js';
import type { EventSummary } from '../../core/sheets/event-summary.js';
import type { Format } from '../format.js';
import { html, type Printable } from '../html.js';
import { whereMended } from '../links.js';

export type Fact = { label: string; value: string; second?: Printable; loud?: boolean };

/** The figures of an event in one line: guests, when it is served, what a guest costs and eats. */
export const factLine = (summary: EventSummary, f: Format): Fact[] => {
  const { event, facts, gramsAGuest } = summary;
  const first = firstCourse(event);
  const leave = leaveKitchen(event, facts);
  const { groups } = event;
  const list: Fact[] = [
    {
      label: 'Guests',
      value: f.number(headCount(event)),
      second:
        groups.length > 1
          ? groups.map(({ name, guests }) => `${f.number(guests)} ${name.toLowerCase()}`).join(', ')
          : '',
    },
  ];
  if (first)
    list.push({
      label: 'Serve',
      value: first.time,
      second: first.dayAfter ? f.dayName(addDays(event.date, 1)) : '',
    });
  if (leave !== undefined)
    list.push({ label: 'Leave kitchen', value: clockOf(leave), second: otherDay(leave, event.date, f) });
  if (summary.courses.some(({ dishes }) => dishes.length > 0)) {
    const built = buildUp(event, facts, 'used').value;
    list.push(
      costAGuest(built, f),
      ...priceAGuest(built, f),
      gramsAGuest
        ? { label: 'Weight a guest', value: grams(summary) }
        : { label: 'Weight a guest', value: 'not known', second: lacking(summary) },
    );
  }
  return list;
};

/** What a guest costs with all that is beside the food, as far as it is known. */
const costAGuest = ({ event, cost }: BuildUp, f: Format): Fact => {
  const unknown = !cost.complete && cost.total === 0;
  if (unknown || cost.aGuest === undefined) return { label: 'Cost a guest', value: 'not known', loud: true };
  const second = cost.complete ? (event.costs.length > 0 ? '' : 'food alone') : 'incomplete';
  return { label: 'Cost a guest', value: f.money(cost.aGuest), second, loud: !cost.complete };
};

/** What is asked of a guest and what that leaves; nothing without a price. */
const priceAGuest = ({ price, sold }: BuildUp, f: Format): Fact[] => {
  const each = sold.aGuest ?? price?.aGuest;
  if (!price || each === undefined) return [];
  const second = sold.margin ? `${f.percent(sold.margin)} margin` : 'margin not known';
  return [{ label: 'Price a guest', value: f.money(each), second }];
};

const grams = ({ gramsAGuest, facts }: EventSummary): string =>
  inWords(showQuantity({ value: gramsAGuest!, base: 'g' }, facts.kitchen));

const mostNamed = 3;

/** What is to be weighed before anybody can say what a guest eats, each with the way to it. */
const lacking = ({ unweighed }: EventSummary): Printable => {
  if (unweighed.length === 0) return '';
  const links = unweighed
    .slice(0, mostNamed)
    .map((one, i) => html`${i > 0 ? ', ' : ''}<a href="${whereMended(one)}">${one.name}</a>`);
  const more = unweighed.length - mostNamed;
  return html`weigh ${links}${more > 0 ? ` and ${more} more` : ''}`;
};

/** The weekday, where it isn't the event's own. */
const otherDay = (minutes: number, date: string, f: Format): string => {
  const days = Math.floor(minutes / 1440);
  return days === 0 ? '' : f.dayName(addDays(date, days));
};
