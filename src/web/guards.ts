import { isIP } from 'node:net';
import type { FastifyRequest, onRequestHookHandler } from 'fastify';
import type { Config } from '../config.js';

/** A page refused for where the request came from. */
export class Refused extends Error {
  constructor(
    message: string,
    readonly statusCode = 403,
  ) {
    super(message);
  }
}

type Allowed = Pick<Config, 'allowedHosts' | 'host' | 'loopback'>;

/**
 * Lets only known host names in, so that no other site's name can be pointed at this kitchen. A bare address cannot
 * be: on loopback the loopback addresses pass, else any.
 */
export const hostGuard =
  (config: Allowed): onRequestHookHandler =>
  async (request) => {
    const name = hostName(request.headers.host ?? '');
    if (config.allowedHosts.includes(name) || name === config.host) return;
    if (isIP(name) !== 0 && (!config.loopback || name === '::1' || name.startsWith('127.'))) return;
    throw new Refused(
      `This workbook does not answer to the name "${name.slice(0, 60)}". To use it, add it to ALLOWED_HOSTS and start again.`,
    );
  };

const hostName = (host: string): string =>
  host
    .replace(/:\d+$/, '')
    .replace(/^\[(.*)\]$/, '$1')
    .toLowerCase();

const readOnly = new Set(['GET', 'HEAD', 'OPTIONS']);

/** Lets only this workbook's own pages change anything. */
export const originGuard: onRequestHookHandler = async (request) => {
  if (readOnly.has(request.method) || isOwn(request)) return;
  throw new Refused(
    'This change came from another place than the workbook’s own pages, so nothing was changed. Open the page here and save again.',
  );
};

const isOwn = ({ headers }: FastifyRequest): boolean => {
  const site = headers['sec-fetch-site'];
  if (site !== undefined) return site === 'same-origin';
  const { origin, host } = headers;
  if (origin === undefined || origin === 'null' || !URL.canParse(origin)) return false;
  return new URL(origin).host === host?.toLowerCase().replace(/:80$/, '');
};
