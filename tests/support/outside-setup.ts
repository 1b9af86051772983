/** Says once, before the tests, which checks are left out for want of other people's sets. */
import { missingOutside, OUTSIDE_SETS, requireNamedOutside } from './outside.js';

export const setup = (): void => {
  requireNamedOutside();
  const missing = missingOutside();
  if (missing.length > 0)
    console.log(
      `Skipped: the checks on sets that are not ours to hand on: ${missing.map((set) => `${set}: ${OUTSIDE_SETS[set]}`).join('; ')}. TELLSHELF_OUTSIDE names a folder that holds them.`,
    );
};
