import type { Afterwards } from '../../core/facts/afterwards.js';
import type { Measure } from '../../core/facts/common.js';
import type { Event } from '../../core/facts/event.js';
import { normalName } from '../../core/names.js';
import { nearNames } from '../../core/near-names.js';
import { exact, readAmount } from '../../core/quantity/amount.js';
import { type Read, readMoney, readWhole } from '../../core/reading.js';
import { readHoursWorked } from '../../core/reading-hours.js';
import { readMeasure } from '../../core/reading-measures.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import { typedAmount, typedMeasure } from '../typed.js';
import { type Asked, keysIn, type Named } from './rows.js';

type Known = { event: Event; asked: Asked; ingredients: readonly Named[]; currency: string };

/** What the form notes of a party; faults are noted. What it did not ask about stays; an empty field is not noted. */
export const readAfterwards = (reading: Reading, known: Known): ((doc: Event) => Event) => {
  const before = known.event.afterwards;
  const came = readCame(reading, known);
  const left = readLeft(reading, known);
  const spent = readSpent(reading, known);
  const bought = [...readBought(reading, known), ...readAlso(reading, known)];
  const note = reading.text('note');
  if (note.length > 2000) reading.refuse('note', 'Note', 'A note has at most 2000 letters.');
  const { form } = reading;
  const others = <T>(list: readonly T[] | undefined, shown: Set<string>, keyOf: (one: T) => string): T[] =>
    (list ?? []).filter((one) => !shown.has(keyOf(one)));
  const noted: Afterwards = {
    came: [...came, ...others(before?.came, keysIn(form, 'came'), ({ group }) => group)],
    left: [...left, ...others(before?.left, keysIn(form, 'left'), ({ dish }) => dish)],
    spent: [...spent, ...others(before?.spent, keysIn(form, 'spent'), ({ line }) => line)],
    bought,
    note,
  };
  return (doc) => ({ ...doc, afterwards: isEmpty(noted) ? null : noted });
};

const isEmpty = ({ came, left, spent, bought, note }: Afterwards): boolean =>
  note === '' && [came, left, spent, bought].every((list) => list.length === 0);

const readCame = (reading: Reading, { asked }: Known): Afterwards['came'] =>
  rows(reading.form, 'came').flatMap((row, i) => {
    const group = text(row, 'key');
    const name = asked.groups.find(({ key }) => key === group)?.name;
    const guests = reading.maybe(`came[${i}].guests`, `${name ?? 'Guests'} who came`, (typed) =>
      readWhole(typed, 'the number who came', 0, 100_000),
    );
    return guests === null || group === '' ? [] : [{ group, guests }];
  });

const readLeft = (reading: Reading, { event, asked }: Known): Afterwards['left'] =>
  rows(reading.form, 'left').flatMap((row, i) => {
    const dish = text(row, 'key');
    const of = asked.dishes.find(({ key }) => key === dish);
    const name = of?.name ?? 'Dish';
    const was = event.afterwards?.left.find((one) => one.dish === dish)?.portions;
    const portions = kept(was, typedAmount, text(row, 'portions'), () =>
      reading.maybe(`left[${i}].portions`, `${name}, left`, readNone),
    );
    if (portions !== null && of && exact(portions).compare(of.made) > 0)
      reading.refuse(
        `left[${i}].portions`,
        `${name}, left`,
        `No more portions of ${name} can be left than the ${of.made.toFixed(0)} that were made.`,
      );
    return portions === null || dish === '' ? [] : [{ dish, portions }];
  });

const readSpent = (reading: Reading, { event, asked, currency }: Known): Afterwards['spent'] =>
  rows(reading.form, 'spent').flatMap((row, i) => {
    const line = text(row, 'key');
    const name = asked.lines.find(({ key }) => key === line)?.name ?? 'Cost';
    const was = event.afterwards?.spent.find((one) => one.line === line);
    const hours =
      row.hours === undefined
        ? (was?.hours ?? null)
        : kept(was?.hours, typedAmount, text(row, 'hours'), () =>
            reading.maybe(`spent[${i}].hours`, `${name}, hours`, readHours),
          );
    const paid = readPaid(reading, `spent[${i}].paid`, name, currency);
    return (hours === null && paid === null) || line === '' ? [] : [{ line, hours, paid }];
  });

