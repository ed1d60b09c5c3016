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

/** Guests who have not said what they eat, by name or by number; never below zero. */
export const notAnswered = (event: Event): number => {
  const asked = event.guests.filter((guest) => !guest.answered).reduce((n, guest) => n + guest.count, 0);
  const answered = event.guests.filter((guest) => guest.answered).reduce((n, guest) => n + guest.count, 0);
  return Math.max(asked, headCount(event) - answered - event.eatsAll);
};

/** How many more answers there are than guests; above zero one of the figures is wrong. */
export const tooManyAnswers = (event: Event): number =>
  Math.max(0, event.guests.reduce((n, guest) => n + guest.count, 0) + event.eatsAll - headCount(event));
