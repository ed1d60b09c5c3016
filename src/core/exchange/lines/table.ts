/** A table looked up by what people type: it holds its own entries and nothing that every object has. */
export const table = <T>(entries: Record<string, T>): Readonly<Record<string, T>> =>
  Object.assign(Object.create(null) as Record<string, T>, entries);
