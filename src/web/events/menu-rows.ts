import { type Form, rows, text } from '../form.js';

/** A form with its rows moved, and the name of the row to go on in. */
export type Pressed = { form: Form; at: string };

/**
 * What a button within the form of a menu asks: `do=add-course`, `out-course:1`, `up-course:1`, `down-course:1`, and
 * of the third dish of the second course `out-dish:1:2` and so on. A dish moved past the end of its course goes into
 * the next. undefined when the form asks to be saved.
 */
export const menuPressed = (form: Form): Pressed | undefined => {
  const found = /^(add|out|up|down)-(course|dish)(?::(\d{1,3}))?(?::(\d{1,3}))?$/.exec(text(form, 'do'));
  if (!found) return undefined;
  const [, what = '', kind, first, second] = found;
  const courses = rows(form, 'courses');
  form.courses = courses;
  const at =
    kind === 'course'
      ? onCourses(courses, what, Number(first ?? -1))
      : onDishes(courses, what, Number(first ?? -1), Number(second ?? -1));
  return { form, at };
};

const onCourses = (courses: Form[], what: string, i: number): string => {
  if (what === 'add') courses.push({ dishes: [{}] });
  else if (!courses[i]) return '';
  else if (what === 'out') courses.splice(i, 1);
  else swap(courses, i, what === 'up' ? i - 1 : i + 1);
  const at =
    what === 'add'
      ? courses.length - 1
      : what === 'out'
        ? Math.min(i, courses.length - 1)
        : what === 'up'
          ? Math.max(i - 1, 0)
          : Math.min(i + 1, courses.length - 1);
  return at < 0 ? '' : `courses[${at}]`;
};

const onDishes = (courses: Form[], what: string, i: number, j: number): string => {
  const course = courses[i];
  if (!course) return '';
  const dishes = rows(course, 'dishes');
  course.dishes = dishes;
  const row = (place: number, of = i) => (place < 0 ? `courses[${of}]` : `courses[${of}].dishes[${place}]`);
  if (what === 'add') return row(dishes.push({}) - 1);
  if (!dishes[j]) return row(-1);
  if (what === 'out') {
    dishes.splice(j, 1);
    return row(Math.min(j, dishes.length - 1));
  }
  const to = what === 'up' ? j - 1 : j + 1;
  if (dishes[to]) {
    swap(dishes, j, to);
    return row(to);
  }
  const next = what === 'up' ? i - 1 : i + 1;
  const other = courses[next];
  if (!other) return row(j);
  const [dish] = dishes.splice(j, 1);
  const there = rows(other, 'dishes');
  if (what === 'up') there.push(dish!);
  else there.unshift(dish!);
  other.dishes = there;
  return row(what === 'up' ? there.length - 1 : 0, next);
};

const swap = (list: Form[], a: number, b: number): void => {
  const [one, other] = [list[a], list[b]];
  if (one && other) [list[a], list[b]] = [other, one];
};