const readBought = (reading: Reading, { event, asked, currency }: Known): Afterwards['bought'] =>
  rows(reading.form, 'bought').flatMap((row, i) => {
    const ingredient = text(row, 'key');
    const name = asked.ingredients.find(({ key }) => key === ingredient)?.name ?? 'Ingredient';
    const was = event.afterwards?.bought.find((one) => one.ingredient === ingredient);
    const amount = readBoughtAmount(reading, `bought[${i}].amount`, name, was?.amount);
    const paid = readPaid(reading, `bought[${i}].paid`, name, currency);
    return (amount === null && paid === null) || ingredient === '' ? [] : [{ ingredient, amount, paid }];
  });

/** What was bought beside what the recipes need, by name. */
const readAlso = (reading: Reading, { event, asked, ingredients, currency }: Known): Afterwards['bought'] => {
  const taken = new Set(asked.ingredients.map(({ key }) => key));
  return rows(reading.form, 'also').flatMap((row, i) => {
    if (isBlank(row)) return [];
    const at = `also[${i}]`;
    const found = readName(reading, `${at}.name`, ingredients);
    if (found && taken.has(found.key)) {
      reading.refuse(`${at}.name`, found.name, `${found.name} stands above already: note it there.`);
      return [];
    }
    const was = event.afterwards?.bought.find((one) => one.ingredient === found?.key);
    const name = found?.name ?? 'Also bought';
    const amount = readBoughtAmount(reading, `${at}.amount`, name, was?.amount);
    const paid = readPaid(reading, `${at}.paid`, name, currency);
    if (!found) return [];
    taken.add(found.key);
    return [{ ingredient: found.key, amount, paid }];
  });
};

const isBlank = (row: Form): boolean =>
  ['name', 'amount', 'paid'].every((name) => text(row, name).trim() === '');

const readName = (reading: Reading, field: string, ingredients: readonly Named[]): Named | undefined => {
  const typed = reading.words(field, 'Also bought', 'Say what it was, by the name of an ingredient.');
  if (typed === '') return undefined;
  const found = ingredients.find(({ name }) => normalName(name) === normalName(typed));
  if (found) return found;
  const [near] = nearNames(
    typed,
    ingredients.map(({ name }) => name),
  );
  const guess = near ? ` Did you mean ${near}?` : ' Add it under Recipes, Ingredients first.';
  reading.refuse(field, typed.slice(0, 60), `No ingredient is called ${typed.slice(0, 60)}.${guess}`);
  return undefined;
};

const readBoughtAmount = (
  reading: Reading,
  field: string,
  name: string,
  was: Measure | null | undefined,
): Measure | null =>
  kept(was ?? undefined, typedMeasure, reading.text(field), () =>
    reading.maybe(field, `${name}, bought`, (typed) => readMeasure(typed)),
  );

const readPaid = (reading: Reading, field: string, name: string, currency: string): number | null =>
  reading.maybe(field, `${name}, paid`, (typed) => readMoney(typed, currency));

/** What still says what it was drawn with stays exactly as it was noted. */
const kept = <T>(
  was: T | null | undefined,
  typed: (was: T) => string,
  now: string,
  read: () => T | null,
): T | null => (was !== null && was !== undefined && typed(was) === now.trim() ? was : read());

/** An amount that may be nothing: no portion came back. */
const readNone = (typed: string): Read<string> => {
  const read = readAmount(typed);
  return 'sentence' in read ? read : { value: read.amount };
};

const readHours = (typed: string): Read<string> =>
  /^0+([.,:]0*)?$/.test(typed.trim()) ? { value: '0' } : readHoursWorked(typed);
