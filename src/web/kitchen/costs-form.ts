import type { Kitchen } from '../../core/facts/kitchen.js';
import { taxRoundings } from '../../core/facts/price.js';
import { readMoney, readPercent } from '../../core/reading.js';
import { linesForm } from '../cost-lines/form.js';
import { readCostLines } from '../cost-lines/read.js';
import type { Reading } from '../faults.js';
import type { Form } from '../form.js';
import { formatFor } from '../format.js';
import { typedAmount } from '../typed.js';

/** The usual costs and how prices are kept, as their form shows them. */
export const usualForm = (kitchen: Kitchen, revision: number): Form => {
  const f = formatFor(kitchen);
  return {
    revision: String(revision),
    costs: linesForm(kitchen.costs, f),
    marginFloor: typedAmount(kitchen.marginFloor),
    roundTo: kitchen.roundTo === 0 ? '' : f.plainMoney(kitchen.roundTo),
    included: kitchen.tax?.included ? 'yes' : 'no',
    rounding: kitchen.tax?.rounding ?? 'whole-nearest',
  };
};

/** The settings as the form says, with what can't be read noted in `reading`. */
export const readUsual = (reading: Reading, kitchen: Kitchen): ((before: Kitchen) => Kitchen) => {
  const { currency } = kitchen;
  const costs = readCostLines(reading, { currency, f: formatFor(kitchen), before: kitchen.costs });
  const marginFloor = reading.maybe('marginFloor', 'The margin to live on', (typed) =>
    readPercent(typed, 'the margin', 99),
  );
  const roundTo =
    reading.maybe('roundTo', 'A price a guest goes up to', (typed) => readMoney(typed, currency)) ?? 0;
  const included = reading.text('included') === 'yes';
  const rounding = reading.oneOf('rounding', taxRoundings, 'whole-nearest');
  return (before) => ({
    ...before,
    costs,
    marginFloor,
    roundTo,
    tax: before.tax && { ...before.tax, included, rounding },
  });
};
