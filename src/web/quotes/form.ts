import type { Discount } from '../../core/facts/price.js';
import type { Offer, Option } from '../../core/facts/quote.js';
import { typedDay } from '../../core/reading-days.js';
import type { Form } from '../form.js';
import type { Format } from '../format.js';
import { typedAmount, typedNumber } from '../typed.js';
import { menuText } from './menu-words.js';

const day = (date: string | null): string => (date === null ? '' : typedDay(date));
const share = (percent: string | null): string => (percent === null ? '' : typedAmount(percent));

/** An offer as the form of a draft shows it. */
export const offerForm = (offer: Offer, f: Format): Form => ({
  title: offer.title,
  client: offer.client,
  when: typedDay(offer.when),
  place: offer.place,
  serve: offer.serve,
  guests: String(offer.guests),
  options: offer.options.map((option) => optionForm(option, f)),
  included: offer.terms.included,
  guestNumbers: offer.terms.guestNumbers,
  allergies: offer.terms.allergies,
  more: offer.terms.more,
  validUntil: day(offer.validUntil),
  finalCount: day(offer.finalCount),
  fewerPercent: share(offer.terms.fewerPercent),
  dues: offer.dues.map(({ words, percent, date }) => ({ words, percent: share(percent), date: day(date) })),
  cancellation: offer.terms.cancellation.map(({ days, percent }) => ({
    days: typedNumber(days),
    percent: share(percent),
  })),
});

const optionForm = (option: Option, f: Format): Form => ({
  key: option.key,
  name: option.name,
  menu: menuText(option.menu),
  lines: option.lines.map(({ count, words, each }) => ({
    count: String(count),
    words,
    each: f.plainMoney(each),
  })),
  tiers: option.tiers.map(({ from, each }) => ({ from: String(from), each: f.plainMoney(each) })),
  minimum: option.minimum === null ? '' : f.plainMoney(option.minimum),
  discount: discountText(option.discount, f),
  discountFor: option.discountFor,
});

const discountText = (discount: Discount | null, f: Format): string => {
  if (discount === null) return '';
  return 'off' in discount ? f.plainMoney(discount.off) : `${typedAmount(discount.percent)} %`;
};

const spare = 2;

/** The same with empty rows to go on in below those that are filled. */
export const withSpareRows = (form: Form): Form => ({
  ...form,
  options: listOf(form.options).map((option) => ({
    ...option,
    lines: [...listOf(option.lines), ...empty(spare)],
    tiers: [...listOf(option.tiers), ...empty(spare)],
  })),
  dues: [...listOf(form.dues), ...empty(1)],
  cancellation: [...listOf(form.cancellation), ...empty(1)],
});

const empty = (n: number): Form[] => Array.from({ length: n }, () => ({}));

/** Rows in which something stands. */
export const listOf = (value: Form[string] | undefined): Form[] =>
  (Array.isArray(value) ? value : []).filter(
    (row): row is Form =>
      typeof row === 'object' &&
      !Array.isArray(row) &&
      ('menu' in row || Object.values(row).some((one) => one !== '')),
  );
