import type { CostBasis, CostLine } from '../../core/facts/cost-line.js';
import type { Form } from '../form.js';
import type { Format } from '../format.js';
import { typedAmount, typedNumber } from '../typed.js';

/** What a line goes by, as its form names it. */
export const bases = ['fixed', 'aGuest', 'step', 'hours', 'percent'] as const;
export type Basis = (typeof bases)[number];

/** A cost line as its row of the form shows it; the sum that is not known is empty. */
export const lineForm = ({ key, name, kind, by, note }: CostLine, f: Format): Form => ({
  ...emptyRow,
  key,
  name,
  kind,
  note,
  ...basisForm(by, f),
});

const basisForm = (by: CostBasis, f: Format): Form => {
  const money = (sum: number | null) => (sum === null ? '' : f.plainMoney(sum));
  if ('fixed' in by) return { by: 'fixed', sum: money(by.fixed) };
  if ('aGuest' in by) return { by: 'aGuest', sum: money(by.aGuest) };
  if ('step' in by)
    return {
      by: 'step',
      sum: money(by.step),
      holds: String(by.holds),
      each: by.each === '1' ? '' : typedAmount(by.each),
      spare: by.spare === '0' ? '' : typedAmount(by.spare),
    };
  if ('rate' in by) return { by: 'hours', rate: money(by.rate), ...hoursForm(by) };
  return { by: 'percent', percent: typedAmount(by.percent), of: by.of };
};

const hoursForm = ({ person, hours, people, guestsEach }: Extract<CostBasis, { rate: unknown }>): Form => ({
  person: person ?? '',
  worked: /^[a-z]/.test(hours) ? hours : 'typed',
  hours: /^[a-z]/.test(hours) ? '' : typedAmount(hours),
  people: String(people),
  guestsEach: typedNumber(guestsEach),
});

/** A row as it is added. */
export const emptyRow: Form = {
  key: '',
  name: '',
  kind: 'hands',
  by: 'fixed',
  sum: '',
  holds: '',
  each: '',
  spare: '',
  rate: '',
  person: '',
  worked: 'typed',
  hours: '',
  people: '1',
  guestsEach: '',
  percent: '',
  of: 'food',
  note: '',
};

export const linesForm = (lines: readonly CostLine[], f: Format): Form[] =>
  lines.map((line) => lineForm(line, f));
