import { componentName, purposeOf } from '../../core/exchange/draft/build.js';
import { begin } from '../../core/exchange/draft/draft-line.js';
import type { KitchenNames } from '../../core/exchange/draft/kitchen-names.js';
import { needsOf, sharedIn } from '../../core/exchange/draft/presets.js';
import type { LineReading } from '../../core/exchange/lines/reading.js';
import { cupSaid } from '../../core/exchange/lines/whose-measure.js';
import type { StepReading } from '../../core/exchange/method/read-method.js';
import type { RecipeDraft } from '../../core/exchange/recipe/draft.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { typedEquipment } from '../../core/reading-equipment.js';
import { asDialled, typedHeat, typedTolerance } from '../../core/reading-measures.js';
import type { Form } from '../form.js';
import { typedAmount, typedMeasure, typedNumber, typedUnit } from '../typed.js';

/** A draft's form as it begins: what was read, with the kitchen's own name where it has one for a food. */
export const draftForm = (read: RecipeDraft, names: KitchenNames, kitchen: Kitchen): Form => {
  const lines = read.sections.flatMap(({ lines }, part) => lines.map((line) => ({ part, read: line.read })));
  const steps = read.steps.map((step, at) => stepForm(step, at, read, kitchen));
  return {
    name: read.name.slice(0, 120),
    yield: {
      portions: typedAmount(read.yield.portions),
      weight: typedMeasure(read.yield.weight),
      volume: typedMeasure(read.yield.volume),
    },
    byPiece: read.yield.byPiece ? 'on' : '',
    cup: cupSaid(lines.map((line) => line.read)) ?? '',
    note: read.note,
    parts: read.sections.map(({ title }) => ({
      title,
      as: 'lines',
      name: componentName(title).slice(0, 120),
      makes: makesLike(read),
    })),
    lines: lines.map((line, at) => lineForm(line.read, at, line.part, names)),
    steps: steps.length > 0 ? steps : [onlyStep(read)],
  };
};

/** A component is first taken to be as much as the recipe needs. */
const makesLike = ({ yield: made }: RecipeDraft): string =>
  made.portions && !made.byPiece ? `${typedAmount(made.portions)} portions` : '';

const lineForm = (read: LineReading, at: number, part: number, names: KitchenNames): Form => {
  const line = begin(read);
  const match = names.match(line.food);
  return {
    key: `l${at + 1}`,
    from: String(at),
    part: String(part),
    amount: typedAmounts(line),
    unit: line.unit === 'each' ? '' : typedUnit(line.unit),
    item: match.kind === 'exact' ? match.known.text : line.food,
    preparation: line.preparation,
    stated: line.stated,
    holds: typedMeasure(line.holds),
  };
};

/** Both ends of a range, or the one figure. */
export const typedAmounts = ({
  amount,
  amountTo,
}: {
  amount: string | null;
  amountTo: string | null;
}): string => (amountTo === null ? typedAmount(amount) : `${typedAmount(amount)}–${typedAmount(amountTo)}`);

const stepForm = (step: StepReading, at: number, { sections }: RecipeDraft, kitchen: Kitchen): Form => {
  const { needs } = needsOf(step);
  const part = step.part ? sections.findIndex(({ title }) => purposeOf(title) === purposeOf(step.part)) : 0;
  return {
    key: `s${at + 1}`,
    from: String(at),
    part: String(Math.max(0, part)),
    words: step.words,
    minutes: typedNumber(step.minutes),
    longest: typedNumber(step.minutesLongest),
    attended: needs.attended ? 'on' : '',
    oven: needs.oven ? typedHeat(asDialled(needs.oven.heat, kitchen), kitchen) : '',
    tolerance: needs.oven?.tolerance ? typedTolerance(needs.oven.tolerance, kitchen) : '',
    rings: typedNumber(needs.rings || null),
    mixers: typedNumber(needs.mixers || null),
    fridgeShelves: typedNumber(needs.fridgeShelves || null),
    equipment: typedEquipment(sharedIn(step)),
  };
};

/** One line stands for a method that nobody wrote; its minutes are what the source says of times, if it does. */
const onlyStep = ({ name, times }: RecipeDraft): Form => {
  const both = times.prep !== null && times.cook !== null ? times.prep + times.cook : null;
  return {
    key: 's1',
    from: '',
    part: '0',
    words: name ? `Make ${name}.` : '',
    minutes: typedNumber(times.total ?? both ?? times.cook ?? times.prep),
    attended: 'on',
  };
};
