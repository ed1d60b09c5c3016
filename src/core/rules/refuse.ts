import type { EntityName } from '../facts/facts.js';
import { share } from '../flour.js';
import { nearNames } from '../near-names.js';
import type { Problem } from '../problem.js';
import { Rational } from '../quantity/rational.js';
import { readUnit } from '../quantity/units.js';

/** Notes one reason why a document cannot be saved: the field it stands at, a code and a sentence. */
export type Refuse = (field: string, code: string, sentence: string) => void;

/** A list of reasons and what adds to it, for one document. */
export const refuser = (entity: EntityName, doc: { key?: string; name: string }) => {
  const problems: Problem[] = [];
  const refuse: Refuse = (field, code, sentence) => {
    const subject = { entity, key: doc.key ?? entity, name: doc.name, field };
    problems.push({ weight: 'stop', code, sentence, subject });
  };
  return { problems, refuse };
};

/** Each row of a list has a key of its own. */
export const ownKeys = (at: string, list: readonly { key: string }[], refuse: Refuse): void => {
  const seen = new Set<string>();
  for (const { key } of list) {
    if (seen.has(key))
      refuse(`${at}/${key}`, 'key-twice', `The key "${key}" stands twice in one list: give each its own.`);
    seen.add(key);
  }
};

/** A unit is written in one way, or "500 grams" would be 500 pieces; a share is one of flour, so of a line alone. */
export const ownUnit = (at: string, unit: string, refuse: Refuse, may: 'share' | 'none' = 'none'): void => {
  if (unit === share && may === 'none')
    refuse(at, 'unit-share', 'A per cent is a share of the flour, which only a line of a recipe can state.');
  const meant = readUnit(unit);
  if (meant !== undefined && meant !== unit)
    refuse(at, 'unit-spelt', `The unit ${unit} is written "${meant}" here.`);
};

export const isZero = (amount: string): boolean => Rational.parse(amount).isZero;

/** Another document of the kind bears the name. */
export const ownName = (kind: string, namesake: { name: string } | undefined, refuse: Refuse): void => {
  if (namesake)
    refuse('name', 'name-taken', `There is ${kind} called ${namesake.name} already: choose another name.`);
};

/** A guess at which word was meant, as a sentence of its own; nothing when none is near. */
export const meant = (typed: string, known: Iterable<string>): string => {
  const [near] = nearNames(typed, [...known]);
  return near === undefined ? '' : ` Did you mean "${near}"?`;
};

/** Characters that no database keeps: U+0000 and halves of a surrogate pair. */
export const keepable = (value: unknown, at: string, refuse: Refuse): void => {
  if (typeof value === 'string') {
    if (value.includes('\0') || /\p{Cs}/u.test(value))
      refuse(at, 'character', 'There is a character here that cannot be kept: type the words afresh.');
  } else if (Array.isArray(value)) {
    for (const [place, one] of value.entries()) keepable(one, join(at, nameOf(one) ?? String(place)), refuse);
  } else if (typeof value === 'object' && value !== null) {
    for (const [name, one] of Object.entries(value)) keepable(one, join(at, name), refuse);
  }
};

const nameOf = (row: unknown): string | undefined =>
  typeof row === 'object' && row !== null && 'key' in row ? String(row.key) : undefined;

const join = (at: string, name: string): string => (at === '' ? name : `${at}/${name}`);
