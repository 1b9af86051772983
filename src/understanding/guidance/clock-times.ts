/** Times of day: since when something is so, and until when. */
import type { GuidanceFacts } from './facts.js';
import { figures } from './figures.js';
import { isWord, spotsOf, type Sentence } from './sentence.js';
import { matchesIn } from './spots.js';

/** "Since about two": rough words stand between, and the hour is the hour. */
const leadOf = (sentence: Sentence, from: number): number => {
  let at = from - 1;
  while (isWord(sentence, 'hedge', sentence.tokens[at])) at -= 1;
  return at;
};

/** A bare "one" to "twelve" after "at", "since": an hour of the clock where nothing is counted by it. */
const hoursOfDay = 12;

interface ClockTime {
  readonly from: number;
  readonly value: string;
  /** "Till midnight", "found at noon": the end of something. */
  readonly ends: boolean;
}

export const timesIn = (sentence: Sentence): readonly ClockTime[] => {
  const { tokens, rules } = sentence;
  // "At ten" is a time where it is no ten of anything; "at ten, can she" counts no cans.
  const counted = ['amount', 'temperature', 'duration'].flatMap((rule) =>
    matchesIn(tokens, rules, `builtin:grammar/${rule}`, 0.5).filter(
      ({ to }) => !isWord(sentence, 'aux', tokens[to - 1]),
    ),
  );
  const free = ({ from, to }: { from: number; to: number }): boolean =>
    !counted.some((one) => one.from < to && from < one.to);
  const led = (from: number): boolean =>
    isWord(sentence, 'fromtime', tokens[leadOf(sentence, from)]) ||
    isWord(sentence, 'totime', tokens[leadOf(sentence, from)]);
  const read = (from: number): boolean => spotsOf(sentence, 'reads').some(({ to }) => to === from);
  const said = matchesIn(tokens, rules, 'builtin:grammar/time?lean=past').flatMap(
    ({ from, to, value, weight }) =>
      (led(from) || isWord(sentence, 'fromtime', tokens[from])) &&
      typeof value === 'string' &&
      !read(from) &&
      (weight >= 0.5 || free({ from, to }))
        ? [{ from, to, value }]
        : [],
  );
  const bare = figures(sentence).flatMap(({ from, to, value }) => {
    const hour = value >= 1 && value <= hoursOfDay && Number.isInteger(value) && led(from) && !read(from);
    const alone = hour && free({ from, to }) && !said.some((one) => one.from < to && from < one.to);
    return alone ? [{ from, to, value: `${String(value).padStart(2, '0')}:00` }] : [];
  });
  return [...said, ...bare]
    .sort((a, b) => a.from - b.from)
    .map(({ from, value }) => ({
      from,
      value,
      ends:
        isWord(sentence, 'totime', tokens[leadOf(sentence, from)]) ||
        spotsOf(sentence, 'ended').some(({ to }) => to <= from && from - to <= wordsBetween),
    }));
};

/** "Made at ten and she started it at twenty past eleven": since when it is so, until when, and since when it is drunk from. */
export const clockTimesIn = (sentence: Sentence): Pick<GuidanceFacts, 'since' | 'until' | 'feedSince'> => {
  const said = timesIn(sentence);
  const ofFeed = said.find(({ from }) =>
    spotsOf(sentence, 'feed').some(({ to }) => to <= from && from - to <= wordsBetween),
  );
  const others = said.filter((one) => one !== ofFeed);
  const since = others.find(({ ends }) => !ends);
  return {
    since: since?.value ?? null,
    until: others.find(({ ends }) => ends)?.value ?? null,
    feedSince: ofFeed?.value ?? null,
  };
};
/** "Started it at": so many words at most between a deed and its time. */
const wordsBetween = 3;
