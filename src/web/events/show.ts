import { addDays, clockOf } from '../../core/calendar.js';
import type { Answer } from '../../core/problem.js';
import { showQuantity } from '../../core/quantity/show.js';
import { headCount } from '../../core/requirements.js';
import { firstCourse, leaveKitchen } from '../../core/service.js';
import { type EventSummary, eventSummary, eventSummarySheet } from '../../core/sheets/event-summary.js';
import { answerSheet } from '../answer.js';
import { printedNow } from '../coming.js';
import { type Format, formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { addressesOf } from './addresses.js';
import { type Clashes, clashes } from './clashes.js';
import { costShown, type MenuCourse, menuRows } from './dishes.js';
import { type EventHead, eventOf, headOf, type OneEvent } from './event.js';

export type Fact = { label: string; value: string; second?: string; loud?: boolean };
export type EventPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  facts: Fact[];
  courses: MenuCourse[];
  clashes: Clashes;
  done: string;
  note: string;
  foot: readonly string[];
  paper: { left: string; middle: string; right: string; foot: string };
};

/** An event: what is made of each dish, what it costs, who is left out. Also the event summary on paper, as CSV and JSON. */
export const showEvent: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const answer = eventSummary(one.event, one.facts);
  const model = eventPage(one, await headOf(request, one), answer, printedNow(request));
  return answerSheet(reply, eventSummarySheet(answer), 'events/show', {
    title: one.event.name,
    nav: 'Events',
    ...model,
  });
};

/** Everything that stands on the page of an event. */
export const eventPage = (
  { event }: OneEvent,
  head: EventHead,
  answer: Answer<EventSummary>,
  printed: string,
): EventPage => {
  const { value, problems } = answer;
  const { kitchen } = value.facts;
  const f = formatFor(kitchen);
  const facts = factLine(value, f);
  const guests = f.count(headCount(event), 'guest');
  const serve = firstCourse(event)?.time;
  return {
    head,
    at: addressesOf(event.key),
    facts,
    courses: menuRows(value),
    clashes: clashes(problems),
    done: event.served
      ? `Done. These figures are of what was served, as it was kept on ${f.date(event.served.date)}; what changes in recipes, prices and labels since then leaves them alone.`
      : '',
    note: event.note,
    foot: eventSummarySheet(answer).foot,
    paper: {
      left: kitchen.name,
      middle: [event.name, f.dateYear(event.date), serve && `serve ${serve}`, guests]
        .filter(Boolean)
        .join(', '),
      right: 'Event summary',
      foot: `${printed} Void when guests, menu or a recipe change.`,
    },
  };
};

const factLine = (summary: EventSummary, f: Format): Fact[] => {
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
        ? { label: 'Food a guest', value: grams(summary) }
        : { label: 'Food a guest', value: 'not known' },
    );
  }
  return list;
};

const grams = ({ gramsAGuest, facts }: EventSummary): string => {
  const { figure, fraction, unit } = showQuantity({ value: gramsAGuest!, base: 'g' }, facts.kitchen);
  return [figure, fraction, unit].filter(Boolean).join(' ');
};

/** The weekday, where it isn't the event's own. */
const otherDay = (minutes: number, date: string, f: Format): string => {
  const days = Math.floor(minutes / 1440);
  return days === 0 ? '' : f.dayName(addDays(date, days));
};
