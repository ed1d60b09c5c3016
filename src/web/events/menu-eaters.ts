import type { Eaters, Event, Group } from '../../core/facts/event.js';
import { readPercent, readWhole } from '../../core/reading.js';
import type { Reading } from '../faults.js';
import { texts } from '../form.js';

/** The groups that the boxes of each dish stand for, in their order. */
export const groupsOf = ({ form }: Reading): string[] => texts(form, 'groups');

/** Who eats a dish, by the boxes of its row: everybody, a share or a number of each guest group. */
export const readEaters = (reading: Reading, at: string, label: string, { groups }: Event): Eaters => {
  const who = reading.oneOf(`${at}.who`, ['everybody', 'shares', 'counts'], 'everybody');
  if (who === 'everybody') return { everybody: true };
  const parts = groupsOf(reading).flatMap((key, i) => {
    const group = groups.find((one) => one.key === key);
    const field = `${at}.part${i}`;
    if (!group || reading.text(field) === '') return [];
    const named = `${label}, ${group.name.toLowerCase()}`;
    const amount =
      who === 'shares' ? readShare(reading, field, named, group) : readNumber(reading, field, named);
    return [{ group: group.key, amount }];
  });
  if (parts.length === 0) {
    const wanted =
      who === 'shares' ? 'what share of the guests eats it, such as 75' : 'how many guests eat it, such as 6';
    reading.refuse(`${at}.part0`, label, `Say ${wanted}.`);
    return { everybody: true };
  }
  return who === 'shares'
    ? { shares: parts.map(({ group, amount }) => ({ group, percent: amount })) }
    : { counts: parts.map(({ group, amount }) => ({ group, guests: Number(amount) })) };
};

const readShare = (reading: Reading, field: string, label: string, { name }: Group): string =>
  reading.take(field, label, (typed) => readPercent(typed, `the share of ${name.toLowerCase()}`), '100');

const readNumber = (reading: Reading, field: string, label: string): string =>
  String(reading.take(field, label, (typed) => readWhole(typed, 'the number of guests', 0, 100_000), 0));
