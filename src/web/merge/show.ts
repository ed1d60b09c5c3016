import type { FastifyReply } from 'fastify';
import type { EntityName } from '../../core/facts/facts.js';
import type { Outcome } from '../../store/changes.js';
import { inZone } from '../clock.js';
import { inPlainWords, isTyped, placeName, standsAt } from '../describe.js';
import { type Format, formatFor } from '../format.js';
import { pageOf } from '../links.js';
import { page, wantsPart } from '../page.js';

type Clash<N extends EntityName> = Extract<Outcome<N>, { outcome: 'clash' }>;

/** One place of the merge: what it was, what each made of it, and what stands; null asks to choose. */
export type MergeRow = {
  path: string;
  place: string;
  was: string;
  yours: string | null;
  theirs: string | null;
  result: 'yours' | 'theirs' | null;
};

export type MergeView = {
  entity: EntityName;
  key: string;
  name: string;
  by: string;
  at: string;
  base: number;
  seen: number;
  doc: string;
  rows: MergeRow[];
  clashes: number;
  back: string;
};

/** Shows two changes of one thing side by side; nothing is chosen beforehand. */
export const showMerge = <N extends EntityName>(
  reply: FastifyReply,
  entity: N,
  key: string,
  base: number,
  clash: Clash<N>,
): Promise<unknown> => {
  const { kitchen } = reply.request;
  const at = inZone(clash.theirsAt, kitchen.timeZone);
  const f = formatFor(kitchen);
  reply.code(409);
  if (wantsPart(reply)) reply.header('hx-retarget', '#main').header('hx-reswap', 'innerHTML');
  return page(reply, 'merge/show', {
    title: clash.theirs.name,
    entity,
    key,
    name: clash.theirs.name,
    by: clash.theirsBy,
    at: `${f.date(at.date)}, ${at.time}`,
    base,
    seen: clash.revision,
    doc: JSON.stringify(clash.yours),
    rows: rowsOf(clash, f),
    clashes: clash.merge.clashes.length,
    back: pageOf(entity, key),
  });
};

const rowsOf = <N extends EntityName>({ base, yours, theirs, merge }: Clash<N>, f: Format): MergeRow[] => {
  const words = (doc: unknown, path: string) => inPlainWords(standsAt(doc, path), f, path.split('/').at(-1));
  const rowAt = (path: string, result: MergeRow['result']): MergeRow => ({
    path,
    place: placeName(path, yours, theirs, base),
    was: standsAt(base, path) === undefined ? 'not there' : words(base, path),
    yours: result === 'theirs' ? null : words(yours, path),
    theirs: result === 'yours' ? null : words(theirs, path),
    result,
  });
  return [
    ...merge.clashes.map(({ path }) => rowAt(path, null)),
    ...merge.yours.filter(isTyped).map((path) => rowAt(path, 'yours')),
    ...merge.theirs.filter(isTyped).map((path) => rowAt(path, 'theirs')),
  ];
};
