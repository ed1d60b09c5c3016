import { clockOf, minutesOf, serviceMinutes } from './calendar.js';
import type { Course, Eaters, Event } from './facts/event.js';
import { firstCourse } from './service.js';

/**
 * One event's courses and dishes for another event's guests. Everybody and shares follow by themselves; a number of
 * guests follows in proportion to its group, rounded half up and never above it. Groups are matched by name, and a
 * dish whose groups the other event doesn't have goes to everybody. Service begins when it does at the other event.
 * How portions are kept apart, and for whom, is said anew.
 */
export const copyMenu = (from: Event, to: Event): Course[] => {
  const groups = new Map(from.groups.map((group) => [group.key, counterpart(group.name, to)]));
  const courses = from.courses.map((course) => ({
    ...course,
    dishes: course.dishes.map((dish) => ({
      ...dish,
      eaters: follow(dish.eaters, from, groups),
      keptApart: '',
      keptFor: [],
    })),
  }));
  const first = firstCourse(to);
  return first ? moved(courses, serviceMinutes(first)) : courses;
};

const counterpart = (name: string, to: Event) =>
  to.groups.find((group) => group.name.trim().toLowerCase() === name.trim().toLowerCase());

const follow = (
  eaters: Eaters,
  from: Event,
  groups: Map<string, Event['groups'][number] | undefined>,
): Eaters => {
  if ('everybody' in eaters) return eaters;
  if ('shares' in eaters) {
    const shares = eaters.shares.flatMap(({ group, percent }) => {
      const other = groups.get(group);
      return other ? [{ group: other.key, percent }] : [];
    });
    return shares.length ? { shares } : { everybody: true };
  }
  const counts = eaters.counts.flatMap(({ group, guests }) => {
    const other = groups.get(group);
    const old = from.groups.find(({ key }) => key === group)!.guests;
    if (!other) return [];
    const wanted = old === 0 ? guests : Math.floor((guests * other.guests * 2 + old) / (old * 2));
    return [{ group: other.key, guests: Math.min(wanted, other.guests) }];
  });
  return counts.length ? { counts } : { everybody: true };
};

/**
 * Courses moved so that the first is served at a time of the day itself; the others keep their distance to it, and
 * what would fall later than the day after is served at its last minute.
 */
export const beginAt = (courses: readonly Course[], time: string): Course[] =>
  moved(courses, minutesOf(time));

const moved = (courses: readonly Course[], begin: number): Course[] => {
  const first = Math.min(...courses.map(serviceMinutes));
  const lastMinute = 2 * 1440 - 1;
  return courses.map((course) => {
    const at = Math.min(lastMinute, serviceMinutes(course) - first + begin);
    return { ...course, time: clockOf(at), dayAfter: at >= 1440 };
  });
};
