import type { Quote } from '../facts/quote.js';
import { offerComes } from './offer-comes.js';

/** What an accepted offer comes to without tax, in minor units, for the guests it is for. */
export const netAccepted = ({ offer, taken }: Pick<Quote, 'offer' | 'taken'>): number => {
  const option = offer.options.find(({ key }) => key === taken) ?? offer.options[0]!;
  return offerComes(option, offer).net;
};
