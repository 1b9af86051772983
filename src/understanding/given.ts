/**
 * What dialogue is given of what was understood: the same, with everything that only the words told made into fields,
 * and the words themselves left out but to be said back. Nothing is decided here.
 */
import type { Beside, Named } from '../protocol/beside.js';
import { quote } from '../terms/quote.js';
import type { Expectation, HearingContext, Understanding, Understood } from './intents.js';
import { asToldIn } from './as-told.js';
import { isFiller, regionIn } from './name-words.js';
import type { HouseholdNames } from './names/api.js';
import { wordsIn } from './words/as-heard.js';

/** What is asked for then may be a name or words of her own. */
const takesAny: ReadonlySet<Expectation> = new Set<Expectation>(['words', 'name']);

const namedIn = (text: string, names: HouseholdNames, context: HearingContext): readonly Named[] => {
  const { locale, clocks = [] } = context;
  const words = wordsIn(text);
  const saying = words.flatMap((word, at) => (isFiller(word, locale) ? [] : [at]));
  const alone = (at: readonly number[]): boolean => saying.every((one) => at.includes(one));
  const running = clocks.flatMap(({ id, label }): Named[] => {
    const called = wordsIn(label);
    const at = words.flatMap((word, place) => (called.includes(word) ? [place] : []));
    if (id === undefined || at.length === 0) return [];
    const whole = called.every((word) => words.includes(word));
    return [{ kind: 'clock', id, at, whole, alone: alone(at) }];
  });
  return [...names.named(words).map((one) => ({ ...one, alone: alone(one.at) })), ...running];
};

const besideIn = (text: string, names: HouseholdNames, context: HearingContext): Beside => {
  const spoken = ` ${wordsIn(text).join(' ')} `;
  return {
    quote: quote(text),
    named: namedIn(text, names, context),
    free: takesAny.has(context.expecting) ? text : null,
    region: regionIn(text, context.locale),
    meanings: (context.meanings ?? []).filter((meaning) =>
      spoken.includes(` ${wordsIn(meaning).join(' ')} `),
    ),
  };
};

/**
 * @param said what was understood, as the recogniser's best guess has it.
 * @param names the household's index, as it was when this was heard.
 */
export const given = (
  { said: answer, readings, left, settles, question, ...heeded }: Understanding,
  said: string,
  names: HouseholdNames,
  context: HearingContext,
): Understood => {
  const text = answer ?? readings[0]?.heard ?? said;
  const guesses = [...new Set(readings.map(({ heard }) => heard))];
  return {
    ...heeded,
    ...(text === '' ? {} : { beside: besideIn(text, names, context) }),
    ...(left?.length ? { left: quote(left.join(', ')) } : {}),
    ...(question
      ? { question: { ...question, acts: question.acts.map((act) => asToldIn(act, text, context)) } }
      : {}),
    readings: readings.map(({ heard, normalised: _normalised, acts, ...reading }) => ({
      ...reading,
      acts: acts.map((act) => asToldIn(act, heard, context)),
      guess: guesses.indexOf(heard),
    })),
    ...(settles ? { settles: settled(settles, names, context) } : {}),
  };
};

const settled = (
  { said, rest, ...settles }: NonNullable<Understanding['settles']>,
  names: HouseholdNames,
  context: HearingContext,
): NonNullable<Understood['settles']> => {
  const { expecting: _settled, ...free } = context;
  return { ...settles, rest: given(rest, said, names, { ...free, expecting: 'anything' }) };
};
