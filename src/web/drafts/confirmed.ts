import { readAmounts } from '../../core/exchange/draft/amounts.js';
import type { Confirmed, ConfirmedLine, ConfirmedPart, DraftItem } from '../../core/exchange/draft/build.js';
import type { RecipeDraft } from '../../core/exchange/recipe/draft.js';
import type { Measure } from '../../core/facts/common.js';
import { cups, type Kitchen } from '../../core/facts/kitchen.js';
import { type Recipe, type Step, stateds } from '../../core/facts/recipe.js';
import { baseOf } from '../../core/quantity/units.js';
import { isRead, type Read, readMoreThanZero, readUnitWord, readWhole } from '../../core/reading.js';
import { readEquipment } from '../../core/reading-equipment.js';
import { readHeat, readMeasure, readMinutes, readTolerance } from '../../core/reading-measures.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import type { Around } from './around.js';
import { headState, lineState, readAt, sourceLines, stepState } from './states.js';

type Context = { read: RecipeDraft; around: Around; kitchen: Kitchen };

/** What a draft's form says, with what is not confirmed or can't be read noted in `reading`. */
export const readConfirmed = (reading: Reading, context: Context): Confirmed => {
  const { form } = reading;
  const head = readHead(reading, context);
  const parts = rows(form, 'parts').map((part, at) => readPart(reading, part, at));
  if (parts.length === 0) parts.push({ title: '', lines: [], steps: [], component: null });
  const partOf = (row: Form): ConfirmedPart => parts[Number(text(row, 'part'))] ?? parts[0]!;
  rows(form, 'lines').forEach((row, at) => {
    const line = readLine(reading, row, at, context);
    if (line) partOf(row).lines.push(line);
  });
  rows(form, 'steps').forEach((row, at) => {
    const step = readStep(reading, row, at, context);
    if (step) partOf(row).steps.push(step);
  });
  if (rows(form, 'lines').every((row) => text(row, 'out') === 'on'))
    reading.refuse(
      'name',
      'What goes in',
      'Every line is left out, so nothing goes in. Put one back or add one.',
    );
  return { ...head, parts: parts.filter((part) => part.lines.length + part.steps.length > 0) };
};

/** The name and what it makes. */
export const readHead = (reading: Reading, { read }: Pick<Context, 'read'>, confirming = false) => {
  const { form } = reading;
  const name = reading.words('name', 'Name', 'Enter what the recipe is called.');
  const weight = reading.maybe('yield.weight', 'Weight it makes', (typed) => readMeasure(typed, 'g'));
  const volume = reading.maybe('yield.volume', 'Volume it makes', (typed) => readMeasure(typed, 'ml'));
  const portions = reading.maybe(
    'yield.portions',
    'Portions it makes',
    (typed): Read<string> => readMoreThanZero(typed),
  );
  if (['portions', 'weight', 'volume'].every((part) => reading.text(`yield.${part}`) === ''))
    reading.refuse(
      'yield.portions',
      'What it makes',
      'Enter what one batch makes: portions, such as 12, a weight or a volume; one of them is enough.',
    );
  else if (!confirming && headState(form, read).open)
    reading.refuse('yield.portions', 'What it makes', 'Confirm the name and what it makes, or mend them.');
  return {
    name,
    yield: { portions, weight, volume } as Recipe['yield'],
    byPiece: reading.ticked('byPiece'),
    cup: cups.find((cup) => cup === reading.text('cup')) ?? null,
    note: reading.text('note'),
  };
};

const readPart = (reading: Reading, part: Form, at: number): ConfirmedPart => {
  const title = text(part, 'title').trim();
  const made = { title, lines: [], steps: [] };
  if (title === '' || text(part, 'as') !== 'component') return { ...made, component: null };
  const name = reading.words(`parts[${at}].name`, `${title}: name`, 'Enter what this recipe is called.');
  const makes = reading.take<Measure>(`parts[${at}].makes`, `${title}: makes`, readMakes, {
    amount: '1',
    unit: 'portion',
  });
  return { ...made, component: { name, makes } };
};

/** What a component makes: portions, a weight or a volume. */
const readMakes = (typed: string): Read<Measure> => {
  const read = readMeasure(/^[\d\s.,/½⅓⅔¼¾]+$/.test(typed.trim()) ? `${typed} portions` : typed);
  if (!isRead(read)) return read;
  const fits = ['g', 'ml', 'portion', 'each'].includes(baseOf(read.value.unit));
  return fits ? read : { sentence: 'Enter portions, a weight or a volume, such as 6 portions or 400 g.' };
};

/** "Line 4, rapeseed oil" */
export const lineLabel = (row: Form, at: number): string => {
  const name = text(row, 'item').split(',')[0]!.trim();
  return name ? `Line ${at + 1}, ${name.charAt(0).toLowerCase()}${name.slice(1, 60)}` : `Line ${at + 1}`;
};

