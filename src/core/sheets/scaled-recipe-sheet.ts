import { cupOf } from '../batch.js';
import type { Answer } from '../problem.js';
import { equipmentTable } from './equipment-table.js';
import { lineFoot } from './line-foot.js';
import type { ScaledRecipe } from './scaled-recipe.js';
import { cautions, conventions, decimalMoney, type Sheet } from './sheet.js';

/** The scaled recipe as tables. */
export const scaledRecipeSheet = ({ value, problems }: Answer<ScaledRecipe>): Sheet => {
  const { recipe, facts, factor, portions, lines, steps, complete, cost, made, left } = value;
  const { equipment, roasts } = value;
  const { currency } = facts.kitchen;
  return {
    sheet: 'recipe',
    title: recipe.name,
    about: {
      recipe: recipe.key,
      portions: portions?.toString() ?? '',
      factor: factor?.toString() ?? '',
      makes: made?.value.toString() ?? '',
      makesUnit: made?.base ?? '',
      leftOver: left?.value.toString() ?? '',
      cup: cupOf(recipe, facts),
      cost: complete ? decimalMoney(cost, currency) : '',
      costKnown: decimalMoney(cost, currency),
      currency,
      complete: String(complete),
    },
    get tables() {
      return [
        {
          name: 'lines',
          title: 'Ingredients',
          columns: [
            { key: 'amount', label: 'Amount' },
            { key: 'least', label: 'Lower end' },
            { key: 'base', label: 'Base amount' },
            { key: 'baseLeast', label: 'Base lower end' },
            { key: 'unit', label: 'Unit' },
            { key: 'scales', label: 'Scales' },
            { key: 'straight', label: 'Straight it would be' },
            { key: 'item', label: 'Ingredient or component' },
            { key: 'preparation', label: 'Preparation' },
            { key: 'prepared', label: 'Prepared weight', unit: 'g' },
            { key: 'bought', label: 'As purchased' },
            { key: 'boughtUnit', label: 'Unit as purchased' },
            { key: 'cost', label: 'Cost', unit: currency },
            { key: 'allergens', label: 'Allergens' },
          ],
          rows: lines.map(({ need, straight, cost: part, allergens }) => ({
            amount: need.amount?.toString() ?? '',
            least: need.least?.toString() ?? '',
            base: need.base?.toString() ?? '',
            baseLeast: need.baseLeast?.toString() ?? '',
            unit: need.unit,
            scales: need.line.scales,
            straight: straight?.toString() ?? '',
            item: (need.ingredient ?? need.component)!.name,
            preparation: need.line.preparation,
            prepared: need.prepared?.toString() ?? '',
            bought: need.bought?.value.toString() ?? '',
            boughtUnit: need.bought?.base ?? '',
            cost: part === undefined ? '' : decimalMoney(part, currency),
            allergens: allergens.map(({ item, state }) => `${item}: ${inFull[state]}`).join('; '),
          })),
        },
        {
          name: 'method',
          title: 'Method',
          columns: [
            { key: 'number', label: 'Step' },
            { key: 'minutes', label: 'Minutes' },
            { key: 'heat', label: 'Oven', unit: '°C' },
            { key: 'trays', label: 'Trays' },
            { key: 'words', label: 'Method' },
          ],
          rows: steps.map(({ step, number, trays }) => ({
            number: String(number),
            minutes: step.minutes === null ? '' : String(step.minutes),
            heat: step.oven ? String(step.oven.heat) : '',
            trays: trays === undefined ? '' : String(trays),
            words: step.words,
          })),
        },
        equipmentTable(equipment, roasts, facts.kitchen),
      ];
    },
    problems,
    foot: [
      conventions.weights,
      conventions.pieces,
      conventions.components,
      ...lineFoot(lines.map(({ need }) => need)),
      conventions.prices,
      conventions.minutes,
      cautions.allergens,
    ],
  };
};

const inFull = { contains: 'contains', may: 'may contain', unknown: 'not known' } as const;
