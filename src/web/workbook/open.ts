import { basename } from 'node:path';
import type { FastifyReply } from 'fastify';
import { type Fault, parseWorkbook } from '../../core/exchange/workbook.js';
import { importWorkbook } from '../../store/workbook.js';
import { type Answerer, query } from '../house.js';
import { page } from '../page.js';
import { saving } from '../save.js';

/** Where the workbook is saved into a file and opened from one. */
export const showWorkbook: Answerer = (request, reply) => {
  const opened = query(request, 'opened');
  return draw(reply, [], /^[\w.-]{1,120}$/.test(opened) ? opened : '');
};

/** Opens a workbook file in place of the kitchen, after a backup; a file with faults changes nothing. */
export const openWorkbook: Answerer = async (request, reply) => {
  const file = await request.file();
  const text = file ? (await file.toBuffer()).toString('utf8') : '';
  if (text === '')
    return refuse(reply, [{ place: 'the file', path: [], sentence: 'Choose a workbook file first.' }]);
  const parsed = parseWorkbook(text);
  if ('faults' in parsed) return refuse(reply, parsed.faults);
  const { db, config } = request.server.house;
  const backup = await importWorkbook(db, parsed.workbook, { ...saving(reply), dataDir: config.dataDir });
  return reply.redirect(`/workbook?opened=${backup ? basename(backup) : 'first'}`, 303);
};

const refuse = (reply: FastifyReply, faults: readonly Fault[]) => draw(reply.code(422), faults, '');

const shown = 200;

const draw = (reply: FastifyReply, wrong: readonly Fault[], opened: string) =>
  page(reply, 'workbook/show', {
    title: 'The workbook file',
    wrong: wrong.slice(0, shown),
    more: Math.max(0, wrong.length - shown),
    opened,
  });
