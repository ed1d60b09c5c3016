const onOneLine = (value: unknown): string => {
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const fields = Object.entries(value).filter(([, field]) => field !== undefined);
  return fields.length ? `{ ${fields.map(([k, v]) => `"${k}": ${onOneLine(v)}`).join(', ')} }` : '{}';
};

const lines = (value: unknown, indent: string, lead: number): string => {
  const flat = onOneLine(value);
  if (typeof value !== 'object' || value === null || flat.length + indent.length + lead <= 118) return flat;
  const deeper = `${indent}  `;
  const inner = Array.isArray(value)
    ? value.map((one) => deeper + lines(one, deeper, 0))
    : Object.entries(value).map(([k, v]) => `${deeper}"${k}": ${lines(v, deeper, k.length + 4)}`);
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  return `${open}\n${inner.join(',\n')}\n${indent}${close}`;
};

/** JSON with a short thing on one line, so that a row of figures reads as a row. */
export const compact = (value: unknown): string => `${lines(value, '', 0)}\n`;
