import type { Event } from '../../core/facts/event.js';
import type { SellingPrice } from '../../core/facts/price.js';
import { exact } from '../../core/quantity/amount.js';
import { isRead, type Read, readMoney, readPercent } from '../../core/reading.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import type { Format } from '../format.js';
import { typedAmount } from '../typed.js';

const ways = ['aGuest', 'total', 'margin', 'foodCost', 'none'] as const;

/** How the price of an event is set, as its form shows it. */
export const priceForm = ({ price, groups }: Event, revision: number, f: Format): Form => {
  const { by, discount } = price;
  const money = (sum: number | null | undefined) => (sum ? f.plainMoney(sum) : '');
  return {
    revision: String(revision),
    by: by ? ways.find((way) => way in by)! : 'none',
    aGuest: by && 'aGuest' in by ? f.plainMoney(by.aGuest) : '',
    total: by && 'total' in by ? f.plainMoney(by.total) : '',
    margin: by && 'margin' in by ? typedAmount(by.margin) : '',
    foodCost: by && 'foodCost' in by ? typedAmount(by.foodCost) : '',
    roundTo: money(price.roundTo),
    pays: groups.map(({ key }) => paysForm(price, key, f)),
    minimum: money(price.minimum),
    off: discount ? ('off' in discount ? 'sum' : 'percent') : 'none',
    discount: discount
      ? 'off' in discount
        ? f.plainMoney(discount.off)
        : typedAmount(discount.percent)
      : '',
    discountFor: price.discountFor,
  };
};

const paysForm = ({ groups }: SellingPrice, group: string, f: Format): Form => {
  const own = groups.find((one) => one.group === group)?.pays;
  if (!own) return { group, how: 'full', figure: '' };
  return 'aGuest' in own
    ? { group, how: 'own', figure: f.plainMoney(own.aGuest) }
    : { group, how: 'percent', figure: typedAmount(own.percent) };
};

/** The price as the form says; faults are noted. What stands for a group that is no longer there goes. */
export const readPrice = (reading: Reading, { groups }: Event, currency: string): SellingPrice => {
  const money = (typed: string) => readMoney(typed, currency);
  return {
    by: readBy(reading, money),
    roundTo: reading.maybe('roundTo', 'A price a guest goes up to', money) ?? 0,
    groups: rows(reading.form, 'pays').flatMap((row, i) => {
      const named = groups.find(({ key }) => key === text(row, 'group'));
      return named ? readPays(reading, `pays[${i}]`, named, money) : [];
    }),
    minimum: reading.maybe('minimum', 'The least it comes to', money),
    discount: readDiscount(reading, money),
    discountFor: readFor(reading),
  };
};

type MoneyReader = (typed: string) => ReturnType<typeof readMoney>;

const readBy = (reading: Reading, money: MoneyReader): SellingPrice['by'] => {
  switch (reading.oneOf('by', ways, 'none')) {
    case 'aGuest':
      return { aGuest: reading.take('aGuest', 'Price a guest', money, 0) };
    case 'total':
      return { total: reading.take('total', 'The total', money, 0) };
    case 'margin':
      return {
        margin: reading.take('margin', 'The margin', (typed) => readPercent(typed, 'the margin', 99), '0'),
      };
    case 'foodCost':
      return {
        foodCost: reading.take('foodCost', 'Food cost', readFoodCost, '30'),
      };
    case 'none':
      return null;
  }
};

const readFoodCost = (typed: string): Read<string> => {
  const read = readPercent(typed, 'what the food is of the price', 100);
  if (!isRead(read) || exact(read.value).sign > 0) return read;
  return { sentence: 'Food is more than 0 % of a price. Enter what part it should be, such as 30.' };
};

const readPays = (
  reading: Reading,
  at: string,
  { key: group, name }: Event['groups'][number],
  money: MoneyReader,
): SellingPrice['groups'] => {
  switch (reading.oneOf(`${at}.how`, ['full', 'own', 'percent'], 'full')) {
    case 'own':
      return [{ group, pays: { aGuest: reading.take(`${at}.figure`, `${name}, price`, money, 0) } }];
    case 'percent':
      return [
        {
          group,
          pays: {
            percent: reading.take(
              `${at}.figure`,
              `${name}, per cent`,
              (typed) => readPercent(typed, `what ${name} pay`, 1000),
              '100',
            ),
          },
        },
      ];
    case 'full':
      return [];
  }
};

const readDiscount = (reading: Reading, money: MoneyReader): SellingPrice['discount'] => {
  switch (reading.oneOf('off', ['none', 'percent', 'sum'], 'none')) {
    case 'percent':
      return {
        percent: reading.take('discount', 'Discount', (typed) => readPercent(typed, 'the discount'), '0'),
      };
    case 'sum':
      return { off: reading.take('discount', 'Discount', money, 0) };
    case 'none':
      return null;
  }
};

const readFor = (reading: Reading): string => {
  const words = reading.text('discountFor');
  if (words.length > 120) reading.refuse('discountFor', 'Taken off for', 'At most 120 letters fit here.');
  return words;
};
