/** The HTTP and WebSocket service. */
export { createApp } from './app.js';
export { readConfig, type Config } from './config.js';
export type { Context } from './context.js';
export { hashOf, newToken } from './tokens.js';
export { tellOfFault } from './turn-log.js';
