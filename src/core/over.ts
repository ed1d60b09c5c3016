import type { Event } from './facts/event.js';

/** Whether a party is behind: it is done, or its day has come and it was neither called off nor put off. */
export const isOver = ({ state, date }: Pick<Event, 'state' | 'date'>, today: string): boolean =>
  state === 'done' || (date <= today && state !== 'cancelled' && state !== 'postponed');
