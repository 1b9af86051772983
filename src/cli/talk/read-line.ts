/**
 * One line of a terminal conversation. Words are an utterance. Lines that begin with `!` stand
 * for what a keyboard cannot do:
 *
 *   !touch CODE [words]   the marker with that code was touched, perhaps while saying the words;
 *                         a code with spaces in double quotes
 *   !cut MARK [words]     the answer was cut off at that SSML mark (s1, s2 …), perhaps by the words
 *   !heard A | B | C      the recogniser's guesses, best first
 *   !at 2026-05-14T18:30  hold the clock at that household time
 */
import type { TurnRequest } from '../../../shared/wire/turn.js';

export type Line =
  | { readonly kind: 'turn'; readonly turn: Pick<TurnRequest, 'hypotheses' | 'touched' | 'cutAt'> }
  | { readonly kind: 'at'; readonly wall: string }
  | { readonly kind: 'unknown'; readonly why: string };

const guesses = (words: string): TurnRequest['hypotheses'] => {
  const text = words.trim();
  return text === '' ? [] : [{ text }];
};

const COMMAND = /^!(\w+)\s*(?:"([^"]*)"|(\S*))\s*(.*)$/su;

export const readLine = (line: string): Line => {
  if (!line.startsWith('!')) return { kind: 'turn', turn: { hypotheses: guesses(line) } };
  const [, name, quoted, bare = '', rest = ''] = COMMAND.exec(line) ?? [];
  const first = quoted ?? bare;
  switch (name) {
    case 'touch':
      if (first === '') return { kind: 'unknown', why: 'Say which code: !touch CODE.' };
      return { kind: 'turn', turn: { touched: first, hypotheses: guesses(rest) } };
    case 'cut':
      if (first === '') return { kind: 'unknown', why: 'Say which mark: !cut s2.' };
      return { kind: 'turn', turn: { cutAt: first, hypotheses: guesses(rest) } };
    case 'heard':
      return { kind: 'turn', turn: { hypotheses: `${first} ${rest}`.split('|').flatMap(guesses) } };
    case 'at':
      return { kind: 'at', wall: first };
    default:
      return { kind: 'unknown', why: 'Lines with ! are: !touch CODE, !cut MARK, !heard A | B, !at TIME.' };
  }
};
