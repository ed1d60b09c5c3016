import { isLive } from '../../core/prep.js';
import { prepListSheet, sumOfDays } from '../../core/sheets/prep-list.js';
import { answerSheet } from '../answer.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, headOf, stateWords } from '../events/event.js';
import { formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { sumOf } from './jobs.js';
import { eventList } from './list.js';
import { type PrepSheet, prepSheet } from './sheet.js';

export type EventPrep = PrepSheet & {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  sum: string;
  /** Why these jobs are not in the kitchen's own list. */
  notLive: string;
};

/** All that is to prepare for one event, day by day. */
export const showEventPrep: Answerer = async (request, reply) => {
  const listed = await eventList(request);
  const { one, answer } = listed;
  const { event } = one;
  const { days } = answer.value;
  const whole = sumOfDays(days);
  const f = formatFor(request.kitchen);
  return answerSheet(reply, prepListSheet(answer), 'prep/event', {
    title: `Prep for ${event.name}`,
    nav: 'Prep',
    ...(await prepSheet(request, listed, { page: 'event', event: event.key })),
    head: await headOf(request, one),
    at: addressesOf(event.key),
    sum: days.length > 0 ? `${sumOf(whole.jobs, whole, f)}, over ${f.count(days.length, 'day')}` : '',
    notLive: isLive(event)
      ? ''
      : `The event is ${event.archived ? 'archived' : stateWords[event.state]}, so these jobs are not in the kitchen’s own prep list.`,
  });
};
