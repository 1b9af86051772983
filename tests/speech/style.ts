/**
 * Whether words read well aloud to somebody who does not see: for tests of phrases,
 * conversations and summaries.
 */
import { readFileSync } from 'node:fs';
import { projectFile } from '../../src/project-files.js';
import type { Length } from '../../src/speech/index.js';

export interface StyleOptions {
  readonly length: Length;
  /** A list or a step of a procedure may be long; an answer may not. */
  readonly kind: 'answer' | 'list' | 'step';
  /** Names and words of the household, which keep their own spelling: not looked at. */
  readonly own?: readonly string[];
}

const MOST_WORDS = 25;

const sightWords = readFileSync(projectFile('tests', 'speech', 'sight-words.txt'), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => new RegExp(`(?<![\\p{L}-])(?:${line})(?![\\p{L}-])`, 'iu'));

const wordsOf = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{N}'’-]+/gu) ?? [];

/** A run of this many words that comes twice is something said twice. */
const RUN = 6;

/** What is wrong with an answer's style, in plain words; none when it reads well. */
export const styleProblems = (text: string, { length, kind, own = [] }: StyleOptions): string[] => {
  const problems: string[] = [];
  const ours = [...own]
    .sort((a, b) => b.length - a.length)
    .filter((name) => name.trim() !== '')
    .reduce(
      (rest, name) =>
        rest.replaceAll(new RegExp(name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'), 'giu'), 'something'),
      text,
    );

  const digits = /\S*\d\S*/u.exec(ours)?.[0];
  if (digits !== undefined) problems.push(`digits: ${digits}`);
  for (const word of sightWords) {
    const found = word.exec(ours)?.[0];
    if (found !== undefined) problems.push(`leans on sight: ${found}`);
  }
  const safe = /\bsafe(?:ly)?\b/i.exec(ours)?.[0];
  if (safe !== undefined) problems.push(`promises: ${safe}`);

  const words = wordsOf(text);
  if (kind === 'answer' && length !== 'full' && words.length > MOST_WORDS)
    problems.push(`${words.length} words, more than ${MOST_WORDS}`);

  const sentences = text.split(/(?<=[.?!])\s+/).map((sentence) => sentence.toLowerCase());
  const twice = sentences.find((sentence, i) => sentence !== '' && sentences.indexOf(sentence) !== i);
  if (twice !== undefined) problems.push(`said twice: ${twice}`);
  else if (kind === 'answer') {
    const runs = new Set<string>();
    for (let i = 0; i + RUN <= words.length; i++) {
      const run = words.slice(i, i + RUN).join(' ');
      if (runs.has(run)) problems.push(`said twice: ${run}`);
      runs.add(run);
    }
  }

  if (/ {2}|\s[,.;?!](?:\s|$)|[,;][,;]|\.\.(?!\.)/u.test(text)) problems.push('spaces or stops out of place');
  if (text !== '' && !/[.?!…]["'”’)]*$/u.test(text)) problems.push('no end mark');
  if (/[{}]|undefined|\bnull\b|\bNaN\b|\[object/u.test(text)) problems.push('something was not filled in');
  return problems;
};

/** What an answer is, for the check: a step, a list of things, or one answer. */
export const kindOfReply = (text: string, expects: string): StyleOptions['kind'] => {
  if (expects === 'step') return 'step';
  const sentences = text.split(/(?<=[.?!])\s+/);
  const listed = sentences.some((sentence) => /;|(?:,[^,]+){2}/.test(sentence));
  // Things told each in a sentence of its own, after their number or by their names.
  const counted =
    /^(?:yes, )?(?:two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|\w+ty(?:-\w+)?)\.$|\b(?:of them|things|fit|have (?:one|no)|are said to)\b/i.test(
      sentences[0] ?? '',
    );
  const entries = sentences.filter((sentence) => /^[^:]+:/.test(sentence)).length;
  return listed || counted || entries > 2 ? 'list' : 'answer';
};
