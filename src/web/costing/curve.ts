import type { Event } from '../../core/facts/event.js';
import type { Facts } from '../../core/facts/facts.js';
import type { CostView } from '../../core/whole-cost/whole-cost.js';
import type { Fault } from '../fields.js';
import type { Form } from '../form.js';
import type { Html } from '../html.js';

/** What is asked of the curve: from the address `?from=&to=`, or as the head-count suggests. */
export type CurveAsked = {
  event: Event;
  facts: Facts;
  view: CostView;
  beside: readonly Event[];
  /** Where the page with the curve stands, and what its address says. */
  page: string;
  query: Record<string, unknown>;
};

export type CurveRow = {
  guests: string;
  aGuest: string;
  total: string;
  margin: string;
  /** What steps up here, in words. */
  jumps: string[];
  now: boolean;
};

/** What `costing/_curve` draws; the including page hands it on as `curve`. */
export type CurveModel = {
  page: string;
  title: string;
  /** Drawn for a desk and paper, and narrow for a phone; undefined without guests or dishes. */
  picture: { wide: Html; narrow: Html } | undefined;
  /** The picture in one sentence. */
  inWords: string;
  /** What a guest more or fewer changes, the break-even, the cheapest head-count nearby. */
  said: Html[];
  rows: CurveRow[];
  incomplete: boolean;
  form: Form;
  faults: readonly Fault[];
};

/** The curve of what one guest costs over a range of head-counts, to be shown by `costing/_curve`. */
export const curveModel = (_asked: CurveAsked): CurveModel => {
  throw new Error('the curve is not drawn yet');
};
