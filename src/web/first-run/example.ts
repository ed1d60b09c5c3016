import { removeExample } from '../../store/example.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { saving } from '../save.js';

/** Takes out what came with the example, is as it came, and nothing of the kitchen's own uses. */
export const takeOutExample: Answerer = async (request, reply) => {
  const { removed, stayed } = await removeExample(request.server.house.db, saving(reply));
  return page(reply, 'first-run/removed', { title: 'The example is out', removed, stayed });
};
