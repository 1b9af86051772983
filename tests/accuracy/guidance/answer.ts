/** What a spoken answer says, as figures and verdicts: read from any wording, so that no phrase is the judge's. */
import { parseSpokenNumber } from './numbers.js';

export interface Figure {
  readonly low: number;
  readonly high: number;
  readonly unit: Unit;
}
export type Unit = 'minutes' | 'hours' | 'days' | 'weeks' | 'months' | 'years' | 'fahrenheit' | 'celsius';

/** What an answer lets the cook do: go on, or not, or neither. */
export type Said =
  /** Eat, keep, refreeze, hot enough: leave is given. */
  | 'go'
  /** Throw it out, past guidance. */
  | 'stop'
  /** Not yet: more heat, more rest, cook first. */
  | 'not-yet'
  /** Not advised, though nothing is thrown out for it. */
  | 'rather-not'
  /** Past its best, and no more than that. */
  | 'quality'
  | 'last-day'
  /** Into the fridge now. */
  | 'cool-now'
  /** Nobody can say; when in doubt, out. */
  | 'unknown'
  | 'clinician';

export interface AnswerRead {
  readonly figures: readonly Figure[];
  readonly said: ReadonlySet<Said>;
  readonly text: string;
}

const UNITS: readonly (readonly [RegExp, Unit])[] = [
  [/^minutes?$/u, 'minutes'],
  [/^hours?$/u, 'hours'],
  [/^days?$/u, 'days'],
  [/^weeks?$/u, 'weeks'],
  [/^months?$/u, 'months'],
  [/^years?$/u, 'years'],
  [/^(degrees|fahrenheit)$/u, 'fahrenheit'],
];

const unitOf = (words: readonly string[], at: number): Unit | null => {
  const word = words[at] ?? '';
  const found = UNITS.find(([pattern]) => pattern.test(word))?.[1] ?? null;
  return found === 'fahrenheit' && /celsius/u.test(words[at + 1] ?? '') ? 'celsius' : found;
};

/** Every "three to four days", "one week", "a hundred sixty-five degrees". */
const figuresIn = (text: string): Figure[] => {
  const words = text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s-]/gu, ' ')
    .replace(/-/gu, ' ')
    .split(/\s+/u)
    .filter((word) => word !== '');
  const found: Figure[] = [];
  for (let at = 0; at < words.length; at += 1) {
    const first = parseSpokenNumber(words, at);
    if (!first) continue;
    let end = first.end;
    let high = first.value;
    // "Three to four days", "four days to five days".
    const between = unitOf(words, end) ? end + 1 : end;
    if (words[between] === 'to' || words[between] === 'or') {
      const second = parseSpokenNumber(words, between + 1);
      if (second) {
        high = second.value;
        end = second.end;
      }
    }
    let unit = unitOf(words, end);
    let low = first.value;
    // "An hour and a half", "two and a half hours".
    if (unit && words.slice(end + 1, end + 4).join(' ') === 'and a half') {
      low += 0.5;
      high += 0.5;
    }
    if (!unit && words.slice(end, end + 3).join(' ') === 'and a half') {
      unit = unitOf(words, end + 3);
      low += 0.5;
      high += 0.5;
    }
    if (unit) found.push({ low, high, unit });
    at = Math.max(at, end - 1);
  }
  return found;
};

const SAID: readonly (readonly [Said, RegExp])[] = [
  ['clinician', /\b(doctor|clinician|pharmacist|dietitian|emergency services|poison)\b/u],
  ['unknown', /\b(cannot say|can't say|nobody knows|unknown|not known|no figure|in doubt)\b/u],
  [
    'stop',
    /\b(throw (it|them|the|that|out|away)|thrown out|past guidance|discard|do not (eat|use|taste|drink)|should not (eat|drink)|not to be eaten|fails?\b|never use)/u,
  ],
  [
    'not-yet',
    /\b(not yet|cook (it|them|the|that)\b.*\bfirst|not enough|one minute more|too warm|rolling boil|not hot enough|heat (it|them|cold cuts) (until|to)|only then|not ready|only cooked|more minutes?)\b/u,
  ],
  [
    'rather-not',
    /\b(rather not|^no[:,]|guidance says never|not to freeze|does not freeze well|do not freeze|no, do not|not recommended|never (re)?freeze|too slowly for reheating|do not (reheat|microwave|warm)|not (be )?reheated|not for freezing|best not frozen)\b/u,
  ],
  ['quality', /\b(past (its|their|the) best|best (quality|for taste)|taste and texture|for quality)\b/u],
  [
    'last-day',
    /\b(last day|use (it|them) (up )?today|today at the latest|by today|only today|until today)\b/u,
  ],
  ['cool-now', /\bin the fridge now\b|\brefrigerate (it )?now\b|\bback (in|to) the fridge now\b/u],
  [
    'go',
    /\b(within guidance|yes\b(?! or no)|may (still )?be (frozen|refrozen|eaten|kept|finished)|hot enough by|is hot enough|cold enough|keep (it|them|the)\b|keeps? (at|in|for)\b|still (good|fine)|is ready|freeze it again|refreeze|passes|still keeps|use by|best until|up to)/u,
  ],
];

/** @param text What was spoken. */
export const readAnswer = (text: string): AnswerRead => {
  const plain = text.toLowerCase().replace(/[’]/gu, "'");
  // "When in doubt, throw it out" is said of anything, and throws nothing out by itself.
  const verdicts = plain.replace(/(when )?in doubt, [^.]*\./gu, 'in doubt.');
  return {
    figures: figuresIn(plain),
    said: new Set(SAID.filter(([, pattern]) => pattern.test(verdicts)).map(([said]) => said)),
    text: plain,
  };
};
