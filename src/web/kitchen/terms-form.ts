import type { Kitchen } from '../../core/facts/kitchen.js';
import type { Cancellation, Instalment, Terms } from '../../core/facts/price.js';
import { type Read, readPercent, readWhole } from '../../core/reading.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import { typedAmount, typedNumber } from '../typed.js';

const wordsOf = ['included', 'guestNumbers', 'allergies', 'more'] as const;

/** What the kitchen offers on, as its form shows it. */
export const termsForm = ({ terms }: Kitchen, revision: number): Form => ({
  revision: String(revision),
  ...Object.fromEntries(wordsOf.map((name) => [name, terms[name]])),
  validDays: String(terms.validDays),
  finalCountDays: typedNumber(terms.finalCountDays),
  fewerPercent: typedAmount(terms.fewerPercent),
  balance: terms.balanceDays < 0 ? 'after' : 'before',
  balanceDays: String(Math.abs(terms.balanceDays)),
  instalments: terms.instalments.map(({ words, percent, days }) => ({
    words,
    percent: typedAmount(percent),
    days: typedNumber(days),
  })),
  cancellation: terms.cancellation.map(({ days, percent }) => ({
    days: String(days),
    percent: typedAmount(percent),
  })),
});

/** The terms as the form says, with what can't be read noted in `reading`. */
export const readTerms = (reading: Reading): Terms => ({
  included: lineOf(reading, 'included', 'What is included'),
  guestNumbers: lineOf(reading, 'guestNumbers', 'Number of guests'),
  allergies: lineOf(reading, 'allergies', 'Allergies'),
  more: lineOf(reading, 'more', 'What else is said'),
  validDays: reading.take('validDays', 'Open for acceptance', daysFrom(1), 14),
  finalCountDays: reading.maybe('finalCountDays', 'Final number of guests', daysFrom(0)),
  fewerPercent: reading.maybe('fewerPercent', 'Fewer guests', percentOf('how many fewer')),
  instalments: readInstalments(reading),
  balanceDays: readBalance(reading),
  cancellation: readCancellation(reading),
});

const lineOf = (reading: Reading, name: string, label: string): string => {
  const words = reading.text(name);
  if (words.length > 1000)
    reading.refuse(name, label, `At most 1000 letters fit here; these are ${words.length}.`);
  return words;
};

const daysFrom =
  (least: number) =>
  (typed: string): Read<number> =>
    readWhole(typed.replace(/\s*days?$/i, ''), 'the days', least, 3650);

const percentOf = (what: string) => (typed: string) => readPercent(typed, what);

const readBalance = (reading: Reading): number => {
  const days = reading.take('balanceDays', 'The balance', daysFrom(0), 0);
  return reading.text('balance') === 'after' && days > 0 ? -days : days;
};

/** A row with nothing in it is none. */
const filled = (reading: Reading, list: string): { row: Form; at: string }[] =>
  rows(reading.form, list)
    .map((row, i) => ({ row, at: `${list}[${i}]` }))
    .filter(({ row }) => ['words', 'percent', 'days'].some((field) => text(row, field).trim() !== ''));

const readInstalments = (reading: Reading): Instalment[] =>
  filled(reading, 'instalments').map(({ at }) => {
    const words = reading.words(
      `${at}.words`,
      'Instalment',
      'Say what the client calls it, such as deposit.',
    );
    if (words.length > 120) reading.refuse(`${at}.words`, 'Instalment', 'At most 120 letters fit here.');
    const percent = reading.take(`${at}.percent`, `${words || 'Instalment'}, per cent`, percentOf('it'), '0');
    return {
      words,
      percent,
      days: reading.maybe(`${at}.days`, `${words || 'Instalment'}, days`, daysFrom(0)),
    };
  });

const readCancellation = (reading: Reading): Cancellation[] =>
  filled(reading, 'cancellation')
    .map(({ at }) => ({
      days: reading.take(`${at}.days`, 'Called off, days', daysFrom(0), 0),
      percent: reading.take(`${at}.percent`, 'Called off, per cent', percentOf('what is owed'), '0'),
    }))
    .sort((a, b) => b.days - a.days);
