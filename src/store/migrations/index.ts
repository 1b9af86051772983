/**
 * Forward-only: a migration that was published is never changed or taken out; the next one
 * repairs it. They run in the order of their names, each once, under a lock.
 */
import type { Migration } from 'kysely';
import { kitchens } from './001-kitchens.js';

export const migrations: Readonly<Record<string, Migration>> = {
  '001-kitchens': kitchens,
};
