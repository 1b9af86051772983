/**
 * Property tests draw the same cases each time, so that a change is judged by what it changes.
 * `PROPERTY_SEED=7 PROPERTY_RUNS=20 npm test` draws others, and twenty of each where a test does not say how many.
 */
import fc from 'fast-check';

const { PROPERTY_SEED, PROPERTY_RUNS } = process.env;
fc.configureGlobal({
  seed: Number(PROPERTY_SEED ?? 20_261_125),
  ...(PROPERTY_RUNS ? { numRuns: Number(PROPERTY_RUNS) } : {}),
});
