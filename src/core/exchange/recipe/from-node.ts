import { mayBeHeading, readLine } from '../lines/read-line.js';
import { noTime, readMethod, type StepReading } from '../method/read-method.js';
import type { RecipeDraft, Section, Source, Times, YieldReading } from './draft.js';
import { instructionsOf } from './instructions.js';
import { readDuration } from './iso-duration.js';
import { isNode, listOf, type Node, property, type Value } from './nodes.js';
import { plainText } from './plain-text.js';
import { noYield, readYield } from './yield.js';

/** A draft of one recipe's data, in whatever shape schema.org allows it. */
export const fromNode = (node: Node, source: Source, resolve: (value: Value) => Value): RecipeDraft => {
  const unsure: string[] = [];
  const name = textsOf(property(node, 'name', 'headline'), resolve)[0] ?? '';
  if (!name) unsure.push('The recipe has no name.');
  const all = ingredientsOf(node, resolve);
  const lines = all.slice(0, mostLines);
  if (all.length > mostLines)
    unsure.push(`Only the first ${mostLines} of ${all.length} ingredients are read.`);
  const sections = sectionsOf(lines, unsure);
  if (lines.length === 0) unsure.push('No ingredients were found.');
  const steps = stepsOf(node, resolve);
  if (steps.length > mostSteps) unsure.push(`Only the first ${mostSteps} steps are read.`);
  if (steps.length === 0) unsure.push('No method was found.');
  return {
    name: oneLine(name).slice(0, 200),
    source,
    yield: yieldOf(property(node, 'recipeYield', 'yield'), resolve, unsure),
    times: timesOf(node, resolve),
    sections,
    steps: steps.slice(0, mostSteps),
    note: textsOf(property(node, 'description'), resolve)[0]?.slice(0, 4000) ?? '',
    unsure,
  };
};

/** Some pages tell part of the list by the property's older name, some the same list by both. */
const ingredientsOf = (node: Node, resolve: (value: Value) => Value): string[] => {
  const lines = linesOf(property(node, 'recipeIngredient'), resolve);
  const older = linesOf(property(node, 'ingredients'), resolve).filter((line) => !lines.includes(line));
  const all = [...lines, ...older];
  return all.length > 0 ? all : linesOf(property(node, 'supply'), resolve);
};

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** The words of a value: of a string, a number, a node's name or text, or of each of a list. */
export const textsOf = (value: Value | undefined, resolve: (value: Value) => Value): string[] =>
  listOf(value)
    .map(resolve)
    .flatMap((one): string[] => {
      if (typeof one === 'string') return [plainText(one)];
      if (typeof one === 'number') return [String(one)];
      if (!isNode(one)) return [];
      if (typeof one['@value'] === 'string' || typeof one['@value'] === 'number')
        return [plainText(String(one['@value']))];
      const items = property(one, 'itemListElement', 'item');
      return items === undefined ? amountAndName(one, resolve) : textsOf(items, resolve);
    })
    .filter((text) => text !== '');

/** A HowToSupply or PropertyValue names what and how much apart. */
const amountAndName = (node: Node, resolve: (value: Value) => Value): string[] => {
  const quantity = textsOf(property(node, 'requiredQuantity', 'value', 'amount'), resolve)[0];
  const unit = quantity && textsOf(property(node, 'unitText', 'unit'), resolve)[0];
  const name = textsOf(property(node, 'text', 'name', 'description'), resolve)[0];
  const parts = [quantity, unit, name].filter((part) => part !== undefined && part !== '');
  return parts.length > 0 ? [parts.join(' ')] : [];
};

const mostLines = 500;
const mostSteps = 200;

/** One text may hold all ingredients, a line each. */
const linesOf = (value: Value | undefined, resolve: (value: Value) => Value): string[] =>
  textsOf(value, resolve)
    .flatMap((text) => text.split('\n'))
    .map(oneLine)
    .filter((text) => text !== '');

/** Lines under the headings that stand among them; a bare word that may be one is, before an amount, and is said. */
export const sectionsOf = (lines: readonly string[], unsure: string[]): Section[] => {
  const sections: Section[] = [];
  const all = lines
    .map((text) => ({ text, read: readLine(text) }))
    .filter(({ read }) => read.kind !== 'empty');
  for (const [at, { text, read }] of all.entries()) {
    const likely = read.because.includes(mayBeHeading) && all[at + 1]?.read.quantity;
    if (likely) unsure.push(`"${text}" is read as a heading.`);
    if (read.kind === 'heading' || likely) sections.push({ title: read.heading ?? text, lines: [] });
    else {
      if (sections.length === 0) sections.push({ title: '', lines: [] });
      sections.at(-1)!.lines.push({ text, read });
    }
  }
  return sections;
};

const stepsOf = (node: Node, resolve: (value: Value) => Value): StepReading[] =>
  instructionsOf(property(node, 'recipeInstructions', 'step', 'steps'), resolve).flatMap(
    ({ part, text, minutes }) => {
      const steps = readMethod(text).map((step) => (part && !step.part ? { ...step, part } : step));
      const [only] = steps;
      if (minutes === null || !only || steps.length > 1) return steps;
      const because = only.because.filter((why) => why !== noTime);
      return [{ ...only, minutes, minutesLongest: null, because, sure: because.length === 0 }];
    },
  );

const yieldOf = (
  value: Value | undefined,
  resolve: (value: Value) => Value,
  unsure: string[],
): YieldReading => {
  const texts = yieldTexts(value, resolve);
  const read = texts.map(readYield);
  // A list often holds the bare number and the same in words: the words say more.
  const found = read.toSorted((a, b) => telling(b.yield) - telling(a.yield))[0];
  if (!found) {
    unsure.push('What it makes is not said.');
    return noYield;
  }
  unsure.push(...found.because);
  const other = read.find(
    ({ yield: one }) => one.portions && found.yield.portions && one.portions !== found.yield.portions,
  );
  if (other) unsure.push(`What it makes is stated twice: "${found.yield.text}" and "${other.yield.text}".`);
  const weight = found.yield.weight ?? read.find(({ yield: one }) => one.weight)?.yield.weight ?? null;
  const volume = found.yield.volume ?? read.find(({ yield: one }) => one.volume)?.yield.volume ?? null;
  return { ...found.yield, weight, volume };
};

const telling = ({ portions, weight, volume, text }: YieldReading): number =>
  (portions ? 100_000 : weight || volume ? 10_000 : 0) + Math.min(text.length, 1000);

const yieldTexts = (value: Value | undefined, resolve: (value: Value) => Value): string[] =>
  listOf(value).flatMap((one) => {
    const node = resolve(one);
    if (!isNode(node)) return textsOf(node, resolve);
    const [least] = textsOf(property(node, 'minValue'), resolve);
    const [most] = textsOf(property(node, 'maxValue'), resolve);
    if (least && most)
      return [[`${least}-${most}`, ...textsOf(property(node, 'unitText'), resolve)].join(' ')];
    if (property(node, 'value') === undefined) return textsOf(node, resolve);
    const parts = [property(node, 'value'), property(node, 'unitText', 'unitCode')].flatMap((part) =>
      textsOf(part, resolve),
    );
    return [parts.join(' ')];
  });

const timesOf = (node: Node, resolve: (value: Value) => Value): Times => {
  const of = (...names: string[]): number | null => {
    for (const text of textsOf(property(node, ...names), resolve)) {
      const minutes = readDuration(text);
      if (minutes !== null) return minutes;
    }
    return null;
  };
  return { prep: of('prepTime'), cook: of('cookTime', 'performTime'), total: of('totalTime') };
};
