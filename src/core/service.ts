import { serviceMinutes } from './calendar.js';
import type { Course, Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';

/** The course that is served first; undefined while there is none. */
export const firstCourse = (event: Event): Course | undefined => {
  let first: Course | undefined;
  for (const course of event.courses)
    if (!first || serviceMinutes(course) < serviceMinutes(first)) first = course;
  return first;
};

/**
 * Minutes from midnight of the event's day at which to leave the kitchen at the latest: the first service less the
 * drive, without unloading or setting up. undefined at home, without a course and where the drive isn't known.
 */
export const leaveKitchen = (event: Event, { places }: Facts): number | undefined => {
  const place = places.get(event.place);
  const first = firstCourse(event);
  if (!first || place?.kind !== 'venue' || place.drive === null) return undefined;
  return serviceMinutes(first) - place.drive;
};
