/** One act with what only the words around its parts told of them, each as a field of its own. */
import type { PersonMention } from '../protocol/mentions.js';
import type { Act, HearingContext, Mention, Slots } from './intents.js';
import {
  cautionAlone,
  isDefinite,
  isMetric,
  isOneOf,
  messageAlone,
  personPointed,
  pointedAway,
  regionIn,
  stepCalled,
} from './name-words.js';
import { placeOf, wordsIn, writtenIn } from './words/as-heard.js';

/** As it was written where it was heard so, for what is kept in her own words: "for Auntie". */
const asWritten = (words: string, heard: string): string => {
  const at = heard.toLowerCase().indexOf(words.toLowerCase());
  return at < 0 ? words : heard.slice(at, at + words.length);
};

/** All that follows the name of whom a message is for, where the message stands in that. */
const messageFor = (words: string, { words: name }: PersonMention, heard: string, locale: string): string => {
  const text = heard.toLowerCase();
  const at = text.indexOf(name.toLowerCase());
  const after = at < 0 ? '' : messageAlone(text.slice(at + name.length), locale);
  return after.includes(words.toLowerCase()) ? after : words;
};

const isMention = (value: object): value is Mention =>
  'candidates' in value && 'pointer' in value && 'touch' in value;

/** "The milk", "the beef one": what stands before and after the words of each thing, however deep it is in the meaning. */
const withArticles = <T>(value: T, said: ReturnType<typeof writtenIn>, locale: string): T => {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map((one: unknown) => withArticles(one, said, locale)) as T;
  // Sets of facts hold no things.
  if (Object.getPrototypeOf(value) !== Object.prototype) return value;
  const parts = Object.fromEntries(
    Object.entries(value).map(([key, part]) => [key, withArticles(part as unknown, said, locale)]),
  ) as T & object;
  if (!isMention(parts) || parts.words === null) return parts;
  const words = wordsIn(parts.words);
  const at = placeOf(
    words,
    said.map(({ word }) => word),
  );
  if (at === null) return parts;
  const before = (many: number): string | undefined =>
    said.slice(Math.max(0, at - many), at).some(({ pause }) => pause) ? undefined : said[at - many]?.word;
  const last = said[at + words.length - 1];
  return {
    ...parts,
    // One word may stand between: "the oat milk".
    ...(isDefinite(before(1), locale) || isDefinite(before(2), locale) ? { definite: true } : {}),
    ...(last?.pause === false && isOneOf(said[at + words.length]?.word, locale) ? { oneOf: true } : {}),
  };
};

const pointing = (person: PersonMention, locale: string): PersonMention => {
  const points = person.points ?? personPointed(person.words, locale);
  return points ? { ...person, points } : person;
};

const withPeople = ({ person, statements, ...slots }: Slots, locale: string): Slots => ({
  ...slots,
  ...(person ? { person: pointing(person, locale) } : {}),
  ...(statements
    ? {
        statements: statements.map((one) =>
          one.owner ? { ...one, owner: pointing(one.owner, locale) } : one,
        ),
      }
    : {}),
});

/** What the words of this one kind of act say. */
const ofIts = (
  { intent, slots }: Act,
  heard: string,
  { locale, stepNames, expecting }: HearingContext,
): Slots => {
  const { words, item, person, caution, asked } = slots;
  switch (intent) {
    case 'answer': {
      const name = words ?? slots.maker ?? item?.words ?? null;
      const points = name === null || person ? null : personPointed(name, locale);
      return {
        ...slots,
        ...(words === undefined ? {} : { written: asWritten(words, heard) }),
        // "For me", to whom it is for.
        ...(points && name !== null && expecting === 'person'
          ? { person: { words: name, candidates: [], points } }
          : {}),
      };
    }
    case 'define-dots':
      return words === undefined ? slots : { ...slots, written: asWritten(words, heard) };
    case 'leave-note':
      // Heard apart from what stands before it, it is the message already.
      return words === undefined || !person || asked === 'alone'
        ? slots
        : { ...slots, words: messageFor(words, person, heard, locale) };
    case 'amend':
      return caution === undefined
        ? slots
        : { ...slots, caution: cautionAlone(caution, item?.words ?? null, locale) };
    case 'set-reminder': {
      const around = words === undefined || !item?.pointer ? null : pointedAway(words, locale);
      return around ? { ...slots, aroundThing: around } : slots;
    }
    case 'set-household': {
      const named = words ?? asked;
      const region = named === undefined ? null : regionIn(named, locale);
      return {
        ...slots,
        ...(region ? { region } : {}),
        ...(words !== undefined && isMetric(words, locale) ? { metric: true } : {}),
      };
    }
    case 'skip-to': {
      const called = words ?? slots.method ?? item?.words ?? '';
      const at =
        slots.ordinal === undefined && slots.number === undefined
          ? stepCalled(called, stepNames ?? [], locale)
          : null;
      return at === null ? slots : { ...slots, ordinal: at };
    }
    case 'done': {
      const into = slots.method === undefined ? null : stepCalled(slots.method, stepNames ?? [], locale);
      return into === null || into < 1 ? slots : { ...slots, into };
    }
    default:
      return slots;
  }
};

/** @param heard the words this reading is of. */
export const asToldIn = (act: Act, heard: string, context: HearingContext): Act => ({
  ...act,
  slots: withArticles(
    withPeople(ofIts(act, heard, context), context.locale),
    writtenIn(heard),
    context.locale,
  ),
});
