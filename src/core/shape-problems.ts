import type { z } from 'zod';
import type { EntityName } from './facts/facts.js';
import type { Problem } from './problem.js';

/** What stands at a place in a document that is not of the documented shape. */
export type Misfit = { path: PropertyKey[]; sentence: string };

type Issue = z.core.$ZodIssue;

/** Why a document is not of its kind's shape; each field is a path of names and keys. */
export const shapeProblems = (entity: EntityName, doc: unknown, error: z.ZodError): Problem[] => {
  const { key, name } = (doc ?? {}) as { key?: string; name?: string };
  return misfits(error).map(({ path, sentence }) => ({
    weight: 'stop',
    code: 'shape',
    sentence,
    subject: { entity, key: key ?? entity, name: name ?? '', field: wayTo(doc, path).join('/') },
  }));
};

/** A path through a document with the keys of rows in place of their numbers. */
export const wayTo = (doc: unknown, path: readonly PropertyKey[]): string[] => {
  let here: unknown = doc;
  return path.map((step) => {
    here =
      typeof here === 'object' && here !== null ? (here as Record<PropertyKey, unknown>)[step] : undefined;
    const row = here as { key?: unknown } | null | undefined;
    if (typeof step === 'number') return typeof row?.key === 'string' ? row.key : `number ${step + 1}`;
    return String(step);
  });
};

/** Every fault of shape with a sentence that says what to write there. */
export const misfits = (error: z.ZodError): Misfit[] => error.issues.flatMap((issue) => ofIssue(issue, []));

const ofIssue = (issue: Issue, at: PropertyKey[]): Misfit[] => {
  const path = [...at, ...issue.path];
  if (issue.code === 'invalid_union') {
    const nearest = issue.errors.toSorted((a, b) => distance(a) - distance(b))[0];
    if (nearest) return nearest.flatMap((inner) => ofIssue(inner, path));
  }
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => ({
      path: [...path, key],
      sentence: 'This field is not known here: take it out.',
    }));
  if (issue.code === 'invalid_key')
    return [{ path, sentence: 'Write this name in lower-case letters, figures and hyphens.' }];
  return [{ path, sentence: sentenceFor(issue) }];
};

/** How far off an option is: a field that is not known there weighs more than one that is missing. */
const distance = (issues: readonly Issue[]): number =>
  issues.reduce(
    (sum, { code, path }) =>
      sum +
      (code === 'unrecognized_keys' ? 10 : code === 'invalid_type' ? 2 : 1) +
      (path.length === 0 ? 1 : 0),
    0,
  );

const sentenceFor = (issue: Issue): string => {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined
        ? `This is missing: write ${kinds[issue.expected] ?? issue.expected} here.`
        : `Write ${kinds[issue.expected] ?? issue.expected} here.`;
    case 'invalid_value':
      return `Write one of ${issue.values.map((value) => JSON.stringify(value)).join(', ')}.`;
    case 'too_small':
      return issue.origin === 'string'
        ? 'This must not be empty.'
        : issue.origin === 'array'
          ? `At least ${issue.minimum} must stand here.`
          : `This must be at least ${issue.minimum}.`;
    case 'too_big':
      return issue.origin === 'string'
        ? `This must have at most ${issue.maximum} letters.`
        : issue.origin === 'array'
          ? `At most ${issue.maximum} may stand here.`
          : `This must be at most ${issue.maximum}.`;
    case 'invalid_format':
      return 'This is not written as it should be.';
    default:
      return 'This does not fit here.';
  }
};

const kinds: Record<string, string> = {
  string: 'words in quotes',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list in brackets',
  object: 'fields in braces',
  record: 'fields in braces',
  null: 'null',
};
