import { isDeepStrictEqual } from 'node:util';
import type { FastifyReply } from 'fastify';
import type { PriceList } from '../../core/facts/price-list.js';
import { edit } from '../../store/changes.js';
import { read } from '../../store/documents.js';
import { saving } from '../save.js';

/** Keeps how a supplier's lists are read, with the kitchen's settings; what is left out of them stays as it was. */
export const rememberColumns = async (reply: FastifyReply, list: PriceList): Promise<void> => {
  const { db } = reply.request.server.house;
  const stored = await read(db, 'kitchen', 'kitchen');
  if (!stored || stored.doc.priceLists.some((one) => isDeepStrictEqual(one, list))) return;
  await edit(db, 'kitchen', 'kitchen', {
    ...saving(reply),
    revision: stored.revision,
    change: (kitchen) => {
      const others = kitchen.priceLists;
      const known = others.some(({ key }) => key === list.key);
      const priceLists = known
        ? others.map((one) => (one.key === list.key ? { ...list, leftOut: one.leftOut } : one))
        : [...others, list];
      return { ...kitchen, priceLists };
    },
  });
};
