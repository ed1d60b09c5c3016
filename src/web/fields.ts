import { type Form, text, texts, valueAt } from './form.js';
import { type Html, html, nothing, type Printable } from './html.js';

/** Why one field was refused, and what to type. `field` is its full name, `label` what the page calls it. */
export type Fault = { field: string; label: string; sentence: string };

export type Question = {
  name: string;
  label: string;
  hint?: Printable;
  /** tiny 5 signs, short 10, medium 16, wide a line. */
  size?: 'tiny' | 'short' | 'medium' | 'wide';
  unit?: string;
  inputmode?: 'numeric' | 'decimal';
  type?: 'text' | 'date' | 'password' | 'search';
  autocomplete?: string;
  readAs?: Printable;
  list?: string;
  required?: boolean;
  rows?: number;
  focus?: boolean;
  /** What stands below the field. */
  after?: Printable;
};
export type Choice = { value: string; label: Printable; hint?: Printable };

/** The id of the field with a name, for labels and links. */
export const fieldId = (name: string): string => `f-${name.replace(/[^a-zA-Z0-9]+/g, '-').replace(/-$/, '')}`;

/** A form's questions, showing what was typed and what is wrong with it. */
export class Fields {
  constructor(
    private readonly form: Form,
    readonly faults: readonly Fault[] = [],
  ) {}

  value(name: string): string {
    return text(this.form, name);
  }

  fault(name: string): Fault | undefined {
    return this.faults.find((fault) => fault.field === name);
  }

  /** Whether the form has this field, under which the reason of its refusal stands. */
  has(name: string): boolean {
    return name !== '' && valueAt(this.form, name) !== undefined;
  }

  /** True when a field under this name, such as a row's, was refused. */
  anyFault(prefix: string): boolean {
    return this.faults.some(({ field }) => field === prefix || /^[.[]/.test(rest(field, prefix)));
  }

  hidden(name: string): Html {
    return html`<input type="hidden" name="${name}" value="${text(this.form, name)}">`;
  }

  /** A line of text with its label in a ruled row. */
  text(question: Question): Html {
    return this.row(question, this.input(question));
  }

  area(question: Question): Html {
    const { name, size = 'wide', rows = 3 } = question;
    return this.row(
      question,
      html`<textarea class="${size}" rows="${rows}"${this.wiring(question)}>\n${text(this.form, name)}</textarea>`,
    );
  }

  select(question: Question, choices: readonly Choice[]): Html {
    return this.row(question, this.selectOnly(question, choices));
  }

  /** Radios under one question. */
  radios(question: Question, choices: readonly Choice[]): Html {
    const { name, label, hint } = question;
    const fault = this.fault(name);
    const options = choices.map(
      ({ value, label, hint }, i) =>
        html`<label class="choice"><input type="radio" name="${name}" value="${value}" id="${fieldId(name)}${i ? `-${i}` : ''}"${value === this.value(name) ? html` checked` : nothing}> <span>${label}${hint && html` <span class="hint">${hint}</span>`}</span></label>`,
    );
    return wrapped(
      fault,
      html`<fieldset${fault ? html` aria-describedby="${fieldId(name)}-fault"` : nothing}><legend>${label}${hint && html` <span class="hint">${hint}</span>`}</legend>${options}${this.sentence(name)}</fieldset>`,
    );
  }

  /** One box to tick; it sends "on" or nothing. */
  box(question: Question): Html {
    return wrapped(this.fault(question.name), this.boxOnly(question, 'on'), this.sentence(question.name));
  }

  boxOnly(question: Question, value: string): Html {
    const { name, label, hint } = question;
    const on = texts(this.form, name).includes(value);
    const id = value === 'on' ? fieldId(name) : `${fieldId(name)}-${value}`;
    return html`<label class="choice"><input type="checkbox" name="${name}" value="${value}" id="${id}"${on ? html` checked` : nothing}> <span>${label}${hint && html` <span class="hint">${hint}</span>`}</span></label>`;
  }

  /** The bare input, for rows of many; its label is read out, and shown where the row has no room for a head. */
  cell(question: Question): Html {
    return inCell(question, this.input(question, true), this.sentence(question.name));
  }

  selectCell(question: Question, choices: readonly Choice[]): Html {
    return inCell(question, this.selectOnly(question, choices, true), this.sentence(question.name));
  }

  private input(question: Question, bare = false): Html {
    const { name, size = 'medium', type = 'text', unit, readAs } = question;
    const value = type === 'password' ? nothing : html` value="${text(this.form, name)}"`;
    const field = html`<input class="${size}" type="${type}"${value}${this.wiring(question, bare)}>`;
    if (!unit && !readAs) return field;
    return html`<span class="with-unit">${field}${unit && html` <span class="unit">${unit}</span>`}${readAs && html` <span class="read-as">Read as <b>${readAs}</b></span>`}</span>`;
  }

  private selectOnly(question: Question, choices: readonly Choice[], bare = false): Html {
    const { name, size = 'medium' } = question;
    const options = choices.map(
      ({ value, label }) =>
        html`<option value="${value}"${value === this.value(name) ? html` selected` : nothing}>${label}</option>`,
    );
    return html`<select class="${size}"${this.wiring(question, bare)}>${options}</select>`;
  }

  private wiring(question: Question, bare = false): Html {
    const { name, hint, inputmode, autocomplete, list, required, focus } = question;
    const id = fieldId(name);
    const fault = this.fault(name);
    const about = [hint && !bare && `${id}-hint`, fault && `${id}-fault`].filter(Boolean).join(' ');
    return html` id="${id}" name="${name}"${inputmode && html` inputmode="${inputmode}"`}${html` autocomplete="${autocomplete ?? 'off'}"`}${list && html` list="${list}"`}${required && html` aria-required="true"`}${focus && html` data-focus autofocus`}${fault && html` aria-invalid="true"`}${about && html` aria-describedby="${about}"`}`;
  }

  private row(question: Question, field: Html): Html {
    const { name, label, hint, after } = question;
    const id = fieldId(name);
    return wrapped(
      this.fault(name),
      html`<label for="${id}">${label}</label>${hint && html` <span class="hint" id="${id}-hint">${hint}</span>`}${field}`,
      html`${this.sentence(name)}${after}`,
    );
  }

  /** The sentence under a refused field. */
  sentence(name: string): Html {
    const fault = this.fault(name);
    return fault ? html`<p class="fault" id="${fieldId(name)}-fault">${fault.sentence}</p>` : nothing;
  }
}

const rest = (field: string, prefix: string) => (field.startsWith(prefix) ? field.slice(prefix.length) : '');

const wrapped = (fault: Fault | undefined, ...inside: Html[]): Html =>
  html`<div class="row field${fault && ' wrong'}"><div class="gutter">${fault && 'fix this'}</div><div>${inside}</div></div>`;

const inCell = ({ name, label }: Question, ...inside: Html[]): Html =>
  html`<div class="cell-field"><label class="cell-label" for="${fieldId(name)}">${label}</label>${inside}</div>`;
