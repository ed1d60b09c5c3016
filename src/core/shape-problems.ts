import type { z } from 'zod';
import { type EntityName, entities } from './facts/facts.js';
import type { Problem } from './problem.js';
import { describedAt, fieldsAt } from './shape-words.js';

/** What stands at a place in a document that is not of the documented shape. */
export type Misfit = { path: PropertyKey[]; sentence: string };

type Issue = z.core.$ZodIssue;
type About = { schema: z.ZodType; doc: unknown };

/** Why a document is not of its kind's shape; each field is a path of names and keys. */
export const shapeProblems = (entity: EntityName, doc: unknown, error: z.ZodError): Problem[] => {
  const { key, name } = (doc ?? {}) as { key?: string; name?: string };
  return misfits(entities[entity], doc, error).map(({ path, sentence }) => ({
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
    here = into(here, step);
    const row = here as { key?: unknown } | null | undefined;
    if (typeof step === 'number') return typeof row?.key === 'string' ? row.key : `number ${step + 1}`;
    return String(step);
  });
};

/** Every fault of shape in a document, with a sentence that says what to write there. */
export const misfits = (schema: z.ZodType, doc: unknown, error: z.ZodError): Misfit[] =>
  error.issues.flatMap((issue) => ofIssue(issue, [], { schema, doc }));

const ofIssue = (issue: Issue, at: PropertyKey[], about: About): Misfit[] => {
  const path = [...at, ...issue.path];
  const misfit = (sentence: string): Misfit => ({ path, sentence: withWords(sentence, path, about) });
  switch (issue.code) {
    case 'invalid_union': {
      const nearest = nearestOption(issue.errors, about, path);
      return nearest
        ? nearest.flatMap((inner) => ofIssue(inner, path, about))
        : [misfit('This does not fit here.')];
    }
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({ path: [...path, key], sentence: notKnown(key, path, about) }));
    case 'invalid_key':
      return [{ path, sentence: 'Write this name in lower-case letters, figures and hyphens.' }];
    case 'invalid_type':
      return [
        misfit(
          valueAt(about.doc, path) === undefined ? 'This is missing.' : `Write ${kind(issue.expected)} here.`,
        ),
      ];
    case 'invalid_value':
      return [
        { path, sentence: `Write ${issue.values.map((value) => JSON.stringify(value)).join(' or ')} here.` },
      ];
    case 'too_small':
      return [{ path, sentence: tooSmall(issue.origin, issue.minimum) }];
    case 'too_big':
      return [{ path, sentence: `${limits[issue.origin] ?? 'This must be at most'} ${issue.maximum}.` }];
    default:
      return [misfit('This is not written as it should be.')];
  }
};

/** The option of a union that was meant: the one whose faults lie inside it, on fields that are there. */
const nearestOption = (
  options: readonly Issue[][],
  { doc }: About,
  at: PropertyKey[],
): Issue[] | undefined => {
  const meant = options.filter((issues) =>
    issues.every(
      ({ code, path }) =>
        code !== 'unrecognized_keys' && valueAt(doc, [...at, ...path]) !== undefined && path.length > 0,
    ),
  );
  return meant[0];
};

const notKnown = (key: string, path: PropertyKey[], { schema }: About): string => {
  const meant = fieldsAt(schema, path).find((field) => isNear(field, key));
  return `There is no field of this name here${meant ? `: did you mean "${meant}"?` : '; take it out.'}`;
};

const withWords = (sentence: string, path: PropertyKey[], { schema }: About): string => {
  const words = describedAt(schema, path);
  return words ? `${sentence} ${words}` : sentence;
};

const tooSmall = (origin: string, minimum: number | bigint): string =>
  origin === 'string'
    ? 'This must not be empty.'
    : `${limits[`least ${origin}`] ?? 'This must be at least'} ${minimum}.`;

const limits: Record<string, string> = {
  string: 'The most letters this may have is',
  array: 'The most that may stand here is',
  'least array': 'The least that must stand here is',
};

const kind = (expected: string): string =>
  ({
    string: 'words or figures in quotes',
    int: 'a whole number',
    boolean: 'true or false',
    array: 'a list in brackets',
    object: 'fields in braces',
    record: 'fields in braces',
  })[expected] ?? `a ${expected}`;

const into = (value: unknown, step: PropertyKey): unknown =>
  typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[step] : undefined;

const valueAt = (doc: unknown, path: readonly PropertyKey[]): unknown => path.reduce(into, doc);

/** One letter more, less, other, or two swapped, whatever the case. */
const isNear = (a: string, b: string): boolean => {
  const [x, y] = [a.toLowerCase(), b.toLowerCase()];
  if (x === y) return true;
  let start = 0;
  while (start < x.length && x[start] === y[start]) start += 1;
  let end = 0;
  while (end < Math.min(x.length, y.length) - start && x.at(-1 - end) === y.at(-1 - end)) end += 1;
  const [restX, restY] = [x.slice(start, x.length - end), y.slice(start, y.length - end)];
  const swapped = restX.length === 2 && restX === [...restY].reverse().join('');
  return Math.max(restX.length, restY.length) <= 1 || swapped;
};
