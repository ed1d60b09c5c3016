import { once } from 'node:events';
import { Agent, get } from 'node:http';

/** Milliseconds of many requests, in the order they were made. */
export type Times = number[];

/** Asks one address after another, as a browser that keeps its connection does. */
export const asker = () => {
  const agent = new Agent({ keepAlive: true, maxSockets: 1 });
  /**
   * Milliseconds until the head of the answer is here. Pages and JSON are sent whole, so by then the server's work is
   * done, and a long answer is not charged for its way here.
   */
  const ask = async (address: string): Promise<{ ms: number; bytes: number }> => {
    const begun = performance.now();
    const [answer] = await once(get(address, { agent, headers: { accept: 'text/html' } }), 'response');
    const ms = performance.now() - begun;
    if (answer.statusCode !== 200) throw new Error(`${address} answered ${answer.statusCode}`);
    let bytes = 0;
    for await (const part of answer) bytes += part.length;
    return { ms, bytes };
  };
  return { ask, close: () => agent.destroy() };
};

export type Asker = ReturnType<typeof asker>;

/**
 * Times of several addresses asked in turn, so that what disturbs the machine hits all alike; each round begins with
 * another one. The first rounds warm everything up and don't count. `before` is done before each, on nobody's time.
 */
export const inTurn = async (
  { ask }: Asker,
  addresses: readonly string[],
  { warm = 100, rounds = 200, before }: { warm?: number; rounds?: number; before?: () => Promise<void> } = {},
): Promise<Times[]> => {
  const times: Times[] = addresses.map(() => []);
  for (let round = -warm; round < rounds; round += 1)
    for (let i = 0; i < addresses.length; i += 1) {
      const which = (i + round + warm) % addresses.length;
      await before?.();
      const { ms } = await ask(addresses[which]!);
      if (round >= 0) times[which]!.push(ms);
    }
  return times;
};

/** The time that so many in a hundred stay within. */
export const within = (times: Times, percent: number): number =>
  times.toSorted((a, b) => a - b)[Math.ceil((times.length * percent) / 100) - 1]!;
