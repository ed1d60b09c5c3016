import type { FastifyReply, FastifyRequest } from 'fastify';
import { mostPhotograph } from '../../core/facts/label-photograph.js';
import { packOfLabel } from '../../core/label-again.js';
import { photographType } from '../../core/photograph.js';
import { isRead } from '../../core/reading.js';
import { readPastDay } from '../../core/reading-days.js';
import { read } from '../../store/documents.js';
import {
  bringPhotographBack,
  keepPhotograph,
  openPhotograph,
  takeOutPhotograph,
} from '../../store/label-photographs.js';
import { todayOf } from '../coming.js';
import type { Fault } from '../fields.js';
import { type Answerer, param } from '../house.js';
import { pageOf } from '../links.js';
import { goTo } from '../save.js';
import { label } from './label.js';
import { askFor } from './part.js';

const megabytes = mostPhotograph / 1024 / 1024;
const sentences = {
  none: 'Choose a photograph first.',
  large: `This is larger than ${megabytes} MB. Take the photograph in a smaller size, or cut it to the label.`,
  other: 'This is no JPEG, PNG or WebP picture. Choose a photograph of one of these kinds.',
  full: 'The photographs together would take more than 40 MB. Take out one that is no longer needed, or keep a smaller one.',
};

/** Keeps a photograph of a label; what it is, its bytes say. It marks nothing. */
export const keepPhoto: Answerer = async (request, reply) => {
  const { db } = request.server.house;
  const stored = await read(db, 'ingredient', param(request, 'key'));
  if (!stored) return reply.callNotFound();
  const sent = await sentIn(request);
  if ('why' in sent) return refuse(request, reply, 'photograph', sentences[sent.why]);
  const taken = readPastDay(sent.taken, todayOf(request));
  if (!isRead(taken)) return refuse(request, reply, 'taken', taken.sentence);
  const type = photographType(sent.bytes);
  if (!type) return refuse(request, reply, 'photograph', sentences.other);
  const picture = { ingredient: stored.key, taken: taken.value, pack: packOfLabel(stored.doc), type };
  const outcome = await keepPhotograph(db, { ...picture, bytes: sent.bytes });
  if (outcome === 'gone') return reply.callNotFound();
  if (outcome === 'full') return refuse(request, reply, 'photograph', sentences.full);
  return goTo(reply, `${labelOf(request)}?photograph=kept`);
};

const labelOf = (request: FastifyRequest): string => `${pageOf('ingredient', param(request, 'key'))}/label`;

type Sent = { bytes: Buffer; taken: string } | { why: 'none' | 'large' };

const sentIn = async (request: FastifyRequest): Promise<Sent> => {
  if (!request.isMultipart()) return { why: 'none' };
  let bytes: Buffer = Buffer.alloc(0);
  let taken = '';
  try {
    for await (const part of request.parts({ limits: { fileSize: mostPhotograph, files: 1, fields: 4 } }))
      if (part.type === 'file') bytes = await part.toBuffer();
      else if (part.fieldname === 'taken') taken = String(part.value).slice(0, 40);
  } catch (error) {
    if ((error as { statusCode?: number }).statusCode !== 413) throw error;
    return { why: 'large' };
  }
  return bytes.length === 0 ? { why: 'none' } : { bytes, taken };
};

const refuse = (request: FastifyRequest, reply: FastifyReply, field: string, sentence: string) => {
  const fault: Fault = { field, label: 'The photograph', sentence };
  reply.code(422);
  return askFor(label, [fault])(request, reply);
};

/** The photograph itself, as nothing but a picture. */
export const showPhoto: Answerer = async (request, reply) => {
  const found = await openPhotograph(request.server.house.db, param(request, 'key'));
  if (!found) return reply.callNotFound();
  return reply
    .type(found.type)
    .header('x-content-type-options', 'nosniff')
    .header('content-security-policy', "default-src 'none'; sandbox")
    .header('content-disposition', 'inline')
    .header('cache-control', 'private, no-cache')
    .send(found.bytes);
};

export const takeOutPhoto: Answerer = async (request, reply) => {
  await takeOutPhotograph(request.server.house.db, param(request, 'key'));
  return goTo(reply, `${labelOf(request)}?photograph=out`);
};

export const bringPhotoBack: Answerer = async (request, reply) => {
  await bringPhotographBack(request.server.house.db, param(request, 'key'));
  return goTo(reply, `${labelOf(request)}?photograph=kept`);
};
