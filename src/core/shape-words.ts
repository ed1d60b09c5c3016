import { z } from 'zod';

/** What the schema says of the place at a path, in the words of its description; undefined where it has none. */
export const describedAt = (schema: z.ZodType, path: readonly PropertyKey[]): string | undefined => {
  const words = at(schema, path).flatMap((one) =>
    [unwrapped(one).description ?? [], one.description ?? []].flat(),
  );
  return words.length > 0 ? [...new Set(words)].slice(0, 2).join(' ') : undefined;
};

/** The names of the fields that the schema knows at a path. */
export const fieldsAt = (schema: z.ZodType, path: readonly PropertyKey[]): string[] =>
  at(schema, path)
    .map(unwrapped)
    .flatMap((one) =>
      one instanceof z.ZodUnion ? one.options.map((option) => unwrapped(option as z.ZodType)) : [one],
    )
    .flatMap((one) => (one instanceof z.ZodObject ? Object.keys(one.shape) : []));

/** The schemas that may stand at a path; several where a union leaves it open. */
const at = (schema: z.ZodType, path: readonly PropertyKey[]): z.ZodType[] => {
  let here: z.ZodType[] = [schema];
  for (const step of path) here = here.flatMap((one) => inside(unwrapped(one), step));
  return here;
};

const inside = (schema: z.ZodType, step: PropertyKey): z.ZodType[] => {
  if (schema instanceof z.ZodObject) {
    const field = schema.shape[step as string] as z.ZodType | undefined;
    return field ? [field] : [];
  }
  if (schema instanceof z.ZodArray) return [schema.element as z.ZodType];
  if (schema instanceof z.ZodRecord) return [schema.valueType as z.ZodType];
  if (schema instanceof z.ZodUnion)
    return schema.options.flatMap((one) => inside(unwrapped(one as z.ZodType), step));
  return [];
};

const unwrapped = (schema: z.ZodType): z.ZodType => {
  const wraps =
    schema instanceof z.ZodDefault ||
    schema instanceof z.ZodPrefault ||
    schema instanceof z.ZodNullable ||
    schema instanceof z.ZodOptional;
  return wraps ? unwrapped(schema.unwrap() as z.ZodType) : schema;
};
