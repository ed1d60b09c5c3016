import type { Problem } from '../core/problem.js';
import { isRead, type Read } from '../core/reading.js';
import type { Fault } from './fields.js';
import { type Form, type FormValue, text } from './form.js';

/** Reads a form field by field and notes what could not be read; `faults` is empty when all was. */
export class Reading {
  readonly faults: Fault[] = [];

  constructor(readonly form: Form) {}

  /** A field that must be filled in. When it can't be read, `otherwise` stands in for it and a fault is noted. */
  take<T>(name: string, label: string, read: (text: string) => Read<T>, otherwise: T): T {
    const found = read(text(this.form, name));
    if (isRead(found)) return found.value;
    this.refuse(name, label, found.sentence);
    return otherwise;
  }

  /** A field that may stay empty, which gives null. */
  maybe<T>(name: string, label: string, read: (text: string) => Read<T>): T | null {
    return this.text(name) === '' ? null : this.take<T | null>(name, label, read, null);
  }

  text(name: string): string {
    return text(this.form, name).trim();
  }

  /** Words that must be there. */
  words(name: string, label: string, sentence: string): string {
    const words = this.text(name);
    if (words === '') this.refuse(name, label, sentence);
    return words;
  }

  /** One of the words offered; the form offers no other, so another is left to the rules to refuse. */
  oneOf<const T extends string>(name: string, choices: readonly T[], otherwise: T): T {
    const chosen = this.text(name);
    return choices.find((choice) => choice === chosen) ?? otherwise;
  }

  ticked(name: string): boolean {
    return this.text(name) === 'on';
  }

  refuse(field: string, label: string, sentence: string): void {
    this.faults.push({ field, label, sentence });
  }
}

/** Why a save was refused, each reason at the field of the form that it is about. */
export const faultsOf = (problems: readonly Problem[], form: Form): Fault[] =>
  problems.map(({ sentence, subject }) => {
    const field = fieldOf(subject.field ?? '', form);
    return { field, label: labelOf(field) || subject.name, sentence };
  });

/** "lines/l3/amount" as the form names it, "lines[2].amount"; as far as the form has such a field. */
export const fieldOf = (path: string, form: Form): string => {
  let name = '';
  let here: FormValue | undefined = form;
  for (const step of path.split('/')) {
    if (typeof here === 'string') break;
    if (Array.isArray(here)) {
      const at: number = here.findIndex((row) => typeof row === 'object' && (row as Form).key === step);
      name += `[${at}]`;
      here = here[at];
    } else {
      name += name === '' ? step : `.${step}`;
      here = here && Object.hasOwn(here, step) ? here[step] : undefined;
    }
  }
  return name;
};

/** "lines[2].amount" in words, "Line 3, amount". */
export const labelOf = (field: string): string => {
  const spaced = field
    .replace('people[', 'persons[')
    .replace(/s\[(\d+)\]/g, (_, at) => ` ${Number(at) + 1}`)
    .replaceAll('.', ', ')
    .replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return spaced.charAt(0).toUpperCase() + spaced.slice(1);
};
