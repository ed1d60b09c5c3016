import { once } from 'node:events';
import { createServer } from 'node:net';
import type { Config } from './config.js';
import { Refusal } from './store/refusal.js';

/** Makes sure that the port can be had, before anything is opened or made; one that cannot is refused. */
export const checkPort = async ({ host, port }: Pick<Config, 'host' | 'port'>): Promise<void> => {
  const probe = createServer();
  try {
    probe.listen({ host, port, exclusive: true });
    await once(probe, 'listening');
  } catch (error) {
    throw portRefusal(error, host, port);
  }
  probe.close();
  await once(probe, 'close');
};

/** Why a port cannot be had, in a sentence. */
export const portRefusal = (error: unknown, host: string, port: number): unknown => {
  const { code } = error as NodeJS.ErrnoException;
  if (code === 'EADDRINUSE')
    return new Refusal(`Port ${port} on ${host} is in use: end what uses it, or set PORT to another number.`);
  if (code === 'EACCES')
    return new Refusal(`Port ${port} may not be used by this account: set PORT to a number above 1023.`);
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
    return new Refusal(`HOST ${host} is no address of this machine: use 127.0.0.1, or 0.0.0.0 for all.`);
  return error;
};
