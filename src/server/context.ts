/** What every feature of the service is given. */
import type { Store } from '../store/port.js';
import type { Instant } from '../terms/dates.js';
import type { Households } from '../turn/index.js';
import type { Config } from './config.js';

export interface Context {
  readonly store: Store;
  readonly households: Households;
  readonly now: () => Instant;
  readonly config: Config;
}
