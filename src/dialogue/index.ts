/** The conversation: what was heard and what was said before, to changes and an answer. Pure. */
export type { Conversation, Decide, Effect, Heard, Outcome, Speaker, Surroundings } from './api.js';
export { afterTelling, interruption } from './news/interrupting.js';
export { checkAtHand, standingAt } from './sessions/session.js';
export { dishesTold, stepNames, stepsAtHand } from './talk/ask-step.js';
export { picksUp } from './talk/resume.js';
export { answeredJustNow, justDone, listAtHand, talkedOf, toldJustNow } from './turn/just-done.js';
export { decide } from './decide.js';
export { decideMoves } from './moves.js';
export type { DecidedMove, SaidMove } from './moves.js';
export { lessonKitchenNow } from './lessons/now.js';
export { sharedLessons, type SharedLessons } from './lessons/sharing.js';
export { startConversation } from './state.js';
