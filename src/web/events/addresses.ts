import { pageOf } from '../links.js';

/** The addresses of an event's own pages. */
export const addressesOf = (key: string) => {
  const page = pageOf('event', key);
  return {
    page,
    guests: `${page}/guests`,
    edit: `${page}/edit`,
    menu: `${page}/menu`,
    copy: `${page}/copy`,
    remove: `${page}/remove`,
    archive: `${page}/archive`,
    diets: `${page}/guests/diets`,
    forget: `${page}/guests/forget`,
    allergens: `${page}/allergens`,
    cards: `${page}/allergens/table`,
    pass: `${page}/pass`,
    questions: `${page}/questions`,
    printed: `${page}/printed`,
    costing: `${page}/costing`,
    costs: `${page}/costs`,
    price: `${page}/price`,
    quotes: `${page}/quotes`,
    whatIf: `${page}/costing/what-if`,
    prep: `${page}/prep`,
    wayOut: `${page}/way-out`,
    afterwards: `${page}/afterwards`,
    besideReal: `${page}/beside-real`,
    fewer: `${page}/fewer`,
  };
};
