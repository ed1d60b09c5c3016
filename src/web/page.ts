import type { FastifyReply } from 'fastify';
import { styles } from './assets.js';
import { inZone } from './clock.js';
import { type Fault, Fields, fieldId } from './fields.js';
import type { Form } from './form.js';
import { type Format, formatFor } from './format.js';
import { html } from './html.js';
import { historyOf, menuOfPages, pageOf, type Word, whereMended } from './links.js';
import * as marks from './marks.js';
import { type Receipt, receiptFor } from './receipt.js';
import type { ViewName, Views } from './views.js';

/** What a page says of itself beside its model. */
export type Head = {
  title: string;
  nav?: Word;
  /** What a form shows: as typed or as stored. */
  form?: Form;
  faults?: readonly Fault[];
};

/** Beside its model and head every view gets these: `f` sets figures, `m` draws marks, `fields` asks questions. */
export type Given = Head & {
  f: Format;
  m: typeof marks;
  fields: Fields;
  fieldId: typeof fieldId;
  html: typeof html;
  pageOf: typeof pageOf;
  historyOf: typeof historyOf;
  whereMended: typeof whereMended;
  today: string;
};

/**
 * Answers with a view: whole in the layout, or alone when htmx asks for a part. `part` names another view to send
 * then, filled with the same model.
 */
export const page = async <V extends ViewName>(
  reply: FastifyReply,
  view: V,
  model: Views[V] & Head,
  part: ViewName = view,
): Promise<FastifyReply> => {
  reply.type('text/html; charset=utf-8').header('vary', 'HX-Request, Accept');
  reply.header('cache-control', 'private, no-cache');
  const it = given(reply, model);
  if (wantsPart(reply)) return reply.view(part, { ...it, isPart: true });
  const receipt = await receiptFor(reply);
  return reply.view('layouts/page', {
    ...it,
    ...around(reply, receipt),
    body: await reply.viewAsync(view, it),
  });
};

/** Answers with a fragment alone, whoever asks. */
export const fragment = <V extends ViewName>(
  reply: FastifyReply,
  view: V,
  model: Views[V] & Omit<Head, 'title'>,
): FastifyReply =>
  reply
    .type('text/html; charset=utf-8')
    .header('vary', 'HX-Request')
    .header('cache-control', 'private, no-cache')
    .view(view, given(reply, { title: '', ...model }));

/** True when htmx asks for a part of a page; going back in history asks for the whole. */
export const wantsPart = ({ request }: Pick<FastifyReply, 'request'>): boolean =>
  request.headers['hx-request'] === 'true' && request.headers['hx-request-type'] !== 'full';

const given = <M extends Head>({ request }: FastifyReply, model: M): M & Given => {
  const { kitchen } = request;
  return {
    ...model,
    f: formatFor(kitchen),
    m: marks,
    fields: new Fields(model.form ?? {}, model.faults),
    fieldId,
    html,
    pageOf,
    historyOf,
    whereMended,
    today: inZone(request.server.house.clock(), kitchen.timeZone).date,
  };
};

const around = ({ request }: FastifyReply, receipt: Receipt | undefined) => {
  const { kitchen, account, server } = request;
  const { date, time } = inZone(server.house.clock(), kitchen.timeZone);
  return {
    receipt,
    shell: {
      kitchen: kitchen.name,
      // The words are English whatever the locale that sets dates and money.
      lang: /^en\b/.test(kitchen.locale) ? kitchen.locale : 'en',
      paper: kitchen.paper.toLowerCase(),
      letterKeys: kitchen.letterKeys,
      words: menuOfPages,
      now: `${formatFor(kitchen).date(date)}, ${time}`,
      account: account?.name,
      assets: server.house.assets,
      styles,
    },
  };
};