/** One line; undefined when it is left out, or can't be taken in yet. */
export const readLine = (
  reading: Reading,
  row: Form,
  at: number,
  { read, around }: Context,
  confirming = false,
): ConfirmedLine | undefined => {
  const field = (name: string) => `lines[${at}].${name}`;
  const label = lineLabel(row, at);
  const source = readAt(sourceLines(read), row);
  const state = lineState(row, source, around);
  if (state.out) return undefined;
  const item = readItem(reading, row, at, around);
  if (item && !confirming && state.open)
    reading.refuse(
      field('item'),
      label,
      `This line is not confirmed yet: confirm it, mend it or leave it out. ${state.because[0] ?? ''}`.trim(),
    );
  const unit = reading.take(field('unit'), `${label}: unit`, readUnitWord, 'each');
  const { amount, amountTo } = reading.take(
    field('amount'),
    `${label}: quantity`,
    (typed) => readAmounts(typed, unit),
    { amount: null, amountTo: null },
  );
  const holds = reading.maybe(field('holds'), `${label}: what one holds`, (typed) => readMeasure(typed));
  if (!item) return undefined;
  return {
    key: text(row, 'key'),
    amount,
    amountTo,
    unit,
    item,
    preparation: reading.text(field('preparation')),
    stated: reading.oneOf(field('stated'), stateds, 'usual'),
    holds,
  };
};

const readItem = (reading: Reading, row: Form, at: number, around: Around): DraftItem | undefined => {
  const name = text(row, 'item').trim();
  const { match, fresh } = around.meaning(row);
  if (fresh) return { fresh: fresh.name, food: fresh.food };
  if (match.kind === 'exact') return match.known.item;
  const refuse = (sentence: string) => reading.refuse(`lines[${at}].item`, lineLabel(row, at), sentence);
  if (name === '') refuse('Enter an ingredient, or a recipe to use as a component, or leave the line out.');
  else if (match.kind === 'both')
    refuse(`There is an ingredient and a recipe called ${name.slice(0, 60)}: choose which.`);
  else
    refuse(
      `There is no ingredient or recipe called ${name.slice(0, 60)} yet: choose one that is near, make it new, or leave the line out.`,
    );
  return undefined;
};

/** One step; undefined when it is left out or nothing is written. */
export const readStep = (
  reading: Reading,
  row: Form,
  at: number,
  { read, kitchen }: Pick<Context, 'read' | 'kitchen'>,
  confirming = false,
): Omit<Step, 'key'> | undefined => {
  const field = (name: string) => `steps[${at}].${name}`;
  const label = `Step ${at + 1}`;
  const state = stepState(row, readAt(read.steps, row));
  if (state.out) return undefined;
  const timed = text(row, 'minutes').trim() !== '' || text(row, 'untimed') === 'on';
  if (!timed)
    reading.refuse(
      field('minutes'),
      label,
      'Say how long it takes, such as 35 or 1 h 20, or leave the time open.',
    );
  else if (!confirming && state.open)
    reading.refuse(
      field('minutes'),
      label,
      'This step is not confirmed yet: confirm it, mend it or leave it out.',
    );
  const minutes = (name: string, what: string) =>
    reading.maybe(field(name), `${label}: ${what}`, (typed) => readMinutes(typed, what));
  const count = (name: string, what: string, most: number) =>
    reading.maybe(field(name), `${label}: ${what}`, (typed) => readWhole(typed, what, 0, most)) ?? 0;
  return {
    ...restOfStep,
    words: reading.words(field('words'), label, 'Say what is done in this step, or leave it out.'),
    minutes: minutes('minutes', 'how long it takes'),
    minutesLongest: minutes('longest', 'how long at most'),
    attended: reading.ticked(field('attended')),
    oven: readOven(reading, field, label, kitchen),
    rings: count('rings', 'hob rings', 20),
    mixers: count('mixers', 'mixers', 5),
    fridgeShelves: count('fridgeShelves', 'fridge shelves', 50),
    equipment: reading.maybe(field('equipment'), `${label}: equipment`, readEquipment) ?? [],
  };
};

/** What no recipe says and nothing turns on until its page asks. */
const restOfStep = {
  portionsPerShelf: null,
  pan: null,
  after: [],
  servedWithin: null,
  where: 'home',
  daysAhead: 0,
} as const satisfies Partial<Step>;

const readOven = (
  reading: Reading,
  field: (name: string) => string,
  label: string,
  kitchen: Kitchen,
): Step['oven'] => {
  const heat = reading.maybe(field('oven'), `${label}: oven heat`, (typed) => readHeat(typed, kitchen));
  const tolerance = reading.maybe(field('tolerance'), `${label}: degrees off`, (typed) =>
    readTolerance(typed, kitchen),
  );
  return heat === null ? null : { heat, tolerance: tolerance ?? 0 };
};
