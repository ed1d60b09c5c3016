import type { EntityName, EntityOf } from '../core/facts/facts.js';
import type { Merge } from '../core/merge.js';
import type { Problem } from '../core/problem.js';
import type { Stored } from './documents.js';

/** Saved; `merged` lists what others had changed meanwhile, `changeId` is null when nothing differed. */
export type Saved<N extends EntityName> = {
  outcome: 'saved';
  doc: EntityOf[N];
  revision: number;
  changeId: number | null;
  merged: string[];
};

/** Two people changed one thing; nothing was saved. */
export type Clashed<N extends EntityName> = {
  outcome: 'clash';
  base: EntityOf[N];
  yours: EntityOf[N];
  theirs: EntityOf[N];
  theirsBy: string;
  theirsAt: Date;
  revision: number;
  merge: Merge<EntityOf[N]>;
};

export type Refused = { outcome: 'refused'; problems: Problem[] };
export type Gone = { outcome: 'gone' };

/** What came of a save. */
export type Outcome<N extends EntityName> = Saved<N> | Clashed<N> | Refused | Gone;

export const gone: Gone = { outcome: 'gone' };

export const refused = (problems: Problem[]): Refused => ({ outcome: 'refused', problems });

export const clash = <N extends EntityName>(
  stored: Stored<N>,
  base: EntityOf[N],
  yours: EntityOf[N],
  merge: Merge<EntityOf[N]>,
): Clashed<N> => ({
  outcome: 'clash',
  base,
  yours,
  theirs: stored.doc,
  theirsBy: stored.updatedBy,
  theirsAt: stored.updatedAt,
  revision: stored.revision,
  merge,
});

type About = (entity: EntityName, key: string, name: string) => Problem;

const problem =
  (code: string, field: string | undefined, sentence: (name: string) => string): About =>
  (entity, key, name) => ({
    weight: 'stop',
    code,
    sentence: sentence(name),
    subject: { entity, key, name, field },
  });

export const stale = problem(
  'stale',
  undefined,
  (name) => `This form of ${name} is too old to be joined with what was saved since: open it again.`,
);

export const taken = problem(
  'key-taken',
  'key',
  (name) => `The key of ${name} is taken already: choose another.`,
);

export const changedSince = problem(
  'changed-since',
  undefined,
  (name) => `${name} was changed since, so this cannot be taken back: remove or archive it instead.`,
);

export const broughtBack = problem('back-already', undefined, (name) => `${name} is back already.`);

export const homeStays = problem(
  'home-stays',
  undefined,
  (name) => `${name} is the kitchen's home and cannot be removed.`,
);

export const hasPapers = problem(
  'has-papers',
  undefined,
  (name) =>
    `${name} has a quote that was issued, a payment or a numbered paper, which are kept: archive it instead.`,
);

/** Something uses it; the first few are named. */
export const inUse = (uses: readonly { name: string }[]): About => {
  const named = uses.slice(0, 3).map(({ name }) => name);
  const more = uses.length > 3 ? ` and ${uses.length - 3} more` : '';
  return problem(
    'in-use',
    undefined,
    (name) => `${name} is used by ${named.join(', ')}${more}: archive it, or take it out there first.`,
  );
};
