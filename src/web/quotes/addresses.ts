import type { NumberedPaper } from '../../core/facts/quote.js';
import { pageOf } from '../links.js';

/** The addresses of one quote. */
export const quoteAt = (key: string) => {
  const page = `/quotes/${encodeURIComponent(key)}`;
  return {
    page,
    edit: `${page}/edit`,
    issue: `${page}/issue`,
    accept: `${page}/accept`,
    decline: `${page}/decline`,
    open: `${page}/open`,
    withdraw: `${page}/withdraw`,
    back: `${page}/back`,
  };
};

/** The addresses of an event's quotes and of what is paid for it. */
export const quotesAt = (event: string) => {
  const page = pageOf('event', event);
  return { page: `${page}/quotes`, payments: `${page}/payments`, invoices: `${page}/invoices` };
};

export const paperAt = ({ kind, number }: Pick<NumberedPaper, 'kind' | 'number'>): string =>
  `/papers/${kind}/${number}`;
