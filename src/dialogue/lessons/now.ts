/** The lesson kitchen as a conversation has it by now; null where no lesson goes on. */
import type { Kitchen } from '../../kitchen/model.js';
import type { Conversation, Surroundings } from '../api.js';
import { stateOf } from '../state.js';
import { practised } from '../turn/work.js';

export const lessonKitchenNow = (conversation: Conversation, around: Surroundings): Kitchen | null => {
  const state = stateOf(conversation);
  return state.practice?.lesson ? practised(state, around).kitchen : null;
};
