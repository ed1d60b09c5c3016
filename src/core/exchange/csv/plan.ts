import type { Workbook } from '../../facts/facts.js';
import { same } from '../../merge.js';
import { workbookRules } from '../workbook-rules.js';
import { documentsIn } from './documents.js';
import type { Csv } from './read.js';
import type { Documents, Found, Refused } from './reader.js';

/** What a table of ours would change; when anything in it is refused, none of it is taken over. */
export type TablePlan = {
  entity: 'ingredient' | 'recipe';
  fresh: Found[];
  changed: Found[];
  same: number;
  refused: Refused[];
};

/** Works out what a table would change in a kitchen; the rules are those of a whole kitchen with it. */
export const tablePlan = (csv: Csv, kitchen: Workbook): TablePlan | { sentence: string } => {
  const read = documentsIn(csv, kitchen);
  if ('sentence' in read) return read;
  const found = (read.found as Found[]).map(owned);
  const fresh = found.filter(({ before }) => !before);
  const changed = found.filter(({ doc, before }) => before && !same(before, doc));
  const refused = read.refused.length > 0 ? read.refused : broken(read, [...fresh, ...changed], kitchen);
  return {
    entity: read.entity,
    fresh,
    changed,
    same: found.length - fresh.length - changed.length,
    refused: refused.toSorted((a, b) => a.line - b.line),
  };
};

/** An example that is changed is one's own from then on; one that gets the packs it came without is not changed. */
const owned = (found: Found): Found => {
  const { doc, before } = found;
  if (before?.origin !== 'example' || same(before, doc)) return found;
  const firstPacks = 'packs' in before && before.packs.length === 0 && same({ ...doc, packs: [] }, before);
  return firstPacks ? found : ({ ...found, doc: { ...doc, origin: 'own' } } as Found);
};

const broken = ({ entity }: Documents, found: readonly Found[], kitchen: Workbook): Refused[] => {
  const list = entity === 'ingredient' ? 'ingredients' : 'recipes';
  const now = new Map(found.map((one) => [one.doc.key, one]));
  const docs = [...kitchen[list].filter(({ key }) => !now.has(key)), ...found.map(({ doc }) => doc)];
  return workbookRules({ ...kitchen, [list]: docs }).map(({ sentence, subject }) => {
    const at = subject.entity === entity ? now.get(subject.key) : undefined;
    return { line: at?.line ?? 0, name: subject.name, sentence };
  });
};
