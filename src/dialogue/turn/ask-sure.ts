/** Heard, but not surely enough for a change: it is said back, for a yes or no. */
import type { Act } from '../../understanding/intents.js';
import { type Reply, say } from '../handler.js';
import type { Frame } from '../state.js';
import type { Work } from './work.js';

/** @param reply what doing it would come to. */
export const sureFrame = (work: Work, act: Act, reply: Reply): Frame => ({
  kind: 'sure',
  slot: 'sure',
  question: reply.confirm ?? reply.doubt ?? say('doubt-heard', { heard: work.beside?.quote ?? '' }),
  expecting: 'yes-no',
  act,
  picked: {},
  asked: 1,
  doubted: 'first',
  ...(work.runnerUp ? { runnerUp: work.runnerUp } : {}),
});
