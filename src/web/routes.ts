import multipart from '@fastify/multipart';
import type { FastifyInstance } from 'fastify';
import { askForFirst, makeFirst } from './account/first.js';
import { askToSignIn, signIn, signOut } from './account/sign-in.js';
import { showBesideReal } from './afterwards/beside.js';
import { askForAfterwards, saveAfterwards } from './afterwards/note.js';
import { showAllergens } from './allergens/show.js';
import { showTable } from './allergens/table.js';
import { showAverages } from './averages/show.js';
import { askForCosts, previewCosts, saveCosts } from './cost-lines/event.js';
import { previewPrice, savePrice } from './costing/price.js';
import { chooseCosting, showCosting } from './costing/show.js';
import { saveOwnDiets, showOwnDiets } from './diets/show.js';
import { askForText, readIn } from './drafts/begin.js';
import { takeDraft } from './drafts/save.js';
import { bringBack, showDraft, throwAway } from './drafts/show.js';
import { askForCopy, copyTheMenu, previewCopy } from './events/copy.js';
import { askForDetails, previewDetails, saveDetails } from './events/edit.js';
import { showFewer } from './events/fewer.js';
import { askForGuests, previewGuests, saveGuests } from './events/guests.js';
import { listEvents } from './events/list.js';
import { askForMenu, previewMenu, saveMenu } from './events/menu.js';
import { addEvent, askForEvent, readEvent } from './events/new.js';
import { archiveEvent, askToRemove, removeEvent } from './events/remove.js';
import { showEvent } from './events/show.js';
import { showFound } from './find/show.js';
import { takeOutExample } from './first-run/example.js';
import { beginKitchen, showFirstRun } from './first-run/show.js';
import { saveDiets, showDiets } from './guests/diets.js';
import { askToForget, forgetDiets } from './guests/forget.js';
import { health } from './health.js';
import { showHistory } from './history/show.js';
import { takeBack, takeBackTogether } from './history/undo.js';
import type { Answerer } from './house.js';
import { basics } from './ingredients/basics.js';
import { diets } from './ingredients/diets.js';
import { keeping } from './ingredients/keeping.js';
import { label } from './ingredients/label.js';
import { listIngredients } from './ingredients/list.js';
import { addIngredient, askForIngredient, choose, lookUp } from './ingredients/new.js';
import { packs } from './ingredients/packs.js';
import { askFor, savePart } from './ingredients/part.js';
import { bringPhotoBack, keepPhoto, showPhoto, takeOutPhoto } from './ingredients/photograph.js';
import { showPlain, takePlain } from './ingredients/plain.js';
import { showPrices } from './ingredients/prices.js';
import { readWords } from './ingredients/read-words.js';
import { showIngredient } from './ingredients/show.js';
import { substitutes } from './ingredients/substitutes.js';
import { takeFigures } from './ingredients/take.js';
import { edible } from './ingredients/yield.js';
import { saveUsualCosts, showUsualCosts } from './kitchen/costs.js';
import { saveKitchen, showKitchen } from './kitchen/settings.js';
import { saveTerms, showTerms } from './kitchen/terms.js';
import { archive, askToLeave, removeIt } from './leaving.js';
import { menu, showKeys } from './menu.js';
import { showMenuEngineering } from './menu-engineering/show.js';
import { saveMerge } from './merge/resolve.js';
import { showNeeds } from './needs/show.js';
import { showPass } from './pass/show.js';
import { addPlace, askForPlace, savePlace, showPlace } from './places/change.js';
import { listPlaces } from './places/list.js';
import { showEventPrep } from './prep/event.js';
import { showPrep } from './prep/show.js';
import { saveTick } from './prep/ticks.js';
import { showMinutePrice } from './price/show.js';
import { showPriceMoves } from './price-moves/show.js';
import { askForList, beginList } from './prices/begin.js';
import { chooseRows } from './prices/choose.js';
import { askForColumns, saveColumns } from './prices/columns.js';
import { showPreview, takeOver } from './prices/preview.js';
import { rowsFile } from './prices/rows-file.js';
import { showTable as showCsvTable, takeOverTable } from './prices/table.js';
import { beginTable, showTables, tableFile } from './prices/tables.js';
import { printPaper } from './printed/print.js';
import { showQuestions } from './questions/show.js';
import {
  acceptQuote,
  bringDraftBack,
  declineQuote,
  issueQuote,
  openAgain,
  withdrawDraft,
} from './quotes/answers.js';
import { draftNext } from './quotes/draft.js';
import { askForOffer, saveOffer } from './quotes/edit.js';
import { showQuotes } from './quotes/list.js';
import { showPaper } from './quotes/paper-show.js';
import { issueCredit, issueInvoice, issueReceipt } from './quotes/papers.js';
import { strike, takePayment } from './quotes/payments.js';
import { showQuote } from './quotes/show.js';
import { addRecipe, askForRecipe, changeRecipe, previewRecipe, saveRecipe } from './recipes/change.js';
import { printLabels, showFullLabel } from './recipes/label.js';
import { listRecipes } from './recipes/list.js';
import { recipeFile } from './recipes/schema-org.js';
import { showRecipe } from './recipes/show.js';
import { chooseWayOut, showWayOut } from './way-out/show.js';
import { showWeek } from './week/show.js';
import { showWhatIf } from './what-if/show.js';
import { workbookFile, workbookSchemaFile } from './workbook/file.js';
import { openWorkbook, showWorkbook } from './workbook/open.js';

