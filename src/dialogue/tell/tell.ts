import { type Handler, say } from '../handler.js';

/** What was told is carried out statement by statement (`runAct` in `turn/work.ts`); told without any, there is nothing to do. */
export const tell: Handler = () => ({ parts: [say('nothing-told')] });
