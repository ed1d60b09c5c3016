import { harmless } from '../../core/exchange/csv/harmless.js';
import { csvText } from '../../core/exchange/csv/write.js';
import { kinds, type Plan, type Priced, riseOf } from '../../core/exchange/prices/plan.js';
import { type Format, formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { typedMeasure } from '../typed.js';
import { draftOf, listOfSupplier, notKept } from './draft.js';
import { plannedFor } from './preview.js';

/** Every row of a list with what becomes of it, as CSV. */
export const rowsFile: Answerer = async (request, reply) => {
  const draft = await draftOf(request);
  const list = draft && listOfSupplier(request.kitchen, draft.settings.supplier);
  if (!draft || !list) return notKept(reply);
  const { plan } = await plannedFor(request, draft, list);
  return reply
    .type('text/csv; charset=utf-8; header=present')
    .header('cache-control', 'private, no-store')
    .header('content-disposition', 'attachment; filename="price-list-rows.csv"')
    .send(csvText([heads, ...tableOf(plan, formatFor(request.kitchen))].map((row) => row.map(harmless))));
};

const heads = [
  'line',
  'what becomes of it',
  'on the list',
  'pack',
  'price',
  'date',
  'ingredient',
  'was',
  'per cent',
  'why',
];
const said = { fresh: 'new', changed: 'changed', older: 'older', same: 'same' };

const tableOf = (plan: Plan, f: Format): string[][] =>
  [
    ...kinds.flatMap((kind) => plan[kind].map((one) => pricedCells(one, said[kind], f))),
    ...plan.unmatched.map(({ row }) => notTaken(row, 'unmatched', f)),
    ...plan.leftOut.map((row) => notTaken(row, 'left out', f)),
    ...plan.refused.map(({ line, name, sentence }) => [
      String(line),
      'refused',
      name,
      '',
      '',
      '',
      '',
      '',
      '',
      sentence,
    ]),
  ].sort((a, b) => Number(a[0]) - Number(b[0]));

const notTaken = (row: Plan['leftOut'][number], kind: string, f: Format): string[] => [
  String(row.line),
  kind,
  row.name || row.id,
  typedMeasure(row.size),
  f.plainMoney(row.price),
  row.date,
  '',
  '',
  '',
  '',
];

const pricedCells = (priced: Priced, kind: string, f: Format): string[] => {
  const { row, match, before } = priced;
  const was = before ? f.plainMoney(before.price) : '';
  const rise = riseOf(priced)?.toFixed(1) ?? '';
  const pack = typedMeasure(row.size ?? match.pack?.size ?? null);
  return [
    String(row.line),
    kind,
    row.name || row.id,
    pack,
    f.plainMoney(row.price),
    row.date,
    match.ingredient.name,
    was,
    rise,
    '',
  ];
};
