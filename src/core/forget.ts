import type { Guest } from './facts/event.js';

/** Whose diets are forgotten: each guest's key, and the one that stands for it from then on, for a key can tell too. */
export type Forgetting = { keys: ReadonlyMap<string, string>; names: boolean };

/** A guest and an event as documents and files have them, also those of an earlier program. */
export type AnyGuest = { key: string } & Partial<
  Pick<Guest, 'name' | 'count' | 'answered' | 'diets' | 'other'>
> & {
    avoids?: string[];
    traces?: boolean;
  };
export type AnyEvent = {
  guests?: readonly AnyGuest[];
  courses?: readonly { dishes?: readonly { keptFor?: string[] }[] }[];
};

/** Whether a guest has said anything of what they eat. */
export const hasSaid = ({ diets = [], other = '', avoids = [], traces = true }: Partial<AnyGuest>): boolean =>
  diets.length + avoids.length > 0 || other !== '' || !traces;

/**
 * An event without what the guests to be forgotten said: they are guests who have not answered, so that nobody takes
 * them for guests who eat everything, and no dish is kept for them. All else stays as it is.
 */
export const forgetInEvent = <E extends AnyEvent>(event: E, forgetting: Forgetting): E => ({
  ...event,
  ...(event.guests && { guests: event.guests.map((guest) => withoutDiets(guest, forgetting)) }),
  ...(event.courses && {
    courses: event.courses.map((course) => ({
      ...course,
      ...(course.dishes && { dishes: course.dishes.map((dish) => keptForOthers(dish, forgetting)) }),
    })),
  }),
});

const withoutDiets = (guest: AnyGuest, { keys, names }: Forgetting): AnyGuest => {
  const key = keys.get(guest.key);
  if (key === undefined) return guest;
  return {
    ...guest,
    key,
    ...(names && { name: '' }),
    answered: false,
    diets: [],
    ...(guest.avoids && { avoids: [] }),
    ...(guest.traces !== undefined && { traces: true }),
    other: '',
  };
};

const keptForOthers = <D extends { keptFor?: string[] }>(dish: D, { keys }: Forgetting): D =>
  dish.keptFor ? { ...dish, keptFor: dish.keptFor.filter((key) => !keys.has(key)) } : dish;

/** New keys for guests, none of which is in use: forgotten-1, forgotten-2 … */
export const keysOfForgotten = (
  wanted: readonly string[],
  used: ReadonlySet<string>,
): ReadonlyMap<string, string> => {
  let n = 0;
  const next = (): string => {
    n += 1;
    return used.has(`forgotten-${n}`) ? next() : `forgotten-${n}`;
  };
  return new Map([...new Set(wanted)].sort().map((key) => [key, next()]));
};
