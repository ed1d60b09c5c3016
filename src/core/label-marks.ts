import type { Ingredient } from './facts/ingredient.js';
import type { Stamp } from './label.js';
import { groups } from './label-entries.js';
import { type LabelReading, type Named, readLabel } from './label-text.js';

type Allergens = Ingredient['allergens'];

/**
 * The allergens a label's reading marks. A group that it contains is explained by a substance of it that the label
 * names as well ("cereals containing gluten (wheat)"), unless it says "other"; a group it may contain stays open.
 */
export const marksOf = ({ named }: LabelReading): Map<string, Named> => {
  const all = new Map(named.map((one) => [one.id, one]));
  for (const { id, members } of groups) {
    const group = all.get(id);
    const explained = members.some((member) => all.get(member)?.state === 'contains');
    const others = group?.led.some(({ words }) => /^other\b/i.test(words));
    if (group?.state === 'contains' && explained && !others) all.delete(id);
  }
  return all;
};

/**
 * An ingredient's allergens once a label's text is read over them: what it names takes `stamp`, at its state where it
 * was not known, not listed or marked by the text read `before`, at the worse of the two where the cook marked it. What
 * only the earlier text named is not known again. Nothing is set to not listed.
 */
export const withLabelRead = (
  allergens: Allergens,
  text: string,
  before: string,
  stamp: Stamp,
): Allergens => {
  const [was, is] = [marksOf(readLabel(before)), marksOf(readLabel(text))];
  const after: Allergens = { ...allergens };
  const fresh = text !== before;
  if (fresh) for (const [id, { state }] of was) if (after[id]?.state === state) delete after[id];
  for (const [id, { state }] of is) {
    const stood = after[id]?.state ?? 'unknown';
    const wanted = stood === 'contains' ? stood : state;
    if (wanted !== stood && (fresh || stood === 'unknown')) after[id] = { state: wanted, ...stamp };
  }
  return after;
};
