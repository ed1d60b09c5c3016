import { notAnswered, tooManyAnswers } from './coverage.js';
import type { Event } from './facts/event.js';
import { headCount } from './requirements.js';

/** What an event's guests have said of what they eat. */
export type Answers = {
  guests: number;
  /** Guests listed by name or number who have answered. */
  listed: number;
  eatsAll: number;
  notAnswered: number;
  /** More answers than guests; above zero one of the figures is wrong. */
  over: number;
};

/** How many guests have answered what, and how many have not; counts of heads. */
export const answersOf = (event: Event): Answers => ({
  guests: headCount(event),
  listed: event.guests.reduce((n, { answered, count }) => (answered ? n + count : n), 0),
  eatsAll: event.eatsAll,
  notAnswered: notAnswered(event),
  over: tooManyAnswers(event),
});
