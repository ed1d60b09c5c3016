import { table } from '../lines/table.js';
import { isType, type Node, type Value } from './nodes.js';

type Element = { scope?: Node; property: string; words: string[] | undefined };

const contents = table<string>({ meta: 'content', time: 'datetime', data: 'value', link: 'href' });
const mostPieces = 20_000;
const mostListening = 8;

/** Collects recipes that a page's elements are marked up as: itemscope and itemprop, or typeof and property. */
export class MarkedUp {
  private readonly open: Element[] = [];
  private readonly scopes: Node[] = [];
  private readonly found: Node[] = [];
  private readonly listening: string[][] = [];

  opens(name: string, attributes: Record<string, string>): void {
    const type = attributes.itemtype ?? attributes.typeof;
    const property = (
      attributes.itemprop ??
      (this.scopes.length > 0 ? attributes.property : undefined) ??
      ''
    ).trim();
    const parent = this.scopes.at(-1);
    if (attributes.itemscope !== undefined || type !== undefined) {
      const scope: Node = { '@type': (type ?? '').split(/\s+/) };
      if (parent && property) add(parent, property, scope);
      if (isType(scope, 'Recipe')) this.found.push(scope);
      this.scopes.push(scope);
      this.open.push({ scope, property: '', words: undefined });
      return;
    }
    const stated = attributes.content ?? attributes[contents[name] ?? 'content'];
    if (parent && property && stated !== undefined) add(parent, property, stated);
    const listens = parent && property && stated === undefined && this.listening.length < mostListening;
    const words: string[] | undefined = listens ? [] : undefined;
    if (words) this.listening.push(words);
    this.open.push({ property, words });
    if (['p', 'br', 'li', 'div'].includes(name)) this.says('\n');
  }

  says(words: string): void {
    for (const one of this.listening) if (one.length < mostPieces) one.push(words);
  }

  closes(): void {
    const element = this.open.pop();
    if (!element) return;
    if (element.scope) this.scopes.pop();
    if (!element.words) return;
    this.listening.splice(this.listening.indexOf(element.words), 1);
    const scope = this.scopes.at(-1);
    const words = element.words.join('').trim();
    if (scope && words) add(scope, element.property, words);
  }

  recipes(): Node[] {
    return this.found;
  }
}

/** One element may state several properties; one property may be stated by several elements. */
const add = (node: Node, properties: string, value: Value): void => {
  for (const property of properties.split(/\s+/)) {
    if (property === '' || property.startsWith('@') || property === '__proto__') continue;
    const before = Object.hasOwn(node, property) ? node[property]! : undefined;
    if (Array.isArray(before)) before.push(value);
    else node[property] = before === undefined ? value : [before, value];
  }
};
