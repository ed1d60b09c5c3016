import { readDuration } from './iso-duration.js';
import { isNode, isType, listOf, type Node, property, type Value } from './nodes.js';
import { plainText } from './plain-text.js';

/** One piece of a method: the section it stands in, its words, and the time it states apart from them. */
export type Instruction = { part: string; text: string; minutes: number | null };

const mostSteps = 500;
const deepest = 12;

/** The method in order, of a text, steps, directions, sections or lists of any of them, however nested. */
export const instructionsOf = (value: Value | undefined, resolve: (value: Value) => Value): Instruction[] => {
  const found: Instruction[] = [];
  collect(value, { part: '', depth: 0 }, resolve, found);
  return found;
};

/** A list whose items all say their position is in that order. */
const inOrder = (items: readonly Value[]): readonly Value[] => {
  const places = items.map((item) =>
    Number(isNode(item) ? (property(item, 'position') ?? Number.NaN) : Number.NaN),
  );
  if (places.some(Number.isNaN)) return items;
  return items
    .map((item, at) => ({ item, place: places[at]! }))
    .toSorted((a, b) => a.place - b.place)
    .map(({ item }) => item);
};

type Where = { part: string; depth: number };

const collect = (
  value: Value | undefined,
  where: Where,
  resolve: (value: Value) => Value,
  found: Instruction[],
): void => {
  if (where.depth > deepest) return;
  for (const item of inOrder(listOf(value))) {
    if (found.length >= mostSteps) return;
    const one = resolve(item);
    if (typeof one === 'string') {
      const text = plainText(one);
      if (text) found.push({ part: where.part, text, minutes: null });
    } else if (Array.isArray(one)) collect(one, { ...where, depth: where.depth + 1 }, resolve, found);
    else if (isNode(one)) collectNode(one, where, resolve, found);
  }
};

const collectNode = (
  node: Node,
  where: Where,
  resolve: (value: Value) => Value,
  found: Instruction[],
): void => {
  const items = property(node, 'itemListElement', 'steps', 'step', 'item');
  const words = (...names: string[]): string => {
    const [value] = listOf(property(node, ...names));
    return typeof value === 'string' || typeof value === 'number' ? plainText(String(value)) : '';
  };
  const name = words('name');
  if (items !== undefined && !(isType(node, 'HowToStep') && words('text'))) {
    const part = isType(node, 'HowToSection') && name ? name : where.part;
    collect(items, { part, depth: where.depth + 1 }, resolve, found);
    return;
  }
  const text = words('text', 'description', 'articleBody') || name;
  const [time] = listOf(property(node, 'timeRequired', 'performTime', 'totalTime'));
  if (text)
    found.push({ part: where.part, text, minutes: typeof time === 'string' ? readDuration(time) : null });
};
