/** Where this service is reached from outside: what labels and codes hold. */
import type { FastifyRequest } from 'fastify';
import type { Config } from '../config.js';

/** The address that was set, else the one this request came to. */
export const publicAddress = (
  { PUBLIC_URL }: Pick<Config, 'PUBLIC_URL'>,
  request: Pick<FastifyRequest, 'protocol' | 'host'>,
): string => (PUBLIC_URL ?? `${request.protocol}://${request.host}`).replace(/\/$/, '');

/** True for addresses that only the machine itself can open. */
export const isLocal = (address: string): boolean => {
  const { hostname } = new URL(address);
  return (
    hostname === 'localhost' ||
    hostname.endsWith('.localhost') ||
    hostname === '[::1]' ||
    /^127\./.test(hostname) ||
    hostname === '0.0.0.0'
  );
};
