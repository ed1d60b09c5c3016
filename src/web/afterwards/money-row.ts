import type { MoneyBeside } from '../../core/money-beside.js';
import { costShown } from '../events/dishes.js';
import type { Format } from '../format.js';
import { moreOrLess, upOrDown } from '../more-words.js';

export type MoneyRow = {
  planned: string;
  real: string;
  notKnown: boolean;
  more: string;
  percent: string;
};

/** What was planned and what it came to, as a row shows it. */
export const moneyRow = (beside: MoneyBeside, f: Format): MoneyRow => ({
  planned: costShown(beside.planned, beside.plannedKnown, f),
  real: beside.realKnown || beside.real > 0 ? costShown(beside.real, beside.realKnown, f) : 'not noted',
  notKnown: !beside.realKnown,
  more: moreOrLess(beside.more, f),
  percent: upOrDown(beside.percent, f),
});