type Options = {
  /** Needs neither sign-in nor a kitchen. */
  open?: boolean;
  /** Needs no kitchen. */
  bare?: boolean;
  /** Takes a file. */
  file?: boolean;
  /** Tries a minute from one address. */
  tries?: number;
};
type Route = { method: 'GET' | 'POST'; url: string; answer: Answerer } & Options;

const get = (url: string, answer: Answerer, options: Options = {}): Route => ({
  method: 'GET',
  url,
  answer,
  ...options,
});
const post = (url: string, answer: Answerer, options: Options = {}): Route => ({
  method: 'POST',
  url,
  answer,
  ...options,
});

/** A sheet answers at its address as a page and on paper, and with an ending as CSV and JSON. */
export const sheet = (url: string, answer: Answerer): Route[] => [
  get(url, answer),
  get(`${url}.csv`, answer),
  get(`${url}.json`, answer),
];

/** Every address of the workbook. */
export const routes: Route[] = [
  get('/menu', menu),
  get('/keys', showKeys),
  get('/find', showFound),

  get('/kitchen', showKitchen),
  post('/kitchen', saveKitchen),
  get('/kitchen/costs', showUsualCosts),
  post('/kitchen/costs', saveUsualCosts),
  get('/kitchen/terms', showTerms),
  post('/kitchen/terms', saveTerms),
  get('/diets', showOwnDiets),
  post('/diets', saveOwnDiets),
  get('/places', listPlaces),
  get('/places/new', askForPlace),
  post('/places/new', addPlace),
  get('/places/:key', showPlace),
  get('/places/:key/change', showPlace),
  post('/places/:key', savePlace),

  get('/', showWeek),
  ...sheet('/prep', showPrep),
  post('/prep/ticks', saveTick),
  ...sheet('/events/:key/prep', showEventPrep),
  ...sheet('/events/:key/allergens', showAllergens),
  get('/events/:key/guests/diets', showDiets),
  post('/events/:key/guests/diets', saveDiets),
  get('/events/:key/guests/forget', askToForget),
  post('/events/:key/guests/forget', forgetDiets),
  get('/events/:key/way-out', showWayOut),
  post('/events/:key/way-out', chooseWayOut),
  get('/costing', chooseCosting),
  get('/price', showMinutePrice),
  ...sheet('/needs', showNeeds),
  ...sheet('/events/:key/costing', showCosting),
  get('/events/:key/costing/what-if', showWhatIf),
  post('/events/:key/price', savePrice),
  post('/events/:key/price/preview', previewPrice),
  get('/events/:key/costs', askForCosts),
  post('/events/:key/costs', saveCosts),
  post('/events/:key/costs/preview', previewCosts),
  ...sheet('/events/:key/allergens/table', showTable),
  ...sheet('/events/:key/pass', showPass),
  get('/events/:key/questions', showQuestions),
  post('/events/:key/printed', printPaper),
  // Quotes, payments and papers
  get('/events/:key/quotes', showQuotes),
  post('/events/:key/quotes', draftNext),
  post('/events/:key/payments', takePayment),
  post('/events/:key/invoices', issueInvoice),
  ...sheet('/quotes/:key', showQuote),
  get('/quotes/:key/edit', askForOffer),
  post('/quotes/:key/edit', saveOffer),
  post('/quotes/:key/issue', issueQuote),
  post('/quotes/:key/accept', acceptQuote),
  post('/quotes/:key/decline', declineQuote),
  post('/quotes/:key/open', openAgain),
  post('/quotes/:key/withdraw', withdrawDraft),
  post('/quotes/:key/back', bringDraftBack),
  post('/payments/:key/strike', strike),
  post('/payments/:key/receipt', issueReceipt),
  get('/papers/:kind/:number', showPaper),
  post('/papers/:kind/:number/credit', issueCredit),
  get('/recipes', listRecipes),
  get('/recipes/new', askForRecipe),
  post('/recipes/new', addRecipe),
  get('/recipes/read', askForText),
  post('/recipes/read', readIn, { file: true }),
  get('/recipes/read/:draft', showDraft),
  post('/recipes/read/:draft', takeDraft),
  post('/recipes/read/:draft/throw', throwAway),
  post('/recipes/read/:draft/back', bringBack),
  ...sheet('/recipes/:key', showRecipe),
  ...sheet('/recipes/:key/label', showFullLabel),
  post('/recipes/:key/label/printed', printLabels),
  get('/recipes/:key/schema-org.json', recipeFile),
  get('/recipes/:key/edit', changeRecipe),
  post('/recipes/:key/edit', saveRecipe),
  post('/recipes/:key/edit/preview', previewRecipe),
  get('/recipes/:key/archive', askToLeave('recipe')),
  post('/recipes/:key/archive', archive('recipe')),
  post('/recipes/:key/remove', removeIt('recipe')),

  get('/ingredients', listIngredients),
  get('/ingredients/new', askForIngredient),
  post('/ingredients/new', addIngredient),
  post('/ingredients/new/reference', lookUp),
  post('/ingredients/new/figures', choose),
  get('/ingredients/plain', showPlain),
  post('/ingredients/plain', takePlain),
  // Price lists
  get('/ingredients/prices', askForList),
  post('/ingredients/prices', beginList, { file: true }),
  get('/ingredients/prices/:draft', showPreview),
  post('/ingredients/prices/:draft', takeOver),
  get('/ingredients/prices/:draft/columns', askForColumns),
  post('/ingredients/prices/:draft/columns', saveColumns),
  post('/ingredients/prices/:draft/rows', chooseRows),
  get('/ingredients/prices/:draft/rows.csv', rowsFile),
  get('/ingredients.csv', tableFile('ingredients')),
  get('/prices.csv', tableFile('prices')),
  get('/recipes.csv', tableFile('recipes')),
  get('/csv', showTables),
  post('/csv', beginTable, { file: true }),
  get('/csv/:draft', showCsvTable),
  post('/csv/:draft', takeOverTable),

  get('/ingredients/:key', showIngredient),
  get('/ingredients/:key/basics', askFor(basics)),
  post('/ingredients/:key/basics', savePart(basics)),
  get('/ingredients/:key/packs', askFor(packs)),
  post('/ingredients/:key/packs', savePart(packs)),
  get('/ingredients/:key/yield', askFor(edible)),
  post('/ingredients/:key/yield', savePart(edible)),
  post('/ingredients/:key/reference', takeFigures),
  get('/ingredients/:key/label', askFor(label)),
  post('/ingredients/:key/label', savePart(label)),
  post('/ingredients/:key/label/read', readWords),
  get('/ingredients/:key/label/photograph', showPhoto),
  post('/ingredients/:key/label/photograph', keepPhoto, { file: true }),
  post('/ingredients/:key/label/photograph/out', takeOutPhoto),
  post('/ingredients/:key/label/photograph/back', bringPhotoBack),
  get('/ingredients/:key/diets', askFor(diets)),
  post('/ingredients/:key/diets', savePart(diets)),
  get('/ingredients/:key/substitutes', askFor(substitutes)),
  post('/ingredients/:key/substitutes', savePart(substitutes)),
  get('/ingredients/:key/keeping', askFor(keeping)),
  post('/ingredients/:key/keeping', savePart(keeping)),
  get('/ingredients/:key/archive', askToLeave('ingredient')),
  post('/ingredients/:key/archive', archive('ingredient')),
  post('/ingredients/:key/remove', removeIt('ingredient')),

  // Looking back
  ...sheet('/ingredients/:key/prices', showPrices),
  ...sheet('/price-moves', showPriceMoves),
  get('/events/:key/afterwards', askForAfterwards),
  post('/events/:key/afterwards', saveAfterwards),
  ...sheet('/events/:key/beside-real', showBesideReal),
  get('/events/:key/fewer', showFewer),
  ...sheet('/averages', showAverages),
  ...sheet('/menu-engineering', showMenuEngineering),

  // Events
  get('/events', listEvents),
  get('/events/new', askForEvent),
  post('/events/new', addEvent),
  post('/events/new/read', readEvent),
  ...sheet('/events/:key', showEvent),
  get('/events/:key/guests/change', askForGuests),
  post('/events/:key/guests/preview', previewGuests),
  post('/events/:key/guests', saveGuests),
  get('/events/:key/edit', askForDetails),
  post('/events/:key/edit', saveDetails),
  post('/events/:key/edit/preview', previewDetails),
  get('/events/:key/menu', askForMenu),
  post('/events/:key/menu', saveMenu),
  post('/events/:key/menu/preview', previewMenu),
  get('/events/:key/copy', askForCopy),
  post('/events/:key/copy', copyTheMenu),
  post('/events/:key/copy/preview', previewCopy),
  get('/events/:key/remove', askToRemove),
  post('/events/:key/remove', removeEvent),
  post('/events/:key/archive', archiveEvent),

  post('/merge/:entity/:key', saveMerge),
  get('/history/:entity/:key', showHistory),
  post('/undo/:change', takeBack),
  post('/undo/together/:change', takeBackTogether),

  get('/workbook', showWorkbook, { bare: true }),
  post('/workbook', openWorkbook, { bare: true, file: true }),
  get('/workbook.json', workbookFile, { bare: true }),
  get('/workbook.schema.json', workbookSchemaFile, { bare: true }),

  get('/first-run', showFirstRun, { bare: true }),
  post('/first-run', beginKitchen, { bare: true }),
  post('/example/remove', takeOutExample),

  get('/account/sign-in', askToSignIn, { bare: true }),
  post('/account/sign-in', signIn, { bare: true, tries: 10 }),
  post('/account/sign-out', signOut, { bare: true }),
  get('/account/first', askForFirst, { bare: true }),
  post('/account/first', makeFirst, { bare: true, tries: 10 }),

  get('/health', health, { open: true }),
];

const mega = 1024 * 1024;

export const useRoutes = async (app: FastifyInstance): Promise<void> => {
  const add = (to: FastifyInstance, { method, url, answer, open, bare, tries }: Route) =>
    to.route({
      method,
      url,
      handler: answer,
      config: { open, bare, rateLimit: tries ? { max: tries, timeWindow: '1 minute' } : undefined },
    });
  for (const route of routes) if (!route.file) add(app, route);
  await app.register(async (withFiles) => {
    await withFiles.register(multipart, { limits: { fileSize: 64 * mega, files: 1, fields: 4 } });
    for (const route of routes) if (route.file) add(withFiles, route);
  });
};
