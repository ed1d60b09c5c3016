import { Parser } from 'htmlparser2';
import { MarkedUp } from './microdata.js';
import type { Node } from './nodes.js';
import { inPieces } from './plain-text.js';

/** What a saved page holds: blocks of JSON-LD, marked-up recipes, and its words line by line. */
export type Page = { blocks: string[]; marked: Node[]; title: string; text: string };

const deepest = 1000;
const mostWords = 2_000_000;
const silent = new Set(
  'script style noscript template svg nav footer header aside form select button iframe object head math'.split(
    ' ',
  ),
);
const blocks = new Set(
  'p br li div h1 h2 h3 h4 h5 h6 tr ul ol dl dt dd section article table main blockquote pre figure hr'.split(
    ' ',
  ),
);

/** Reads a page in one pass, however broken it is; undefined when it is nested deeper than any page is. */
export const readPage = (html: string): Page | undefined => {
  const page = new Reading();
  const parser = new Parser({
    onopentag: (name, attributes) => page.opens(name, attributes),
    onclosetag: (name) => page.closes(name),
    ontext: (words) => page.says(words),
  });
  return inPieces(parser, html, () => page.depth > deepest) ? page.read() : undefined;
};

class Reading {
  depth = 0;
  private readonly data: string[] = [];
  private readonly marked = new MarkedUp();
  private readonly words: string[] = [];
  private readonly title: string[] = [];
  private readonly heading: string[] = [];
  private size = 0;
  private quiet = 0;
  private block: string[] | undefined;
  private into: string[] | undefined;

  opens(name: string, attributes: Record<string, string>): void {
    this.depth++;
    this.marked.opens(name, attributes);
    if (name === 'script' && /^application\/(?:ld\+)?json/i.test(attributes.type ?? '')) {
      if (/ld\+json/i.test(attributes.type ?? '')) this.block = [];
    }
    if (silent.has(name)) this.quiet++;
    if (name === 'title' && this.title.length === 0) this.into = this.title;
    if (name === 'h1' && this.heading.length === 0) this.into = this.heading;
    if (blocks.has(name)) this.put('\n');
    else if (name === 'td' || name === 'th') this.put(' ');
  }

  closes(name: string): void {
    this.depth--;
    this.marked.closes();
    if (name === 'script' && this.block) {
      this.data.push(this.block.join(''));
      this.block = undefined;
    }
    if (silent.has(name)) this.quiet--;
    if (name === 'title' || name === 'h1') this.into = undefined;
    if (blocks.has(name)) this.put('\n');
  }

  says(words: string): void {
    this.block?.push(words);
    this.into?.push(words);
    this.marked.says(words);
    if (this.quiet === 0) this.put(words);
  }

  private put(words: string): void {
    if (this.size > mostWords) return;
    this.size += words.length;
    this.words.push(words);
  }

  read(): Page {
    if (this.block) this.data.push(this.block.join(''));
    const text = this.words
      .join('')
      .replace(/[^\S\n]+/g, ' ')
      .replace(/ ?\n ?/g, '\n')
      .replace(/\n{3,}/g, '\n\n')
      .trim();
    const title = (this.heading.length > 0 ? this.heading : this.title).join('').replace(/\s+/g, ' ').trim();
    return { blocks: this.data, marked: this.marked.recipes(), title: title.slice(0, 200), text };
  }
}
