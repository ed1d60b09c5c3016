/** What a caller gets when facts may be missing: the figure as far as it goes, and what stands in its way. */
export type Answer<T> = { value: T; problems: Problem[] };

/** Where a problem is mended: the entity, its key and, inside it, the field or line. */
export type Subject = {
  entity: 'kitchen' | 'place' | 'ingredient' | 'recipe' | 'event';
  key: string;
  name: string;
  field?: string;
};

/** stop: someone could be harmed or go without; ask: a fact is missing; check: a figure looks odd. */
export type Weight = 'stop' | 'ask' | 'check';

export type Problem = { weight: Weight; code: string; sentence: string; subject: Subject };
