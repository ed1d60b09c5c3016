import type { Fault } from '../core/exchange/workbook.js';
import type { Stayed } from '../store/example.js';
import type { Finds } from '../store/find.js';
import type { PlaceRow } from '../store/places.js';
import type { AllergensPage } from './allergens/show.js';
import type { TablePage } from './allergens/table.js';
import type { EventCosts } from './cost-lines/event.js';
import type { CostingPage } from './costing/model.js';
import type { ChooseCosting } from './costing/show.js';
import type { DietsList } from './diets/show.js';
import type { DraftViews } from './drafts/views.js';
import type { EventViews } from './events/views.js';
import type { FiguresViews } from './figures-views.js';
import type { DietsPage } from './guests/diets.js';
import type { ForgetPage } from './guests/forget.js';
import type { HistoryRow } from './history/show.js';
import type { IngredientViews } from './ingredients/views.js';
import type { KitchenChoices } from './kitchen/choices.js';
import type { UsualCosts } from './kitchen/costs.js';
import type { LeavingPage } from './leaving.js';
import type { MergeView } from './merge/show.js';
import type { NeedsPage } from './needs/show.js';
import type { PassPage } from './pass/show.js';
import type { EventPrep } from './prep/event.js';
import type { PrepPage } from './prep/show.js';
import type { TickedPage } from './prep/ticks.js';
import type { MinutePage } from './price/show.js';
import type { PriceViews } from './prices/views.js';
import type { QuestionsPage } from './questions/show.js';
import type { QuoteViews } from './quotes/views.js';
import type { RecipeViews } from './recipes/views.js';
import type { WayOutPage } from './way-out/show.js';
import type { WeekPage } from './week/show.js';
import type { WhatIfPage } from './what-if/show.js';

type Trouble = { sentence: string; status: number; changing: boolean };
type Found = { asked: string; finds: Finds; count: number };

/** The model of every view, by its name. A view sees these and what `Given` in page.ts names, nothing else. */
export type Views = EventViews &
  RecipeViews &
  IngredientViews &
  PriceViews &
  QuoteViews &
  DraftViews &
  FiguresViews & {
    'leaving/show': LeavingPage;
    'merge/show': MergeView;
    'kitchen/show': KitchenChoices & { at: string; examples: number; accountName: string | undefined };
    'kitchen/_form': KitchenChoices & { at: string };
    'places/list': { places: PlaceRow[] };
    'places/change': { key: string; home: boolean; at: string };
    'places/_form': { key: string; home: boolean; at: string };
    'find/show': Found;
    'find/_found': Found;
    'history/show': { rows: HistoryRow[]; back: string | undefined };
    'workbook/show': { wrong: Fault[]; more: number; opened: string };
    'first-run/show': { week: number; kitchenSet: string };
    'first-run/removed': { removed: number; stayed: Stayed[] };
    'menu/keys': object;
    'allergens/show': AllergensPage;
    'diets/show': DietsList;
    'diets/_form': DietsList;
    'allergens/table': TablePage;
    'pass/show': PassPage;
    'questions/show': QuestionsPage;
    'kitchen/terms': { goOn: string };
    'kitchen/_terms': { goOn: string };
    'cost-lines/kitchen': UsualCosts;
    'cost-lines/_kitchen': UsualCosts;
    'cost-lines/event': EventCosts;
    'cost-lines/_event': EventCosts;
    'cost-lines/ripple-update': EventCosts;
    'price/show': MinutePage;
    'price/_minute': MinutePage;
    'what-if/show': WhatIfPage;
    'costing/show': CostingPage;
    'costing/_price': CostingPage;
    'costing/price-update': CostingPage;
    'costing/choose': ChooseCosting;
    'costing/none': object;
    'needs/show': NeedsPage;
    'guests/diets': DietsPage;
    'guests/forget': ForgetPage;
    'guests/_diets': DietsPage;
    'way-out/show': WayOutPage;
    'way-out/_ways': WayOutPage;
    'prep/show': PrepPage;
    'week/show': WeekPage;
    'week/empty': { number: number; kitchenSet: string };
    'prep/event': EventPrep;
    'prep/ticked': TickedPage;
    'errors/show': Trouble;
    'errors/_notice': Trouble;
    'account/sign-in': object;
    'account/_sign-in': object;
    'account/_signed-in': { name: string };
    'account/first': { code: boolean };
    'menu/show': { pages: readonly { word: string; href: string }[]; kitchen: string };
  };

export type ViewName = keyof Views;
