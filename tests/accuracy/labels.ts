/** What the labels of other people's data mean in our intents. */
import type { Intent } from '../../src/understanding/index.js';

/** Labels of the CLINC150 data that are ours, and the intents that answer them sensibly. */
export const clincLabels: Readonly<Record<string, readonly Intent[]>> = {
  food_last: ['keeps', 'guidance', 'item-date', 'how-old', 'use-first', 'left-out'],
  shopping_list: ['buy-read'],
  shopping_list_update: ['buy-add', 'buy-remove', 'buy-read', 'buy-clear'],
  repeat: ['repeat', 'what-heard'],
  yes: ['yes'],
  no: ['no', 'correct'],
  maybe: ['maybe'],
  cancel: ['cancel', 'stop', 'undo', 'wait', 'back'],
  change_speed: ['slower', 'faster'],
  what_can_i_ask_you: ['help'],
  thank_you: ['thanks'],
  greeting: ['greeting'],
  goodbye: ['goodbye'],
};

/** In part ours: a cooking time is answered with the temperature to reach, or declined. Not counted either way. */
export const clincInPart: Readonly<Record<string, readonly Intent[]>> = {
  cook_time: ['cook-temperature', 'reheat'],
};

/** Not ours by the rule, though a kitchen needs some of their sentences: told apart in the report. */
export const clincNear: ReadonlySet<string> = new Set([
  'timer',
  'alarm',
  'reminder',
  'reminder_update',
  'change_volume',
  'whisper_mode',
]);
