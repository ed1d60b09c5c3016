/** Markup that is already escaped. Views print it as it is; any other value is escaped on its way out. */
export class Html {
  constructor(readonly markup: string) {}

  toString(): string {
    return this.markup;
  }
}

export type Printable = string | number | Html | null | undefined | false | readonly Printable[];

const signs: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** A value as it may stand in a page: markup as it is, text escaped, nothing for null, undefined and false. */
export const print = (value: unknown): string => {
  if (value instanceof Html) return value.markup;
  if (value === null || value === undefined || value === false) return '';
  if (Array.isArray(value)) return value.map(print).join('');
  const text = String(value);
  return /[&<>"']/.test(text) ? text.replace(/[&<>"']/g, (sign) => signs[sign]!) : text;
};

/** Markup written as a template; every value put into it is escaped unless it is markup itself. */
export const html = (parts: TemplateStringsArray, ...values: Printable[]): Html => {
  let markup = parts[0]!;
  for (let i = 0; i < values.length; i++) markup += print(values[i]) + parts[i + 1]!;
  return new Html(markup);
};

export const nothing = new Html('');
