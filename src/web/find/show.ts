import { find } from '../../store/find.js';
import { type Answerer, query } from '../house.js';
import { page } from '../page.js';

/** What the find box found: events, recipes, ingredients and guests. */
export const showFound: Answerer = async (request, reply) => {
  const asked = query(request, 'q').trim().slice(0, 120);
  const finds = await find(request.server.house.db, asked);
  const count = finds.events.length + finds.recipes.length + finds.ingredients.length + finds.guests.length;
  return page(
    reply,
    'find/show',
    { title: asked ? `Found for “${asked}”` : 'Find', asked, finds, count },
    'find/_found',
  );
};
