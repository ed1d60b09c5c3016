import type { Agent } from './agent.js';

export type Visited = { address: string; status: number; type: string; body: string; from: string };

/** Every address that pages lead to from the start, each asked for once; of the endless ones only the first few. */
export const crawl = async (
  agent: Agent,
  start: string,
  endless: RegExp,
  few: number,
): Promise<Visited[]> => {
  let more = few;
  const from = new Map([[start, '']]);
  const visited: Visited[] = [];
  for (const [address, origin] of from) {
    const answer = await agent.get(address).buffer(true);
    const type = String(answer.headers['content-type'] ?? '');
    const body = answer.text ?? '';
    visited.push({ address, status: answer.status, type, body, from: origin });
    const onward = answer.status === 303 || answer.status === 302 ? [String(answer.headers.location)] : [];
    const links = type.includes('html') ? linksIn(body) : [];
    for (const link of [...onward, ...links])
      if (!from.has(link) && (!endless.test(link) || more-- > 0)) from.set(link, address);
  }
  return visited;
};

const linksIn = (page: string): string[] =>
  [...page.matchAll(/\b(?:href|hx-get)="(\/[^"#]*)(?:#[^"]*)?"/g)]
    .map(([, link = '']) => link.replaceAll('&amp;', '&'))
    .filter((link) => !link.startsWith('/assets/'));

/** The ids that links within and between pages point at, by the address that must hold them. */
export const anchorsIn = (page: string, own: string): { address: string; id: string }[] =>
  [...page.matchAll(/\bhref="([^"#]*)#([^"]+)"/g)].map(([, address = '', id = '']) => ({
    address: address.replaceAll('&amp;', '&') || own,
    id,
  }));
