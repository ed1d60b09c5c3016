import type { Kitchen } from '../../core/facts/kitchen.js';
import type { Line, Recipe, Step } from '../../core/facts/recipe.js';
import { typedEquipment } from '../../core/reading-equipment.js';
import { typedHeat, typedTolerance } from '../../core/reading-measures.js';
import type { Form } from '../form.js';
import { typedAmount, typedMeasure, typedNumber, typedRange, typedUnit } from '../typed.js';
import type { Items } from './items.js';
import { tinForm } from './tin.js';

/** A recipe as its form shows it. */
export const recipeForm = (doc: Recipe, revision: number, items: Items, kitchen: Kitchen): Form => ({
  revision: String(revision),
  name: doc.name,
  variantOf: doc.variantOf ?? '',
  yield: {
    portions: typedAmount(doc.yield.portions),
    weight: typedMeasure(doc.yield.weight),
    volume: typedMeasure(doc.yield.volume),
  },
  byPiece: doc.byPiece ? 'on' : '',
  cookingLoss: typedAmount(doc.cookingLoss),
  tin: tinForm(doc.tin),
  cup: doc.cup ?? '',
  keepingDays: typedNumber(doc.keepingDays),
  lines: doc.lines.map((line) => lineForm(line, items)),
  steps: doc.steps.map((step) => stepForm(step, kitchen)),
  note: doc.note,
});

/** A recipe that is only begun: three lines and a step to fill in. */
export const emptyForm = (): Form => ({
  revision: '0',
  name: '',
  variantOf: '',
  yield: { portions: '', weight: '', volume: '' },
  tin: tinForm(null),
  lines: [emptyLine(), emptyLine(), emptyLine()],
  steps: [emptyStep()],
});

export const emptyLine = (): Form => ({ key: '', stated: 'usual', scales: 'straight' });
export const emptyStep = (): Form => ({ key: '', attended: 'on', where: 'home' });

const lineForm = (line: Line, items: Items): Form => ({
  key: line.key,
  amount: typedRange(line.amount, line.amountTo),
  unit: line.unit === 'each' ? '' : typedUnit(line.unit),
  item: items.textOf(line.item),
  preparation: line.preparation,
  stated: line.stated,
  cooked: line.cooked,
  scales: line.scales,
});

const stepForm = (step: Step, kitchen: Kitchen): Form => ({
  key: step.key,
  words: step.words,
  minutes: typedNumber(step.minutes),
  minutesLongest: typedNumber(step.minutesLongest),
  attended: step.attended ? 'on' : '',
  oven: step.oven ? typedHeat(step.oven.heat, kitchen) : '',
  tolerance: step.oven?.tolerance ? typedTolerance(step.oven.tolerance, kitchen) : '',
  portionsPerShelf: typedAmount(step.portionsPerShelf),
  rings: typedNumber(step.rings || null),
  pan: typedAmount(step.pan),
  mixers: typedNumber(step.mixers || null),
  fridgeShelves: typedNumber(step.fridgeShelves || null),
  after: step.after.map(({ step, least, most }) => ({
    step,
    least: typedNumber(least || null),
    most: typedNumber(most),
  })),
  servedWithin: typedNumber(step.servedWithin),
  equipment: typedEquipment(step.equipment),
  where: step.where,
  daysAhead: typedNumber(step.daysAhead || null),
});
