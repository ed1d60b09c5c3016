import type { FastifyRequest } from 'fastify';
import { type Decoded, decodeText } from '../../core/exchange/csv/decode.js';
import type { Form } from '../form.js';

/** What a form sent that may hold a file: its fields, and the text of the file or of the field `text`. */
export type Sent = { form: Form } & Decoded;

const mostField = 4 * 1024 * 1024;

/** Reads a form with a file, or the same form without one. */
export const sentWith = async (request: FastifyRequest): Promise<Sent> => {
  const form: Form = {};
  let file: Decoded | undefined;
  if (request.isMultipart())
    for await (const part of request.parts({ limits: { fieldSize: mostField } })) {
      if (part.type === 'file') {
        const bytes = await part.toBuffer();
        if (bytes.length > 0) file = decodeText(bytes);
      } else form[part.fieldname] = String(part.value);
    }
  else Object.assign(form, request.body as Form);
  const pasted = typeof form.text === 'string' ? form.text : '';
  return { form, ...(file ?? { text: pasted, encoding: 'UTF-8' }) };
};
