/**
 * "Hi, it's Odile, I'm back from the store": who speaks, said before anything else. It is no part of what is asked or
 * told after it, and is left away before that is heard.
 */
import { rulesFor } from './grammar-files.js';
import type { HearingContext, Hypothesis } from './intents.js';
import { lengthAt, past, settlingWords } from './moves/settling.js';
import type { HouseholdNames } from './names/api.js';
import { lexiconFor, normalise } from './words/index.js';

/** Nobody says who they are in more words. */
const longest = 7;

const withoutIt = (text: string, names: HouseholdNames, context: HearingContext): string => {
  const { language } = lexiconFor(context.locale);
  const words = settlingWords(language);
  const spoken = text.split(/\s+/u);
  if (!words) return text;
  const people = rulesFor(names, context.locale, context).get('kitchen:person');
  const isName = (tokens: readonly string[], from: number, to: number): boolean =>
    (people?.matchesAt(tokens, from) ?? []).some(({ length }) => from + length === to);
  const introduces = (tokens: readonly string[]): boolean => {
    const from = past(words.greets, tokens, 0);
    const lead = lengthAt(words.introduces, tokens, from);
    for (let to = from + lead + 1; to <= tokens.length; to += 1)
      if (isName(tokens, from + lead, to)) {
        const end = past(words.here, tokens, to);
        return end === tokens.length && (lead > 0 || end > to);
      }
    return false;
  };
  for (let many = Math.min(longest, spoken.length - 1); many > 0; many -= 1) {
    if (!/[,.;:!]$/u.test(spoken[many - 1]!)) continue;
    if (introduces(normalise(spoken.slice(0, many).join(' '), context.locale).tokens))
      return spoken.slice(many).join(' ');
  }
  return text;
};

/** Each guess without who speaks; as it was where nothing else is said. */
export const withoutIntroduction = (
  hypotheses: readonly Hypothesis[],
  names: HouseholdNames,
  context: HearingContext,
): readonly Hypothesis[] => hypotheses.map((one) => ({ ...one, text: withoutIt(one.text, names, context) }));
