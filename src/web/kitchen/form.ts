import { allergenLists, cups, type Kitchen, type Person, weekdays } from '../../core/facts/kitchen.js';
import type { Tax } from '../../core/facts/price.js';
import { type Read, readMoney, readMoreThanZero, readPercent, readWhole } from '../../core/reading.js';
import type { Reading } from '../faults.js';
import { type Form, text } from '../form.js';
import { formatFor } from '../format.js';
import { withKeys } from '../rows.js';
import { typedAmount } from '../typed.js';
import { hoursText, readHours } from './hours.js';

/** The settings as their form shows them. */
export const kitchenForm = (kitchen: Kitchen, revision: number): Form => ({
  revision: String(revision),
  name: kitchen.name,
  currency: kitchen.currency,
  timeZone: kitchen.timeZone,
  locale: kitchen.locale,
  units: kitchen.units,
  scaleStep: typedAmount(kitchen.scaleStep),
  heat: kitchen.heat,
  cup: kitchen.cup,
  paper: kitchen.paper,
  allergenList: kitchen.allergenList,
  tax: { name: kitchen.tax?.name ?? '', rate: kitchen.tax?.rate ?? '' },
  dietsKeptDays: kitchen.dietsKeptDays === null ? '' : String(kitchen.dietsKeptDays),
  letterKeys: kitchen.letterKeys ? 'on' : '',
  people: kitchen.people.map((person) => personForm(person, kitchen)),
});

const personForm = (person: Person, kitchen: Kitchen): Form => ({
  key: person.key,
  name: person.name,
  hourlyCost: person.hourlyCost === null ? '' : formatFor(kitchen).plainMoney(person.hourlyCost),
  hours: Object.fromEntries(weekdays.map((day) => [day, hoursText(person.hours[day])])),
});

/** The settings as the form says, with what can't be read noted in `reading`. */
export const readKitchen = (reading: Reading): ((before: Kitchen) => Kitchen) => {
  const { form } = reading;
  const currency = reading.text('currency');
  const read = {
    name: reading.words('name', 'Name', 'Enter the name that stands on your pages and papers.'),
    currency,
    timeZone: reading.text('timeZone'),
    locale: reading.text('locale'),
    units: reading.oneOf('units', ['metric', 'us'], 'metric'),
    scaleStep: reading.take('scaleStep', 'Finest step of the scales', readGrams, '0.5'),
    heat: reading.oneOf('heat', ['C', 'F'], 'C'),
    cup: reading.oneOf('cup', cups, 'metric'),
    paper: reading.oneOf('paper', ['A4', 'Letter'], 'A4'),
    allergenList: reading.oneOf('allergenList', allergenLists, 'eu'),
    dietsKeptDays: reading.maybe('dietsKeptDays', 'Days that diets are kept', (typed) =>
      readWhole(typed.replace(/\s*days?$/i, ''), 'the days that diets are kept', 0, 3650),
    ),
    letterKeys: reading.ticked('letterKeys'),
    people: withKeys(form, 'people', 'p').map((row, at) =>
      readPerson(reading, row, `people[${at}]`, currency),
    ),
  };
  const tax = readTax(reading);
  return (before) => ({ ...before, ...read, tax: tax && { ...untouched, ...before.tax, ...tax } });
};

/** How tax is named and rounded is settled with the terms. */
const untouched = { included: false, rounding: 'whole-nearest' } as const;

const readGrams = (text: string): Read<string> => readMoreThanZero(text.replace(/\s*g$/i, ''));

const readTax = (reading: Reading): Pick<Tax, 'name' | 'rate'> | null => {
  const name = reading.text('tax.name');
  const rate = reading.maybe('tax.rate', 'Tax, per cent', (typed) => readPercent(typed, 'the tax'));
  if (rate === null && name === '') return null;
  if (name === '') reading.refuse('tax.name', 'Tax, name', 'Enter what the tax is called, such as VAT.');
  if (rate === null && reading.text('tax.rate') === '')
    reading.refuse(
      'tax.rate',
      'Tax, per cent',
      `Enter how many per cent ${name || 'the tax'} is, such as 20.`,
    );
  return { name: name || 'tax', rate: rate ?? '0' };
};

const readPerson = (reading: Reading, row: Form, at: string, currency: string): Person => {
  const name = reading.words(`${at}.name`, 'Name of a person', 'Enter who this is, or take the row out.');
  const about = name || 'Person';
  const hours = weekdays.map((day) => [
    day,
    reading.take(`${at}.hours.${day}`, `${about}, ${dayNames[day]}`, readHours, []),
  ]);
  return {
    key: text(row, 'key'),
    name,
    hourlyCost: reading.maybe(`${at}.hourlyCost`, `${about}, cost of an hour`, (typed) =>
      readMoney(typed, currency),
    ),
    hours: Object.fromEntries(hours),
  };
};

export const dayNames = {
  mon: 'Monday',
  tue: 'Tuesday',
  wed: 'Wednesday',
  thu: 'Thursday',
  fri: 'Friday',
  sat: 'Saturday',
  sun: 'Sunday',
} as const;
