/** Where households are kept. */
export type * from './port.js';
export { holdFolder } from './folder-lock.js';
export { StoreError, type StoreFault } from './errors.js';
export { openPostgresStore, type PostgresOptions } from './postgres.js';
export { openSqliteStore, type SqliteOptions } from './sqlite.js';
