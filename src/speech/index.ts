export type { Answer, Length, Listener, Say, Spoken, Value } from './answer.js';
export { createVoice, PhraseError, type AroundSpeech, type Voice, type VoiceOptions } from './voice.js';
export { EARCON_NAMES, earconsAt, soundOf, type EarconName } from './sounds.js';
export { PhraseFilesError, type PhraseProblem } from './phrase-files.js';
export { listAnswer, moreOfList, type ListAnswerOptions } from './lists.js';
