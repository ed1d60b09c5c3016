import type { FastifyReply, FastifyRequest } from 'fastify';
import { decodeText } from '../../core/exchange/csv/decode.js';
import { withinRecipe } from '../../core/exchange/draft/limit.js';
import { mostPage, readRecipes } from '../../core/exchange/recipe/read-recipes.js';
import { keepDrafts, openDrafts, readDraft } from '../../store/drafts.js';
import { inZone } from '../clock.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { page } from '../page.js';
import { goTo, saving } from '../save.js';
import { kitchenNames } from './around.js';
import { draftForm } from './form.js';

export type ReadPage = {
  drafts: { id: number; name: string; when: string; by: string }[];
  thrown: { id: number; name: string } | undefined;
  read: number;
};

/** Where a recipe is pasted or a file chosen, and the drafts that wait to be confirmed. */
export const askForText: Answerer = (_, reply) => draw(reply, { text: '' });

/** Reads what was pasted or chosen; each recipe in it becomes a draft. */
export const readIn: Answerer = async (request, reply) => {
  const sent = request.isMultipart() ? await partsOf(request) : fieldOf(request);
  if (sent.tooLarge) return refuse(reply, '', tooLarge);
  const source = sent.file || sent.typed;
  const typed = sent.typed.length > mostEchoed ? '' : sent.typed;
  if (source.trim() === '') return refuse(reply, typed, 'Paste a recipe, or choose a file that holds one.');
  const found = readRecipes(source);
  if ('sentence' in found) return refuse(reply, typed, found.sentence);
  const { names } = await kitchenNames(request);
  const read = found.drafts.map(withinRecipe);
  const only = read.length === 1 ? read[0] : undefined;
  const ids = await keepDrafts(
    request.server.house.db,
    read.map((one) => ({
      name: one.name.slice(0, 120),
      read: one,
      form: draftForm(one, names, request.kitchen),
      text: only?.source === 'text' && source.length <= mostEchoed ? source : '',
    })),
    saving(reply),
  );
  return goTo(reply, only ? `/recipes/read/${ids[0]}` : `/recipes/read?read=${ids.length}#drafts`);
};

const tooLarge = `This is larger than ${mostPage / 1_000_000} MB, which no saved recipe is. Paste the recipe alone.`;
/** What is longer is not sent back into the page. */
const mostEchoed = 100_000;

type Sent = { typed: string; file: string; tooLarge: boolean };

const fieldOf = ({ body }: FastifyRequest): Sent => ({
  typed: text(body as Form, 'text'),
  file: '',
  tooLarge: false,
});

/** The text field and the file of a form; what is too large is not kept. */
const partsOf = async (request: FastifyRequest): Promise<Sent> => {
  const sent: Sent = { typed: '', file: '', tooLarge: false };
  // A sign takes up to four bytes.
  const most = 4 * mostPage;
  try {
    for await (const part of request.parts({
      limits: { fileSize: most, fieldSize: most, files: 1, fields: 4 },
    })) {
      if (part.type === 'file') sent.file = decodeText(await part.toBuffer()).text;
      else if (part.fieldname === 'text') {
        sent.typed = String(part.value).replaceAll('\r\n', '\n');
        sent.tooLarge ||= part.valueTruncated === true;
      }
    }
  } catch (error) {
    if ((error as { statusCode?: number }).statusCode !== 413) throw error;
    sent.tooLarge = true;
  }
  return sent;
};

const refuse = (reply: FastifyReply, typed: string, sentence: string) =>
  draw(reply.code(422), { text: typed }, [{ field: 'text', label: 'The recipe', sentence }]);

const draw = async (reply: FastifyReply, form: Form, faults: readonly Fault[] = []) => {
  const { request } = reply;
  const { db } = request.server.house;
  const f = formatFor(request.kitchen);
  const drafts = await openDrafts(db);
  const id = query(request, 'thrown');
  const thrown = /^\d{1,15}$/.test(id) ? await readDraft(db, Number(id)) : undefined;
  const read = query(request, 'read');
  const model: ReadPage = {
    drafts: drafts.map(({ id, name, updatedAt, updatedBy }) => {
      const { date, time } = inZone(updatedAt, request.kitchen.timeZone);
      const by = request.account ? updatedBy : '';
      return { id, name: name || 'A recipe without a name', when: `${f.date(date)}, ${time}`, by };
    }),
    thrown: thrown?.thrown ? { id: thrown.id, name: thrown.name || 'a recipe without a name' } : undefined,
    read: /^\d{1,3}$/.test(read) ? Number(read) : 0,
  };
  return page(reply, 'drafts/begin', { title: 'Read a recipe in', nav: 'Recipes', form, faults, ...model });
};
