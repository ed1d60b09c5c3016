import { same } from '../../core/merge.js';
import type { Form, FormValue } from '../form.js';
import { listOf } from './form.js';

/** A place of a draft that somebody else changed while it was open; `yours` is null where only they did. */
export type Meanwhile = { place: string; was: string; yours: string | null; theirs: string };

/**
 * Joins two changes of one draft: what only one side changed is taken; where both did, yours stands in the form and
 * both are named, for the cook to decide before saving again.
 */
export const joined = (base: Form, yours: Form, theirs: Form): { form: Form; places: Meanwhile[] } => {
  const places: Meanwhile[] = [];
  const form: Form = {};
  for (const name of Object.keys(theirs)) {
    const [was, mine, other] = [base[name], yours[name], theirs[name]];
    const alike = name === 'options' && [was, mine, other].every((list) => same(keysOf(list), keysOf(other)));
    form[name] = alike
      ? optionsJoined(listOf(was), listOf(mine), listOf(other), places)
      : one(labels[name] ?? name, was, mine, other, places);
  }
  return { form, places };
};

const keysOf = (list: FormValue | undefined) => listOf(list).map(({ key }) => key);

const optionsJoined = (base: Form[], yours: Form[], theirs: Form[], places: Meanwhile[]): Form[] =>
  theirs.map((option, i) => {
    const named = theirs.length > 1 ? `${wordsOf(option.name) || `Menu ${i + 1}`}, ` : '';
    return Object.fromEntries(
      Object.keys(option).map((name) => [
        name,
        one(`${named}${labels[name] ?? name}`, base[i]?.[name], yours[i]?.[name], option[name], places),
      ]),
    );
  });

const one = (
  place: string,
  base: FormValue | undefined,
  yours: FormValue | undefined,
  theirs: FormValue | undefined,
  places: Meanwhile[],
): FormValue => {
  if (same(yours, theirs) || same(base, theirs)) return yours ?? '';
  const taken = same(base, yours);
  places.push({
    place,
    was: wordsOf(base),
    yours: taken ? null : wordsOf(yours),
    theirs: wordsOf(theirs),
  });
  return (taken ? theirs : yours) ?? '';
};

const wordsOf = (value: FormValue | undefined): string => {
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) return value.map(wordsOf).filter(Boolean).join('; ');
  return Object.entries(value ?? {})
    .filter(([name]) => name !== 'key')
    .map(([, inner]) => wordsOf(inner))
    .filter(Boolean)
    .join(' ');
};

const labels: Record<string, string> = {
  title: 'the party',
  client: 'for whom',
  when: 'the day',
  place: 'where',
  serve: 'when it is served',
  guests: 'guests',
  options: 'menus and prices',
  menu: 'the menu',
  name: 'its name',
  lines: 'the price',
  tiers: 'prices by head-count',
  minimum: 'the least it comes to',
  discount: 'what is taken off',
  discountFor: 'what that is for',
  included: 'what is included',
  guestNumbers: 'guest numbers',
  allergies: 'allergies',
  more: 'what else is said',
  validUntil: 'open until',
  finalCount: 'final number by',
  fewerPercent: 'how many fewer',
  dues: 'what is due',
  cancellation: 'calling off',
};
