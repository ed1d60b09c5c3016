import type { Form } from '../form.js';
import type { Answerer } from '../house.js';
import { label } from './label.js';
import { savePart } from './part.js';

/** Sets the marks of the label's form from the words as they are being typed; nothing is saved. */
export const readWords: Answerer = (request, reply) => {
  (request.body as Form).do = 'read';
  return savePart(label)(request, reply);
};
