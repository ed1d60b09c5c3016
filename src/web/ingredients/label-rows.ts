import { listOf, type State } from '../../core/allergens.js';
import type { AllergenState, Ingredient } from '../../core/facts/ingredient.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { type LabelEntry, labelOf } from '../../core/label-entries.js';
import { type Format, formatFor } from '../format.js';

export type LabelRow = { state: State; name: string; words: string };

/** The label as the list in force asks it, then what diets ask beyond the list. */
export const labelRows = (ingredient: Ingredient, kitchen: Kitchen): LabelRow[] => {
  const f = formatFor(kitchen);
  const entries = labelOf(ingredient, listOf(kitchen));
  const listed = entries.filter((entry) => !entry.beyond);
  const beyond = entries.filter((entry) => entry.beyond);
  const all = `All ${f.inWords(listed.length).toLowerCase()}`;
  return [
    ...rowsOf(listed, ingredient, f, (some) => (some.length === listed.length ? all : shortNames(some))),
    ...rowsOf(beyond, ingredient, f, shortNames),
  ];
};

/** What is listed, what is not known, then what is not listed by its source. */
const rowsOf = (
  entries: readonly LabelEntry[],
  ingredient: Ingredient,
  f: Format,
  names: (some: readonly LabelEntry[]) => string,
): LabelRow[] => {
  const open = entries.filter(({ state }) => state === 'unknown');
  const wholly = open.filter(({ states }) => states.every(({ state }) => state === 'unknown'));
  const listed = (['contains', 'may', 'unknown'] as const).flatMap((state) =>
    entries
      .filter((entry) => entry.state === state && !wholly.includes(entry))
      .map((entry) => listedRow(entry, ingredient, f)),
  );
  const unread: LabelRow[] =
    wholly.length === 0
      ? []
      : [{ state: 'unknown', name: names(wholly), words: 'not known: treat as contains' }];
  const free = new Map<string, LabelEntry[]>();
  for (const entry of entries.filter(({ state }) => state === 'free')) {
    const source = sourceOf(ingredient.allergens[entry.states[0]!.id], f);
    free.set(source, [...(free.get(source) ?? []), entry]);
  }
  return [
    ...listed,
    ...unread,
    ...[...free].map(([source, some]) => ({
      state: 'free' as const,
      name: names(some),
      words: `not listed${source && `, ${source}`}`,
    })),
  ];
};

const shortNames = (some: readonly LabelEntry[]): string => some.map(({ item }) => item.short).join(', ');

const listedRow = ({ item, group, state, states }: LabelEntry, doc: Ingredient, f: Format): LabelRow => {
  if (state === 'unknown') return { state, name: item.name, words: notKnown(states) };
  const named = (wanted: State) => states.filter((one) => one.state === wanted);
  const which = states.length > 1 ? named(state) : [];
  const entry = which[0] ? doc.allergens[which[0].id] : doc.allergens[group ? group.id : states[0]!.id];
  const also = state === 'contains' && states.length > 1 ? named('may') : [];
  const words = [
    state === 'contains' ? 'contains' : 'may contain',
    which.length > 0
      ? ` ${f.list(which.map(({ name }) => name))}`
      : states.length > 1
        ? ', not said which'
        : '',
    also.length > 0 ? `; may contain ${f.list(also.map(({ name }) => name))}` : '',
    which.length > 0 && group && group.state !== 'unknown'
      ? `; ${group.state === 'may' ? 'may contain' : 'contains'} others, not said which`
      : '',
  ].join('');
  const source = sourceOf(entry, f);
  return { state, name: item.name, words: `${words}${source && `, ${source}`}` };
};

/** Part of a group may be known and the rest not. */
const notKnown = (states: LabelEntry['states']): string => {
  const open = states.filter(({ state }) => state === 'unknown').map(({ name }) => name);
  const part = open.length < states.length ? ` of ${open.join(', ')}` : '';
  return `not known${part}: treat as contains`;
};

/** "label read on 20 Nov, R.T." */
const sourceOf = (entry: AllergenState | undefined, f: Format): string => {
  if (!entry) return '';
  const { source, date, by } = entry;
  const words = {
    label: date ? `label read on ${f.dateYear(date)}` : 'from a label',
    cook: 'the cook’s word',
    reference: 'from a reference',
  }[source];
  return [words, by].filter(Boolean).join(', ');
};
