/** The meaning of an answer, said: as sentences, plain text and SSML. */
import { join } from 'node:path';
import { FluentBundle, FluentResource, type FluentVariable } from '@fluent/bundle';
import type { Clock } from '../terms/dates.js';
import { projectFile } from '../project-files.js';
import type { Answer, Length, Listener, Say, Spoken, Value } from './answer.js';
import { agoForm, dateForm, daysForm, durationForm, monthForm, timeForm, type Form } from './dates.js';
import { english } from './english/language.js';
import { amountCount, type PhraseWords, type SpokenLanguage } from './language.js';
import { quote, unmark } from './marks.js';
import { readPhraseFiles, type PhraseShape } from './phrase-files.js';
import { FUNCTION_NAMES, phraseFunctions, type FunctionContext } from './phrase-functions.js';
import { spanish } from './spanish/language.js';
import { SpokenNumber, SpokenWords } from './spoken-value.js';
import { ssmlDocument, type Earcon, type SsmlSentence } from './ssml.js';
import { wordsOf } from '../terms/quote.js';
import { sentencesOf } from './tidy.js';

/** What the words depend on besides the answer and the listener. */
export interface AroundSpeech {
  readonly clock: Clock;
  /** The household's, BCP 47. Of the voice's language; decides date order and "and" in numbers. */
  readonly locale: string;
  readonly measures: 'us' | 'metric';
}

/** A fault in a phrase or in what was handed to it. */
export class PhraseError extends Error {
  override readonly name = 'PhraseError';
  constructor(
    readonly phrase: string,
    readonly problem: string,
  ) {
    super(`phrase "${phrase}": ${problem}`);
  }
}

export interface VoiceOptions {
  /** What to do with a phrase that is missing or lacks an argument. Default: throw. A service
   *  passes a function that logs; the cook then hears the phrase `phrase-missing` in its place. */
  readonly onProblem?: (error: PhraseError) => void;
  /** Folders holding `<language>/phrases/*.ftl` and `<locale>/phrases/*.ftl`; a later one, and a
   *  locale's over its language's, replaces single messages. Default: the project's `grammars`. */
  readonly folders?: readonly string[];
  /** Sounds by what they announce; none are played unless given here and wanted by the listener. */
  readonly earcons?: Readonly<Partial<Record<NonNullable<Answer['earcon']>, Earcon>>>;
}

export interface Voice {
  readonly locale: string;
  /** Names of all phrases, for checks. */
  readonly phrases: ReadonlySet<string>;
  /** The arguments a phrase takes; true for those it may do without. Null when there is no such phrase. */
  readonly takes: (phrase: string) => ReadonlyMap<string, boolean> | null;
  /** The whole answer. @throws PhraseError unless `onProblem` was given. */
  readonly render: (answer: Answer, listener: Listener, around: AroundSpeech) => Spoken;
  /** One phrase as bare words, without capital or full stop, as it stands inside another. */
  readonly phraseText: (say: Say, around: AroundSpeech, length?: Length) => string;
  /** One value as bare words. */
  readonly valueText: (value: Value, around: AroundSpeech, length?: Length) => string;
}

const listFormats = new Map<string, Intl.ListFormat>();
const listFormat = (locale: string, type: 'conjunction' | 'disjunction'): Intl.ListFormat => {
  const key = `${locale} ${type}`;
  const known = listFormats.get(key) ?? new Intl.ListFormat(locale, { type });
  listFormats.set(key, known);
  return known;
};

const UNTRANSLATED = 'has no wording in this language yet, or something it holds has none';

/** Languages with words of their own here; each has a folder of phrases too. */
const LANGUAGES: ReadonlyMap<string, (phrases: PhraseWords) => SpokenLanguage> = new Map([
  ['en', english],
  ['es', spanish],
]);

/**
 * The voice of one locale. Reads and checks its phrase files: make one and keep it.
 *
 * @throws PhraseFilesError for files that cannot be used, RangeError for a language we do not speak
 */
