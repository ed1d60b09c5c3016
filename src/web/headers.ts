import type { FastifyHelmetOptions } from '@fastify/helmet';

/** Every header written out: the usual defaults would break plain-HTTP addresses and allow inline style. */
export const safetyHeaders: FastifyHelmetOptions = {
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'none'"],
      scriptSrc: ["'self'"],
      styleSrc: ["'self'"],
      imgSrc: ["'self'", 'data:'],
      fontSrc: ["'self'"],
      connectSrc: ["'self'"],
      formAction: ["'self'"],
      frameAncestors: ["'none'"],
      baseUri: ["'none'"],
    },
  },
  // A page without a referrer would send its forms with no origin, and the guard would refuse them.
  referrerPolicy: { policy: 'same-origin' },
  strictTransportSecurity: false,
  crossOriginEmbedderPolicy: false,
  crossOriginOpenerPolicy: { policy: 'same-origin' },
  crossOriginResourcePolicy: { policy: 'same-origin' },
  xFrameOptions: { action: 'deny' },
};
