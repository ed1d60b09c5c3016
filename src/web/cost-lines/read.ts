import { type CostBasis, type CostLine, costKinds, workHours } from '../../core/facts/cost-line.js';
import { readMoreThanZero, readPercent, readWhole } from '../../core/reading.js';
import { readHoursWorked } from '../../core/reading-hours.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import type { Format } from '../format.js';
import { nextKey } from '../keys.js';
import { bases, lineForm } from './form.js';
import { sumReader } from './sums.js';

type Asked = { currency: string; f: Format; before: readonly CostLine[] };

/** The cost lines as the form says; faults are noted. A row without a word or a figure is none. */
export const readCostLines = (reading: Reading, { currency, f, before }: Asked): CostLine[] => {
  const all = rows(reading.form, 'costs');
  const taken = all.map((row) => text(row, 'key')).filter(Boolean);
  return all.flatMap((row, i) => {
    if (isBlank(row)) return [];
    if (!text(row, 'key')) {
      row.key = nextKey('c', taken);
      taken.push(row.key);
    }
    // What still says what it was drawn with stays exactly as it was kept.
    const known = before.find(({ key }) => key === text(row, 'key'));
    return [known && saysTheSame(row, lineForm(known, f)) ? known : readLine(reading, row, i, currency)];
  });
};

const mostly = ['name', 'sum', 'rate', 'hours', 'percent', 'holds', 'note'] as const;

const isBlank = (row: Form): boolean => mostly.every((field) => text(row, field).trim() === '');

const saysTheSame = (row: Form, drawn: Form): boolean =>
  Object.keys(drawn).every((field) => text(row, field).trim() === text(drawn, field));

const readLine = (reading: Reading, row: Form, i: number, currency: string): CostLine => {
  const at = `costs[${i}]`;
  const name = reading.words(`${at}.name`, 'What it is', 'Say what this cost is, such as crockery hire.');
  const note = reading.text(`${at}.note`);
  if (name.length > 120) reading.refuse(`${at}.name`, 'What it is', 'At most 120 letters fit here.');
  if (note.length > 300) reading.refuse(`${at}.note`, 'Note', 'A note has at most 300 letters.');
  return {
    key: text(row, 'key'),
    name: name || 'Cost',
    kind: reading.oneOf(`${at}.kind`, costKinds, 'other'),
    by: readBasis(reading, at, name || `Line ${i + 1}`, currency),
    note,
  };
};

const readBasis = (reading: Reading, at: string, who: string, currency: string): CostBasis => {
  const sum = sumReader(reading, currency);
  switch (reading.oneOf(`${at}.by`, bases, 'fixed')) {
    case 'fixed':
      return { fixed: sum(`${at}.sum`, `${who}, the sum`) };
    case 'aGuest':
      return { aGuest: sum(`${at}.sum`, `${who}, the sum`) };
    case 'step':
      return { step: sum(`${at}.sum`, `${who}, the sum`), ...readStep(reading, at, who) };
    case 'hours':
      return { rate: sum(`${at}.rate`, `${who}, an hour`), ...readHands(reading, at, who) };
    case 'percent':
      return {
        percent: reading.take(
          `${at}.percent`,
          `${who}, per cent`,
          (typed) => readPercent(typed, 'the share', 1000),
          '0',
        ),
        of: reading.oneOf(`${at}.of`, ['food', 'costs'], 'food'),
      };
  }
};

const readStep = (reading: Reading, at: string, who: string) => ({
  holds: reading.take(
    `${at}.holds`,
    `${who}, one is enough for`,
    (typed) => readWhole(typed, 'how many one is enough for', 1, 100_000),
    1,
  ),
  each: reading.maybe(`${at}.each`, `${who}, each guest takes`, readMoreThanZero) ?? '1',
  spare:
    reading.maybe(`${at}.spare`, `${who}, spare`, (typed) => readPercent(typed, 'what is spare', 1000)) ??
    '0',
});

const readHands = (reading: Reading, at: string, who: string) => {
  const worked = reading.oneOf(`${at}.worked`, ['typed', ...workHours], 'typed');
  return {
    person: reading.text(`${at}.person`) || null,
    hours:
      worked === 'typed'
        ? reading.take(`${at}.hours`, `${who}, hours of each`, readHoursWorked, '1')
        : worked,
    people:
      reading.maybe(`${at}.people`, `${who}, how many`, (typed) =>
        readWhole(typed, 'how many there are', 0, 1000),
      ) ?? 1,
    guestsEach: reading.maybe(`${at}.guestsEach`, `${who}, one for every`, (typed) =>
      readWhole(typed, 'the guests for each', 1, 100_000),
    ),
  };
};
