import { list } from '../../store/places.js';
import type { Answerer } from '../house.js';
import { placesInOrder } from '../listing.js';
import { page } from '../page.js';

/** The home kitchen and the venues. */
export const listPlaces: Answerer = async (request, reply) => {
  const places = placesInOrder(await list(request.server.house.db), request.kitchen.locale);
  return page(reply, 'places/list', { title: 'Places', places });
};
