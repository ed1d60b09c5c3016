import type { Event, Guest } from './facts/event.js';

/** Whose diets are forgotten: each guest's key, and the one that stands for it from then on, for a key can tell too. */
export type Forgetting = { keys: ReadonlyMap<string, string>; names: boolean };

type Said = Pick<Guest, 'diets' | 'other'>;

/** Whether a guest has said anything of what they eat. */
export const hasSaid = ({ diets, other }: Partial<Said>): boolean =>
  (diets?.length ?? 0) > 0 || (other ?? '') !== '';

/**
 * A list of guests without what those to be forgotten said: they are guests who have not answered, so that nobody
 * takes them for guests who eat everything. Others stay as they are.
 */
export const forgetIn = <G extends Partial<Guest> & { key: string }>(
  guests: readonly G[],
  { keys, names }: Forgetting,
): G[] =>
  guests.map((guest) => {
    const key = keys.get(guest.key);
    if (key === undefined) return guest;
    return { ...guest, key, ...(names ? { name: '' } : {}), answered: false, diets: [], other: '' };
  });

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

/** An event without what these guests said. */
export const forgetInEvent = (event: Event, forgetting: Forgetting): Event => ({
  ...event,
  guests: forgetIn(event.guests, forgetting),
});