export const createVoice = (locale: string, options: VoiceOptions = {}): Voice => {
  const canonical = Intl.getCanonicalLocales(locale)[0] ?? 'en';
  const language = new Intl.Locale(canonical).language;
  const makeLanguage = LANGUAGES.get(language);
  if (makeLanguage === undefined)
    throw new RangeError(`no voice for ${locale}; there is ${[...LANGUAGES.keys()].join(', ')}`);
  const folders = options.folders ?? [projectFile('grammars')];
  /** A pattern of the phrase files without arguments, or null: word lists and forms of nouns. */
  const entry: PhraseWords['entry'] = (id, attribute) => {
    const message = bundle.getMessage(id);
    const pattern = attribute === undefined ? message?.value : message?.attributes[attribute];
    return pattern ? bundle.formatPattern(pattern) : null;
  };
  const spokenLanguage = makeLanguage({
    entry,
    words: (id) => (entry(id) ?? '').split(',').map((word) => word.trim()),
  });
  const files = readPhraseFiles(
    folders.flatMap((folder) =>
      [...new Set([language, canonical])].map((name) => join(folder, name, 'phrases')),
    ),
    new Set<string>([...FUNCTION_NAMES, ...Object.keys(spokenLanguage.functions)]),
  );

  let context: FunctionContext | null = null;
  const bundle: FluentBundle = new FluentBundle(canonical, {
    useIsolating: false,
    functions: {
      ...phraseFunctions(() => {
        if (context === null) throw new Error('no phrase is being said');
        return context;
      }),
      ...spokenLanguage.functions,
    },
  });
  for (const body of files.layers)
    bundle.addResource(Object.assign(new FluentResource(''), { body }), { allowOverrides: true });

  const problem = (phrase: string, what: string): string => {
    const error = new PhraseError(phrase, what);
    if (options.onProblem === undefined) throw error;
    options.onProblem(error);
    const fallback = bundle.getMessage('phrase-missing')?.value;
    return fallback ? bundle.formatPattern(fallback) : '';
  };

  /**
   * Whether there is wording for a phrase and all it holds. English is whole; a newer language may
   * not be, and then the whole sentence gives way to `phrase-missing`: never half of each.
   */
  const isWhole = ({ phrase, args }: Say): boolean =>
    language === 'en' || (files.shapes.has(phrase) && Object.values(args ?? {}).every(isWholeValue));
  const isWholeValue = (value: Value): boolean =>
    typeof value !== 'object' ||
    (value.kind === 'say' ? isWhole(value) : value.kind !== 'list' || value.of.every(isWholeValue));

  /** Says things for one household at one moment and one length. */
  const speaker = (around: AroundSpeech, length: Length) => {
    const words = spokenLanguage.as(around.locale);
    const { number } = words;

    const patternOf = (id: string, shape: PhraseShape, attribute?: string) => {
      const message = bundle.getMessage(id);
      const named = attribute ?? (length === 'usual' ? '' : length);
      const where = named !== '' && shape.patterns.has(named) ? named : '';
      return { where, pattern: where === '' ? message?.value : message?.attributes[where] };
    };

    const format = (
      id: string,
      given: Readonly<Record<string, FluentVariable>>,
      attribute?: string,
    ): string => {
      const shape = files.shapes.get(id);
      if (shape === undefined) return problem(id, 'is in no phrase file');
      const { where, pattern } = patternOf(id, shape, attribute);
      if (pattern === null || pattern === undefined) return problem(id, 'says nothing');
      const args: Record<string, FluentVariable> = { ...given };
      for (const [name, optional] of shape.patterns.get(where)?.args ?? []) {
        if (args[name] !== undefined) continue;
        if (!optional) return problem(id, `needs $${name}`);
        args[name] = 'none';
      }
      const errors: Error[] = [];
      const text = bundle.formatPattern(pattern, args, errors);
      const [error] = errors;
      if (error === undefined) return text;
      // A fault further in, of a phrase within this one, keeps its own name.
      if (error instanceof PhraseError) throw error;
      return problem(id, error.message);
    };

    const spell = (form: Form, attribute?: 'on' | 'by'): string => {
      if (form.id === 'span-and') {
        const { first = '', firstNumber = '', second = '', secondNumber = '' } = form.args;
        return format('span-and', {
          first: format(first, { number: firstNumber }),
          second: format(second, { number: secondNumber }),
        });
      }
      return format(form.id, form.args, attribute);
    };

    const listWords = (of: readonly Value[], or: boolean): string => {
      const parts = of.map((one) => valueWords(one)).filter((text) => unmark(text) !== '');
      const [first = '', second = ''] = parts;
      if (parts.length === 0) return format('list-empty', {});
      if (parts.length === 2 && parts.some((part) => words.joint.test(part)))
        return format(or ? 'list-pair-or' : 'list-pair-and', { first, second });
      const joined = listFormat(around.locale, or ? 'disjunction' : 'conjunction');
      const inner = parts.some((part) => part.includes(','));
      // Parts that hold commas are kept apart by a longer pause, and the last has one too.
      return joined
        .formatToParts(parts)
        .map(({ type, value }) => {
          if (type === 'element' || !inner) return value;
          return value.startsWith(',') ? value.replace(',', ';') : `;${value}`;
        })
        .join('');
    };

    const valueWords = (value: Value, attribute?: 'on' | 'by'): string => {
      if (typeof value === 'string') return quote(value);
      if (typeof value === 'number') return number(value);
      switch (value.kind) {
        case 'quote':
          return quote(wordsOf(value));
        case 'amount':
          return words.amount(value.amount);
        case 'date':
          return spell(
            value.monthOnly
              ? monthForm(value.day, around.clock, around.locale, words)
              : dateForm(value.day, around.clock, around.locale, words),
            attribute,
          );
        case 'days':
          return spell(daysForm(value.days, words));
        case 'time':
          return spell(timeForm(value.at, around.clock.timeZone, words));
        case 'ago': {
          const when = agoForm(value.at, around.clock);
          if ('id' in when) return spell(when);
          if ('day' in when) return valueWords({ kind: 'date', day: when.day }, 'on');
          const span = spell(durationForm(when.seconds, words));
          return format(when.ahead ? 'ago-ahead' : 'ago-span', { span });
        }
        case 'duration':
          return spell(durationForm(value.seconds, words));
        case 'temperature':
          return format('temperature', {
            degrees: number(value.degrees),
            count: Math.abs(value.degrees),
            scale: value.scale,
          });
        case 'span':
          return format('span-of', {
            unit: value.unit,
            low: number(value.low),
            high: value.high === value.low ? 'none' : number(value.high),
            count: value.high,
          });
        case 'ordinal':
          return words.ordinal(value.n);
        case 'letters':
          return words.letters(value.text);
        case 'list':
          return listWords(value.of, value.or ?? false);
        case 'say':
          return say(value);
      }
    };

    const countOf = (value: Value): number | null => {
      if (typeof value === 'number') return value;
      if (typeof value !== 'object') return null;
      if (value.kind === 'amount') return amountCount(value.amount);
      if (value.kind === 'days') return value.days;
      if (value.kind === 'span') return value.high;
      if (value.kind === 'temperature') return value.degrees;
      return null;
    };

    const say = (one: Say): string => {
      const shape = files.shapes.get(one.phrase);
      if (shape === undefined) return problem(one.phrase, 'is in no phrase file');
      const { where } = patternOf(one.phrase, shape);
      const wants = shape.patterns.get(where);
      const args: Record<string, FluentVariable> = {};
      for (const [name, value] of Object.entries(one.args ?? {})) {
        if (value === undefined || value === null || !wants?.args.has(name)) continue;
        // Keys hold no spaces: "air fryer" chooses [air-fryer].
        const key = typeof value === 'string' ? value.replaceAll(' ', '-') : '';
        if (wants.keys.get(name)?.has(key)) args[name] = key;
        else {
          const count = countOf(value);
          const text = (): string => valueWords(value);
          args[name] = count === null ? new SpokenWords(value, text) : new SpokenNumber(count, value, text);
        }
      }
      return format(one.phrase, args);
    };

    // One thing is said at a time, start to end: functions called on the way belong to this speaker.
    context = { language: words, words: valueWords, wording: (id, given = {}) => format(id, given) };
    return {
      say: (one: Say) => words.smooth(say(one)),
      valueWords: (value: Value) => words.smooth(valueWords(value)),
      number,
    };
  };

  const spoken = (
    sentences: readonly SsmlSentence[],
    listener: Listener,
    around: AroundSpeech,
    earcon?: Earcon,
  ): Spoken => ({
    ssml: ssmlDocument(sentences, listener, around.locale, listener.earcons ? earcon : undefined),
    text: sentences.map((sentence) => sentence.text).join(' '),
    sentences: sentences.map((sentence) => sentence.text),
  });

  return {
    locale: canonical,
    phrases: new Set(files.shapes.keys()),
    takes: (phrase) => files.shapes.get(phrase)?.patterns.get('')?.args ?? null,
    phraseText: (say, around, length = 'usual') => unmark(speaker(around, length).say(say)),
    valueText: (value, around, length = 'usual') => unmark(speaker(around, length).valueWords(value)),
    render: (answer, listener, around) => {
      const parts = answer.question === undefined ? answer.parts : [...answer.parts, answer.question];
      const sentencesAt = (length: Length): SsmlSentence[] => {
        const { say, number } = speaker(around, length);
        const sentences: SsmlSentence[] = [];
        for (const [i, part] of parts.entries()) {
          const said = sentencesOf(isWhole(part) ? say(part) : problem(part.phrase, UNTRANSLATED), number);
          for (const [j, text] of said.entries()) {
            if (sentences.at(-1)?.text === text) continue;
            const grouped = part.phrase === 'list-group' && i < parts.length - 1 && j === said.length - 1;
            sentences.push(grouped ? { text, pause: true } : { text });
          }
        }
        return sentences;
      };
      const length = answer.length ?? listener.length;
      const wanted = sentencesAt(length);
      // Silence is no answer: what has nothing to say when short is said as usual.
      const sentences = wanted.length === 0 && length !== 'usual' ? sentencesAt('usual') : wanted;
      const earcon = answer.earcon === undefined ? undefined : options.earcons?.[answer.earcon];
      return spoken(sentences, answer.whisper ? { ...listener, whisper: true } : listener, around, earcon);
    },
  };
};
