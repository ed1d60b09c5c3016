import type { Kitchen } from '../core/facts/kitchen.js';
import { minorDigits } from '../core/money.js';
import { Rational } from '../core/quantity/rational.js';
import { plural, type Shown, showHeat } from '../core/quantity/show.js';
import { inOneUnit } from '../core/quantity/shown.js';
import { type Html, html } from './html.js';

type Ways = Pick<Kitchen, 'locale' | 'currency' | 'heat'>;

const kept = new Map<string, Format>();

/** How figures, dates and words leave for a kitchen's pages. Making one is slow, so each is made once. */
export const formatFor = (ways: Ways): Format => {
  const key = `${ways.locale} ${ways.currency} ${ways.heat}`;
  const format = kept.get(key) ?? new Format(ways);
  kept.set(key, format);
  return format;
};

export class Format {
  private readonly digits: number;
  private readonly coins: Intl.NumberFormat;
  private readonly numbers: Intl.NumberFormat;
  private readonly days: Record<
    'day' | 'weekday' | 'long' | 'year' | 'name' | 'plain' | 'full' | 'whole' | 'month' | 'short',
    Intl.DateTimeFormat
  >;
  private readonly lists: Intl.ListFormat;

  constructor(readonly ways: Ways) {
    const { locale, currency } = ways;
    this.digits = minorDigits(currency);
    // The digits of ISO 4217; some currencies go without them in everyday prices, and then pennies would be lost.
    const digits = { minimumFractionDigits: this.digits, maximumFractionDigits: this.digits };
    this.coins = new Intl.NumberFormat(locale, { style: 'currency', currency, ...digits });
    this.numbers = new Intl.NumberFormat(locale, { maximumFractionDigits: 9 });
    const day = (options: Intl.DateTimeFormatOptions) =>
      new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC' });
    this.days = {
      day: day({ weekday: 'short', day: 'numeric', month: 'short' }),
      weekday: day({ weekday: 'long' }),
      long: day({ weekday: 'long', day: 'numeric', month: 'long' }),
      year: day({ weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' }),
      name: day({ weekday: 'short' }),
      plain: day({ day: 'numeric', month: 'short' }),
      full: day({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' }),
      whole: day({ day: 'numeric', month: 'long', year: 'numeric' }),
      month: day({ day: 'numeric', month: 'long' }),
      short: day({ day: 'numeric', month: 'short', year: 'numeric' }),
    };
    this.lists = new Intl.ListFormat(locale, { type: 'conjunction' });
  }

  /** Minor units as money, "£1,196.00"; never rounded here. */
  money(minor: number | bigint): string {
    return this.coins.format(this.plainMoney(minor) as unknown as number).replace(/^-/, '−');
  }

  /** Money as one types it: minor units 340 as "3.40" in pounds, "340" in yen. */
  plainMoney(minor: number | bigint): string {
    return Rational.of(minor, 10n ** BigInt(this.digits)).toFixed(this.digits);
  }

  /** A whole number or exact text with the kitchen's grouping: "1,200". */
  number(value: number | string): string {
    return this.numbers.format(value as number).replace(/^-/, '−');
  }

  /** A percentage to `places`, the last one rounded half up: "29.7%". */
  percent(exact: Rational | string, places = 1): string {
    const value = typeof exact === 'string' ? Rational.parse(exact) : exact;
    return `${value.toFixed(places).replace(/^-/, '−')}%`;
  }

  /** A shown figure with its lighter unit; a fraction in it is set as one. */
  measure({ from, ...shown }: Shown): Html {
    const { figure, fraction, unit, and = [] } = shown;
    if (from && !inOneUnit(from, shown)) return html`${this.measure(from)} to ${this.measure(shown)}`;
    const word = unit === 'each' ? '' : plural(unit, figure, fraction);
    return html`<span class="qty${from && ' range'}"><b>${from && html`${bare(from)}–`}${bare(shown)}</b>${word && html`<span class="unit">${word}</span>`}</span>${and.map((part) => html` ${this.measure(part)}`)}`;
  }

  /** "Sat 17 Oct", by the kitchen's locale. */
  date(date: string): string {
    return this.set('day', date);
  }

  /** "Sat". */
  dayName(date: string): string {
    return this.set('name', date);
  }

  /** "17 Oct". */
  dayMonth(date: string): string {
    return this.set('plain', date);
  }

  /** "Saturday". */
  weekday(date: string): string {
    return this.set('weekday', date);
  }

  /** "Saturday 17 October". */
  longDate(date: string): string {
    return this.set('long', date);
  }

  /** "Sat 17 Oct 2026", for papers that clients keep. */
  dateYear(date: string): string {
    return this.set('year', date);
  }

  /** "Saturday 17 October 2026", as a letter has it. */
  fullDate(date: string): string {
    return this.set('full', date);
  }

  /** "6 October 2026". */
  wholeDate(date: string): string {
    return this.set('whole', date);
  }

  /** "6 Oct 2026". */
  shortDate(date: string): string {
    return this.set('short', date);
  }

  /** "28 September". */
  dayOfMonth(date: string): string {
    return this.set('month', date);
  }

  /** A currency as people say it: "British pounds". */
  currencyName(): string {
    const parts = new Intl.NumberFormat(this.ways.locale, {
      style: 'currency',
      currency: this.ways.currency,
      currencyDisplay: 'name',
    }).formatToParts(2);
    return parts.find(({ type }) => type === 'currency')?.value ?? this.ways.currency;
  }

  private set(way: keyof Format['days'], date: string): string {
    return this.days[way].format(new Date(`${date}T12:00:00Z`)).replace(/^(\p{L}+),/u, '$1');
  }

  /** "190 °C", or Fahrenheit when the kitchen reads that. */
  heat(celsius: number): string {
    return showHeat(celsius, this.ways);
  }

  /** "leeks, cream and salt". */
  list(words: readonly string[]): string {
    return this.lists.format(words);
  }

  /** "1 h 20 min". */
  duration(minutes: number): string {
    const hours = Math.floor(minutes / 60);
    const rest = minutes % 60;
    if (hours === 0) return `${rest} min`;
    return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
  }

  /** "1 guest", "46 guests". */
  count(n: number, one: string, many = `${one}s`): string {
    return `${this.number(n)} ${n === 1 ? one : many}`;
  }

  /** "Three", up to twelve; then figures. */
  inWords(n: number): string {
    return words[n] ?? this.number(n);
  }
}

/** A figure with its fraction set as one, without the unit. */
export const bare = ({ figure, fraction }: Shown): Html => {
  const part = fraction && html`<span class="fr">${fraction}</span>`;
  return html`${figure}${figure && part && ' '}${part}`;
};

const words = 'No One Two Three Four Five Six Seven Eight Nine Ten Eleven Twelve'.split(' ');
