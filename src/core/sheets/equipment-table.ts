import type { Equipment } from '../equipment.js';
import { loadWords, panWords, roastWords, tinWords } from '../equipment-words.js';
import type { Kitchen } from '../facts/kitchen.js';
import { Rational } from '../quantity/rational.js';
import type { RoastGuide } from '../roast.js';
import type { Table } from './sheet.js';

type Row = Record<'step' | 'equipment' | 'needed' | 'unit' | 'said', string>;

/** The tins, pans and oven shelves of a scaled recipe, and the guide to its roast, as a table. */
export const equipmentTable = (
  equipment: Equipment,
  roasts: readonly RoastGuide[],
  kitchen: Kitchen,
): Table => ({
  name: 'equipment',
  title: 'Tins, pans and shelves',
  columns: [
    { key: 'step', label: 'Step' },
    { key: 'equipment', label: 'Equipment' },
    { key: 'needed', label: 'Needed' },
    { key: 'unit', label: 'Unit' },
    { key: 'said', label: 'In words' },
  ],
  rows: [
    ...tinRows(equipment),
    ...stepRows(equipment, kitchen),
    ...roasts.map((one) => roastRow(one, kitchen)),
  ],
});

const tinRows = (equipment: Equipment): Row[] => {
  const { tins, into } = equipment;
  if (!tins && !into) return [];
  const needed = tins
    ? Rational.of(tins.whole).minus(Rational.one).plus(tins.last)
    : Rational.of(into!.tin.count);
  return [{ step: '', equipment: 'tins', needed: needed.toString(), unit: 'tin', said: tinWords(equipment) }];
};

const stepRows = ({ steps }: Equipment, kitchen: Kitchen): Row[] =>
  steps.flatMap(({ number, step, trays, pans, shelves }) => [
    ...(pans ? [row(number, 'pans', pans.litres.toString(), 'l', panWords(pans, kitchen))] : []),
    ...(trays === undefined
      ? []
      : [
          row(
            number,
            'oven shelves',
            String(trays),
            'shelf',
            shelves ? loadWords(shelves, step, kitchen) : '',
          ),
        ]),
  ]);

const row = (step: number, equipment: string, needed: string, unit: string, said: string): Row => ({
  step: String(step),
  equipment,
  needed,
  unit,
  said,
});

const roastRow = (guide: RoastGuide, kitchen: Kitchen): Row =>
  row(guide.number, 'roast, a guide', guide.least.toString(), 'min', roastWords(guide, kitchen).join(' '));
