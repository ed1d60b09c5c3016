import { preferredPack } from '../../core/weighing.js';
import type { PackPart } from '../../core/whole-cost/whole-cost.js';
import type { Format } from '../format.js';
import { whereMended } from '../links.js';
import { measureInWords } from '../typed.js';

export type PackRow = {
  packs: string;
  name: string;
  href: string;
  pack: string;
  uses: string;
  paid: string;
  share: string;
  complete: boolean;
};

/** Whole packs bought for an event, alone or together with others, and what it pays of them. */
export const packRows = (packs: readonly PackPart[], f: Format): PackRow[] =>
  packs.map(({ ingredient, need, packs, each, receipt, cost, complete }) => {
    const { key, name } = ingredient;
    const size = preferredPack(ingredient)?.size;
    return {
      packs: f.number(packs),
      name,
      href: whereMended({ entity: 'ingredient', key, name, field: 'packs' }),
      pack: size ? `${measureInWords(size)}, ${f.money(each)}` : f.money(each),
      uses: f.number(need.toFixed(2)),
      paid: f.money(receipt),
      share: complete ? f.money(cost) : `${f.money(cost)} so far`,
      complete,
    };
  });
