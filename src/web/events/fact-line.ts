import { addDays, clockOf } from '../../core/calendar.js';
import { inWords, showQuantity } from '../../core/quantity/show.js';
import { headCount } from '../../core/requirements.js';
import { firstCourse, leaveKitchen } from '../../core/service.js';
import type { EventSummary } from '../../core/sheets/event-summary.js';
import type { Format } from '../format.js';
import { html, type Printable } from '../html.js';
import { whereMended } from '../links.js';
import { costShown } from './dishes.js';

export type Fact = { label: string; value: string; second?: Printable; loud?: boolean };

/** The figures of an event in one line: guests, when it is served, what a guest costs and eats. */
export const factLine = (summary: EventSummary, f: Format): Fact[] => {
  const { event, facts, cost, gramsAGuest } = summary;
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
    const known = costShown(cost.aGuest, true, f);
    const unknown = !cost.complete && cost.total === 0;
    list.push(
      unknown || cost.aGuest === undefined
        ? { label: 'Cost a guest', value: 'not known', loud: true }
        : {
            label: 'Cost a guest',
            value: known,
            second: cost.complete ? '' : 'incomplete',
            loud: !cost.complete,
          },
      gramsAGuest
        ? { label: 'Weight a guest', value: grams(summary) }
        : { label: 'Weight a guest', value: 'not known', second: lacking(summary) },
    );
  }
  return list;
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
