/**
 * Forward-only: a migration that was published is never changed or taken out; the next one
 * repairs it. They run in the order of their names, each once, under a lock.
 */
import type { Migration, MigrationProvider } from 'kysely';
import { kitchens } from './001-kitchens.js';
import { rowWalls } from './002-row-walls.js';
import { pairings } from './003-pairings.js';
import { pairingWalls } from './004-pairing-walls.js';
import { ringAfter } from './005-ring-after.js';
import { deviceRights } from './006-device-rights.js';
import { deviceJournalWall } from './007-device-journal-wall.js';
import { due } from './008-due.js';
import { dueWall } from './009-due-wall.js';
import { notices } from './010-notices.js';
import { noticeWall } from './011-notice-wall.js';
import { powerCuts } from './012-power-cuts.js';
import { powerCutWall } from './013-power-cut-wall.js';

const both: Readonly<Record<string, Migration>> = {
  '001-kitchens': kitchens,
  '003-pairings': pairings,
  '006-device-rights': deviceRights,
  '008-due': due,
  '010-notices': notices,
  '012-power-cuts': powerCuts,
};
const postgresOnly: Readonly<Record<string, Migration>> = {
  '002-row-walls': rowWalls,
  '004-pairing-walls': pairingWalls,
  '005-ring-after': ringAfter,
  '007-device-journal-wall': deviceJournalWall,
  '009-due-wall': dueWall,
  '011-notice-wall': noticeWall,
  '013-power-cut-wall': powerCutWall,
};

export const sqliteMigrations: MigrationProvider = { getMigrations: async () => both };
export const postgresMigrations: MigrationProvider = {
  getMigrations: async () => ({ ...both, ...postgresOnly }),
};
