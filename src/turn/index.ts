/** Turns: what a transport hands in, and the reply it gets back. */
export {
  createHouseholds,
  type BuildChange,
  type ChangeResult,
  type Committed,
  type Households,
  type HouseholdsOptions,
  type Look,
  type TurnSpeaker,
} from './households.js';
export { CODE_LIVES_MS, inTenMinutes, knockedOn } from './waiting-devices.js';
export type { Surroundings } from '../dialogue/api.js';
export type { SharedLessons } from '../dialogue/index.js';
export type { SpanFacts, SpanName, Tracing } from './tracing.js';
export type { WhyMove } from './why.js';
export type { TurnFault } from './unforeseen.js';
export { TurnProblem, type TurnProblemCode } from './problems.js';
export { changesMade } from './reply.js';
export { createTongues, type Tongue, type Tongues } from './tongues.js';
