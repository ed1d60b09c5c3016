import type { FastifyRequest } from 'fastify';
import { headCount } from '../../core/requirements.js';
import { type WhatIf, whatIf } from '../../core/whole-cost/what-if.js';
import { viewAsked } from '../costing/in-view.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf, type OneEvent } from '../events/event.js';
import type { Choice } from '../fields.js';
import { parseForm } from '../form.js';
import { formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { type FigureGroup, figuresOf, lackingIn } from './figures.js';
import { type Keep, keepsOf } from './keep.js';
import { inWords, offeredBy } from './offered.js';
import { readWhatIfs, whatIfForm } from './read.js';

export type WhatIfPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  /** A done party stays as it was served. */
  done: boolean;
  offered: { ingredients: Choice[]; packs: Choice[]; dishes: Choice[] };
  /** The names of the fields of each column. */
  asked: string[];
  now: string;
  guests: string;
  /** What is otherwise in each column that is shown, with how it is kept. */
  columns: { words: string; guests: string; keeps: Keep[] }[];
  /** What a cost lacks, as it is and in each column; none when all are known. */
  lacking: string[][];
  groups: FigureGroup[];
};

/** What a party would cost and leave if something were otherwise, side by side with how it is. Nothing is stored. */
export const showWhatIf: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const f = formatFor(request.kitchen);
  const offered = offeredBy(one.event, one.facts, f);
  const form = whatIfForm(parseForm(request.raw.url?.split('?')[1] ?? ''));
  const { changes, faults } = one.event.served ? { changes: [], faults: [] } : readWhatIfs(form, offered);
  const asked = changes.filter((change) => change !== undefined);
  if (faults.length > 0) reply.code(422);
  return page(reply, 'what-if/show', {
    title: `What if, ${one.event.name}`,
    nav: 'Costing',
    form,
    faults,
    head: await headOf(request, one),
    at: addressesOf(one.event.key),
    done: one.event.served !== null,
    offered: withNone(offered),
    asked: changes.map((_, i) => `if[${i}]`),
    now: f.count(headCount(one.event), 'guest'),
    guests: f.number(headCount(one.event)),
    ...(await sideBySide(request, one, asked, (change) => inWords(change, offered, f))),
  });
};

const withNone = ({ ingredients, packs, dishes }: WhatIfPage['offered']): WhatIfPage['offered'] => {
  const none = { value: '', label: 'as it is' };
  return {
    ingredients: [none, ...ingredients],
    packs: packs.length > 0 ? [none, ...packs] : [],
    dishes: [none, ...dishes],
  };
};

const sideBySide = async (
  request: FastifyRequest,
  one: OneEvent,
  changes: readonly WhatIf[],
  words: (change: WhatIf) => string,
): Promise<Pick<WhatIfPage, 'columns' | 'groups' | 'lacking'>> => {
  if (changes.length === 0) return { columns: [], groups: [], lacking: [] };
  const f = formatFor(request.kitchen);
  // These facts hold all that is bought for the week, so a pack or a price is otherwise for every party of it.
  const { beside, facts } = await viewAsked(request, one, 'bought');
  const parties = [{}, ...changes].map((change) => whatIf(one.event, facts, change));
  const columns = await Promise.all(
    changes.map(async (change, i) => ({
      words: words(change),
      guests: f.number(headCount(parties[i + 1]!.event)),
      keeps: await keepsOf(request, one, change),
    })),
  );
  const lacking = parties.map(lackingIn);
  return {
    columns,
    groups: figuresOf(parties, beside, f),
    lacking: lacking.some((sentences) => sentences.length > 0) ? lacking : [],
  };
};
