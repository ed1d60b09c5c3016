import type { Event } from '../../core/facts/event.js';
import { headCount } from '../../core/requirements.js';
import { firstCourse } from '../../core/service.js';
import type { Format } from '../format.js';

/** A party as the running head of its papers says it: its name, day, service time and guests. */
export const partyInWords = (event: Event, f: Format): string => {
  const serve = firstCourse(event)?.time;
  return [event.name, f.dateYear(event.date), serve && `serve ${serve}`, f.count(headCount(event), 'guest')]
    .filter(Boolean)
    .join(', ');
};
