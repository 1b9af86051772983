import { projectFile } from '../../src/project-files.js';
import {
  createVoice,
  type Answer,
  type AroundSpeech,
  type Listener,
  type Say,
  type Value,
} from '../../src/speech/index.js';

export const listener: Listener = {
  length: 'usual',
  rate: 1,
  volume: 'medium',
  whisper: false,
  earcons: false,
};

/** A Wednesday, noon in Chicago. */
export const clock = { now: '2026-11-25T18:00:00.000Z', timeZone: 'America/Chicago' };
export const us: AroundSpeech = { clock, locale: 'en-US', measures: 'us' };
export const gb: AroundSpeech = {
  clock: { now: '2026-11-25T18:00:00.000Z', timeZone: 'Europe/London' },
  locale: 'en-GB',
  measures: 'metric',
};

/** Phrases made for these tests, beside the project's own value phrases. */
const folders = [projectFile('grammars'), projectFile('tests', 'data', 'phrases')];
export const american = createVoice('en-US', { folders });
export const british = createVoice('en-GB', { folders });

export const say = (phrase: string, args: Record<string, Value> = {}): Say => ({ kind: 'say', phrase, args });
export const answer = (...parts: Say[]): Answer => ({ parts });
export const inUs = (value: Value): string => american.valueText(value, us);
export const inGb = (value: Value): string => british.valueText(value, gb);
export const spoken = (...parts: Say[]): string => american.render(answer(...parts), listener, us).text;
