import { addDays } from '../../core/calendar.js';
import type { Cancellation } from '../../core/facts/price.js';
import type { Due, Offer } from '../../core/facts/quote.js';
import { readDay, readPercent, readWhole } from '../../core/reading.js';
import { duesFault } from '../../core/rules/quote.js';
import type { Reading } from '../faults.js';
import { typedAmount } from '../typed.js';
import { fitting } from './fitting.js';
import { filled, readOptions } from './read-options.js';

/** What a form of a draft makes of its offer; faults are noted. What the form does not show stays as it stood. */
export const readOffer = (reading: Reading, stood: Offer): Offer => {
  const dayIn = (name: string, label: string) =>
    reading.maybe(name, label, (typed) => readDay(typed, addDays(stood.when, -183)));
  const when = dayIn('when', 'Day of the party');
  if (when === null && reading.text('when') === '')
    reading.refuse('when', 'Day of the party', 'Enter the day, such as 4 Dec or 2026-12-04.');
  const offer: Offer = {
    ...stood,
    title: reading.words('title', 'The party', 'Say what the party is: Silver wedding buffet.'),
    client: reading.text('client'),
    when: when ?? stood.when,
    place: reading.text('place'),
    serve: reading.text('serve'),
    guests: reading.take(
      'guests',
      'Guests',
      (typed) => readWhole(typed, 'the number of guests', 0, 100_000),
      0,
    ),
    options: readOptions(reading, stood),
    terms: {
      ...stood.terms,
      included: reading.text('included'),
      guestNumbers: reading.text('guestNumbers'),
      allergies: reading.words(
        'allergies',
        'Allergies',
        'Say what holds for allergies: a client must find it on the quote.',
      ),
      more: reading.text('more'),
      fewerPercent: percentIn(reading, 'fewerPercent', 'Fewer guests', stood.terms.fewerPercent),
      cancellation: readCancellation(reading, stood),
    },
    validUntil: dayIn('validUntil', 'Open until'),
    finalCount: dayIn('finalCount', 'Final number by'),
    dues: readDues(reading, stood, dayIn),
  };
  return reading.faults.length === 0 ? fitting(reading, offer, stood) : offer;
};

/** A per cent; one that still says what it was drawn with stays exactly as it was kept. */
const percentIn = (
  reading: Reading,
  name: string,
  label: string,
  stood: string | null | undefined,
): string | null =>
  stood && typedAmount(stood) === reading.text(name)
    ? stood
    : reading.maybe(name, label, (typed) => readPercent(typed, 'the share'));

const readDues = (
  reading: Reading,
  stood: Offer,
  dayIn: (name: string, label: string) => string | null,
): Due[] => {
  const dues = filled(reading, 'dues', ['words', 'percent', 'date'], (due) => ({
    words: reading.words(`${due}.words`, 'What is due', 'Say what it is called: deposit, balance.'),
    percent: percentIn(reading, `${due}.percent`, 'Share', shareOf(reading, due, stood)),
    date: dayIn(`${due}.date`, 'Due on'),
  }));
  const unread = reading.faults.some(({ field }) => field.startsWith('dues['));
  const wrong = unread ? '' : duesFault(dues);
  if (wrong !== '') reading.refuse('dues[0].percent', 'What is due', wrong);
  return dues;
};

const shareOf = (reading: Reading, due: string, { dues }: Offer) =>
  dues.find(({ words }) => words === reading.text(`${due}.words`))?.percent;

const readCancellation = (reading: Reading, { terms }: Offer): Cancellation[] =>
  filled(reading, 'cancellation', ['days', 'percent'], (row) => ({
    days: reading.take(`${row}.days`, 'Days before', (typed) => readWhole(typed, 'the days', 0, 3650), 0),
    percent: reading.take(
      `${row}.percent`,
      'Owed',
      (typed) => {
        const known = terms.cancellation.find(({ percent }) => typedAmount(percent) === typed.trim());
        return known ? { value: known.percent } : readPercent(typed, 'what is owed');
      },
      '0',
    ),
  }));
