import { toSchemaOrg } from '../../core/exchange/recipe/to-schema-org.js';
import { read } from '../../store/documents.js';
import { consistently, loadFacts } from '../../store/facts.js';
import { type Answerer, param } from '../house.js';

/** A recipe as schema.org words it, as a file. */
export const recipeFile: Answerer = async (request, reply) => {
  const key = param(request, 'key');
  const found = await consistently(request.server.house.db, async (trx) => {
    const stored = await read(trx, 'recipe', key);
    const facts = stored && (await loadFacts(trx, { recipes: [key] }));
    return stored && facts && toSchemaOrg(stored.doc, facts);
  });
  if (!found) return reply.callNotFound();
  return reply
    .type('application/ld+json; charset=utf-8')
    .header('cache-control', 'private, no-cache')
    .header('content-disposition', `attachment; filename="${key}.json"`)
    .send(JSON.stringify(found, null, 2));
};
