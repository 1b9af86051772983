/** One sentence as the guidance ear reads it: its words, and what stands where. */
import type { DynamicRules } from '../../grammar/api.js';
import type { Clock } from '../../terms/dates.js';
import { asNamed, namedMention } from '../meaning-parts.js';
import { itMention, type Mention } from '../intents.js';
import { classAt, movesLexicon, type MovesLexicon } from '../moves/lexicon.js';
import { asMeant } from './by-sound.js';
import type { Mood } from './facts.js';
import { apart, guidanceWords } from './lexicon.js';
import { matchesIn, spotsIn, type Match, type Spot } from './spots.js';

export interface Sentence {
  readonly tokens: readonly string[];
  readonly rules: DynamicRules;
  readonly spots: readonly Spot[];
  readonly language: string;
  readonly clock: Clock;
}

export const sentenceOf = (
  said: readonly string[],
  rules: DynamicRules,
  language: string,
  clock: Clock,
): Sentence => {
  const tokens = asMeant(apartBut(said, rules), rules, language);
  const spots = spotsIn(tokens, language).filter(
    (spot) =>
      !isAuxiliary(tokens, spot) &&
      !isJoint(tokens, spot, language) &&
      !namesAppliance(tokens, spot, language),
  );
  const sentence: Sentence = { tokens, rules, language, clock, spots };
  const standing = standingIn(sentence);
  // What a body does whenever it has some food is no trouble now.
  const kept = spots.filter(
    (spot) => !trouble.has(spot.kind) || !standing.some((one) => one.from <= spot.from && spot.to <= one.to),
  );
  return { ...sentence, spots: [...kept, ...partedOut(sentence), ...standing] };
};

/** "The garage freezer", "the porch fridge": what stands there is cold, and that is its name. */
const namesAppliance = (tokens: readonly string[], { kind, value, to }: Spot, language: string): boolean => {
  if (kind !== 'at' || value !== 'counter') return false;
  const of = (name: string): boolean => guidanceWords(language, name).has(tokens[to] ?? '');
  return of('fridgename') || of('freezername');
};

const trouble: ReadonlySet<string> = new Set(['emergency', 'symptom', 'ill', 'damage']);

/** "Any", "the", "her lips": at most so many words stand within what is told of a standing reaction. */
const withinReaction = 3;

/**
 * "Gets hives from sesame", "swells up if she has prawns", "egg brings him out in a rash": what happens every time
 * is an allergy. What is happening ("she's got hives", "his lips are swelling", "now", "just") never is.
 */
const standingIn = (sentence: Sentence): readonly Spot[] => {
  const { tokens } = sentence;
  const eaten = spotsOf(sentence, 'allergen');
  const food = (at: number): boolean => eaten.some(({ from }) => from >= at && from - at <= withinReaction);
  const reacts = [...spotsOf(sentence, 'reacts'), ...spotsOf(sentence, 'reactsalone')];
  return reacts.flatMap((one): readonly Spot[] => {
    if (
      sentence.tokens
        .slice(Math.max(0, one.from - 1), one.from)
        .some((word) => isWord(sentence, 'beingnow', word))
    )
      return [];
    const shown = spotsOf(sentence, 'reaction').find(
      ({ from }) => from >= one.to && from - one.to <= withinReaction,
    );
    const to = one.kind === 'reactsalone' ? one.to : shown?.to;
    if (to === undefined) return [];
    const sets = spotsOf(sentence, 'setsoff').find(({ from }) => from >= to && from - to <= 1);
    if (sets && food(sets.to)) return [{ kind: 'allergy', value: '', from: one.from, to: sets.to }];
    const before = eaten.some((spot) => spot.to <= one.from && one.from - spot.to <= 1);
    const brings = isWord(sentence, 'brings', tokens[one.from]);
    return before && brings ? [{ kind: 'allergy', value: '', from: one.from, to }] : [];
  });
};

const wholeName = 0.95;

/** Names of hers, word for word, whoever made them left out of it: "the shepherd's pie". */
export const wholeNamesIn = (
  tokens: readonly string[],
  rules: DynamicRules,
): readonly { readonly from: number; readonly to: number; readonly words: string }[] =>
  tokens.flatMap((_, from) => {
    const to = Math.max(
      from,
      ...(rules.get('kitchen:item')?.matchesAt(tokens, from) ?? []).map(({ length, value }) => {
        const { candidates, maker } = namedMention(value);
        return maker === null && (candidates[0]?.fit ?? 0) >= wholeName ? from + length : from;
      }),
    );
    return to > from ? [{ from, to, words: tokens.slice(from, to).join(' ') }] : [];
  });

/** "Shepherd's pie", where there is one here, is one name; all else is parted. */
const apartBut = (said: readonly string[], rules: DynamicRules): readonly string[] => {
  const owned = said.some((word) => /['’]s$/.test(word));
  const names = owned ? wholeNamesIn(said, rules).filter(({ from, to }) => to - from > 1) : [];
  return said.flatMap((word, at) =>
    names.some(({ from, to }) => from <= at && at < to) ? [word] : apart([word]),
  );
};

/** "Leave the stew out", the food between the two: it stands out as surely as "left out" says it. */
const partedOut = (sentence: Sentence): readonly Spot[] => {
  const { tokens } = sentence;
  // What was taken out may thaw or be cooked; where it is asked whether it is still good, it stood out.
  const judged = spotsOf(sentence, 'ask').some(({ value }) => value === 'still');
  const leaves = tokens.flatMap((word, at) =>
    isWord(sentence, 'leaves', word) || (judged && isWord(sentence, 'takes', word)) ? [at] : [],
  );
  if (leaves.length === 0 || !saysWord(sentence, 'outside')) return [];
  return foodsIn(sentence).flatMap(({ from, to }) => {
    const left = leaves.some((at) => at < from && from - at <= wordsBefore);
    // "Leave the cod out of the stew" leaves it out of a dish.
    const out = isWord(sentence, 'outside', tokens[to]) && !isWord(sentence, 'weary', tokens[to + 1]);
    return left && out ? [{ kind: 'at', value: 'counter', from: to, to: to + 1 }] : [];
  });
};
/** "The", "some of the", "that old": at most so many words stand between the verb and the food. */
const wordsBefore = 4;

/** Whether a word is of a class of small words; past either end of the sentence there is none. */
export const isWord = ({ language }: Sentence, kind: string, word: string | undefined): boolean =>
  word !== undefined && guidanceWords(language, kind).has(word);
export const saysWord = (sentence: Sentence, kind: string): boolean =>
  sentence.tokens.some((word) => isWord(sentence, kind, word));

/** "Can I": no tin. */
const isAuxiliary = (tokens: readonly string[], { kind, from }: Spot): boolean =>
  kind === 'vessel' &&
  tokens[from] === 'can' &&
  tokens[from + 1] !== 'of' &&
  !/^(a|the|this|that|my|our|one|another|dented|bulging|swollen|old|leaking|open)$/.test(
    tokens[from - 1] ?? '',
  );

/** "A roast", "roast chicken": the verb only where somebody does it, "how long do I roast". */
const isJoint = (tokens: readonly string[], { kind, from }: Spot, language: string): boolean =>
  kind === 'cookverb' && !guidanceWords(language, 'doer').has(tokens[from - 1] ?? '');

export const spotsOf = ({ spots }: Sentence, kind: string): readonly Spot[] =>
  spots.filter((one) => one.kind === kind);
export const has = (sentence: Sentence, kind: string): boolean =>
  sentence.spots.some((one) => one.kind === kind);

/** Some of its words alone, with what stands in them. */
export const between = (sentence: Sentence, from: number, to: number): Sentence => ({
  ...sentence,
  tokens: sentence.tokens.slice(from, to),
  spots: sentence.spots
    .filter((spot) => spot.from >= from && spot.to <= to)
    .map((spot) => ({ ...spot, from: spot.from - from, to: spot.to - from })),
});

/** Both are said, at most so many words apart. */
export const near = (sentence: Sentence, one: string, other: string, words: number): boolean =>
  spotsOf(sentence, one).some((a) =>
    spotsOf(sentence, other).some(
      (b) => (b.from !== a.from || b.to !== a.to) && Math.abs(b.from - a.from) <= words,
    ),
  );

const overlaps = (one: { from: number; to: number }, other: { from: number; to: number }): boolean =>
  one.from < other.to && other.from < one.to;

/** The sentence asks: by its first words, past openings such as "so", "and", "tell me". */
export const asks = (sentence: Sentence): boolean =>
  spotsOf(sentence, 'asks').some(
    ({ from }) =>
      (from === 0 || sentence.tokens.slice(0, from).every((word) => isWord(sentence, 'opening', word))) &&
      !deniesOnly(sentence, from),
  );
/** "Can't have milk, the new girl": nobody before the verb and nobody after it, so that it tells. */
const deniesOnly = (sentence: Sentence, at: number): boolean => {
  const follows = sentence.tokens[at + 2];
  return (
    spotsOf(sentence, 'cannot').some(({ from, to }) => from === at && to - from > 1) &&
    !isWord(sentence, 'subject', follows)
  );
};
/**
 * "Can the baby finish it", "is the smoked salmon fine": a verb before what it is said of, where no subject stands
 * before the verb.
 */
const asksOfSomebody = (sentence: Sentence): boolean => {
  const { tokens } = sentence;
  return spotsOf(sentence, 'aux').some(({ from: verb, to }) => {
    if (isWord(sentence, 'subject', tokens[verb - 1])) return false;
    const at = isWord(sentence, 'whose', tokens[to]) ? to + 1 : to;
    const somebody = [...spotsOf(sentence, 'relation'), ...spotsOf(sentence, 'pronoun')];
    // Food comes with its article, or it is what somebody has: "there is chicken".
    const foods = at > to ? foodsIn(sentence) : [];
    return [...somebody, ...foods].some(({ from }) => from === at);
  });
};
/** It asks somewhere: "I thawed it in water, can I freeze it again". */
export const asksAnywhere = (sentence: Sentence): boolean =>
  asks(sentence) || has(sentence, 'inverted') || asksOfSomebody(sentence);

/** What somebody else says happened, wherever that is said; what a label or a thermometer says is read. */
const isReported = (sentence: Sentence): boolean =>
  spotsOf(sentence, 'reported').some(
    ({ from, to }) =>
      to - from > 1 || (from > 0 && !isWord(sentence, 'instrument', sentence.tokens[from - 1])),
  );

/** "What if I", "is it all right if I": it supposes a deed, rather than wishing or forbidding it. */
export const isWhatIf = (sentence: Sentence): boolean =>
  has(sentence, 'outcome') || spotsOf(sentence, 'whatif').some(({ from }) => from <= 2 || asks(sentence));

const supposes = (sentence: Sentence): boolean =>
  isWhatIf(sentence) ||
  ['wished', 'denied'].some((kind) => spotsOf(sentence, kind).some(({ from }) => from <= 2));

/** Whether a sentence tells what happened: not where it is a what-if, a wish, a denial or somebody else's word. */
export const moodOf = (sentence: Sentence): Mood =>
  supposes(sentence) ? 'supposed' : isReported(sentence) ? 'reported' : 'told';

/** Names of hers; "shepherd's pie" is no pie of a shepherd's. */
const hersIn = (tokens: readonly string[], rules: DynamicRules): readonly Match[] => {
  const whole = wholeNamesIn(tokens, rules).filter(({ from, to }) =>
    tokens.slice(from, to).some((word) => /['’]s$/.test(word)),
  );
  const named = whole.flatMap(({ from, to }): readonly Match[] =>
    (rules.get('kitchen:item')?.matchesAt(tokens, from) ?? [])
      .filter(({ length, value }) => from + length === to && namedMention(value).maker === null)
      .slice(0, 1)
      .map(({ value, weight = 1 }) => ({ from, to, value, weight })),
  );
  const all = matchesIn(tokens, rules, 'kitchen:item', 0.5);
  return [...all.filter((one) => !named.some((other) => overlaps(one, other))), ...named];
};

/** Names of foods, the household's and everybody's, that lie in none of these spans. */
export const foodsIn = (
  sentence: Sentence,
  except: readonly { from: number; to: number }[] = [],
): readonly (Match & { readonly hers: boolean })[] => {
  const { tokens, rules } = sentence;
  const nameless = [...spotsOf(sentence, 'nofood'), ...spotsOf(sentence, 'cookverb')];
  const hers = hersIn(tokens, rules);
  const all = matchesIn(tokens, rules, 'kitchen:food');
  const found = [
    ...hers.map((one) => ({ ...one, hers: true })),
    ...all.filter((one) => !hers.some((own) => overlaps(own, one))).map((one) => ({ ...one, hers: false })),
  ];
  // "Milk chocolate" is one food though "milk" is a thing of hers: the longer name is meant.
  const longest = found.map((one) => {
    const longer = all.find((other) => overlaps(one, other) && other.to - other.from > one.to - one.from);
    return longer ? { ...longer, hers: false } : one;
  });
  return longest
    .filter((one) => !except.some((other) => overlaps(one, other)))
    .filter((one) => !nameless.some(({ from, to }) => from <= one.from && one.to <= to))
    .sort((a, b) => a.from - b.from);
};

export const mentionOf = ({ value, hers }: Match & { readonly hers: boolean }): Mention =>
  hers ? namedMention(value) : { ...namedMention(value), candidates: [] };

/** "It", "this", "them": what was just spoken of. */
export const pointerIn = (sentence: Sentence): Mention | null =>
  saysWord(sentence, 'pointer') ? itMention : null;

interface PersonSaid {
  readonly words: string;
  readonly candidates: readonly { readonly id: string; readonly fit: number }[];
  readonly to: number;
}

/** How surely a name must be that of somebody of the household. */
const surelyThem = 0.85;

/** Whom the sentence is about: somebody known, "my grandson Jack", a name at its head, "she", or the speaker. */
export const personIn = (sentence: Sentence): PersonSaid | null => {
  const { tokens, rules } = sentence;
  const nameless = (word: string): boolean => isWord(sentence, 'noname', word);
  const opens = (word: string): boolean => isWord(sentence, 'opening', word);
  const all = matchesIn(tokens, rules, 'kitchen:person').filter(({ value }) =>
    asNamed(value).candidates.some(({ fit }) => fit >= surelyThem),
  );
  // "Not Aoife, it's Tom": never of whom it is denied, where anybody else is named.
  const denied = all.flatMap(({ from }) =>
    isWord(sentence, 'notthem', tokens[from - 1]) ? [tokens[from]] : [],
  );
  const meant = all.filter(({ from }) => !denied.includes(tokens[from]));
  const [known] = meant;
  const relation = relationIn(sentence);
  // "Peter's mate Sol", "Aoife's fella Tom": of whoever is named last, whosesoever they are.
  const called = relation && namedAfter(sentence, relation.to, meant);
  if (called && relation && !(known && known.from > relation.to)) {
    const same = meant.find(({ from }) => from === relation.to);
    const { words, candidates } = same ? asNamed(same.value) : { words: called, candidates: [] };
    return { words, candidates, to: same?.to ?? relation.to + 1 };
  }
  if (known && !(relation?.whose && relation.from === known.from)) {
    const { words, candidates } = asNamed(known.value);
    return { words, candidates, to: known.to };
  }
  if (relation?.whose) return { words: relation.whose, candidates: [], to: relation.to };
  if (relation) {
    const name = tokens[relation.to];
    const named = name !== undefined && !nameless(name) && !isFood(sentence, relation.to);
    return {
      words: named ? name : (tokens[relation.from] ?? ''),
      candidates: [],
      to: relation.to + (named ? 1 : 0),
    };
  }
  // "Write down that Ruth is allergic": the word the allergy is told of.
  for (const { from } of [...spotsOf(sentence, 'allergy'), ...spotsOf(sentence, 'cannot')]) {
    // "I've got Joan here, she's a desperate allergy to nuts": whom she is was said before; no word in between, and none
    // that an article leads, is her name.
    const leads = (at: number): boolean => isWord(sentence, 'article', tokens[at - 1]);
    const heads = (at: number): boolean => tokens.slice(0, at).every(opens) && !nameless(tokens[at]!);
    let at = from - 1;
    while (
      at >= 0 &&
      (isWord(sentence, 'between', tokens[at]) || leads(at) || (!mayName(sentence, at) && !heads(at)))
    )
      at -= 1;
    const word = tokens[at];
    if (word && !opens(word) && !lexical(sentence, at) && !isFood(sentence, at))
      return { words: word, candidates: [], to: at + 1 };
  }
  const first = tokens.findIndex((word) => !opens(word));
  const head = tokens[first];
  const follows = tokens[first + 1];
  if (
    head &&
    follows &&
    nameless(follows) &&
    !nameless(head) &&
    // "Lights have gone off" begins with nobody's name.
    (mayName(sentence, first) || tellsNext(sentence, first)) &&
    !isFood(sentence, first) &&
    !lexical(sentence, first)
  )
    return { words: head, candidates: [], to: first + 1 };
  if (saysWord(sentence, 'shehe')) return { words: 'she', candidates: [], to: 0 };
  return isWord(sentence, 'myself', head) || saysWord(sentence, 'mine')
    ? { words: 'me', candidates: [], to: 0 }
    : null;
};

/** "Neighbour's boy", "my sister's girl", "Dele's friend": whose somebody is tells who it is; parted, "'s" is "is". */
const relationIn = (sentence: Sentence): { from: number; to: number; whose?: string } | null => {
  const { tokens } = sentence;
  const all = spotsOf(sentence, 'relation');
  for (const { from, to } of all) {
    // "Her new fella", "Aoife's new fella".
    let at = from - 1;
    while (at > 0 && isWord(sentence, 'relationsized', tokens[at])) at -= 1;
    const owner = isWord(sentence, 'owns', tokens[at]) ? (tokens[at - 1] ?? null) : null;
    const whose = owner !== null && !isWord(sentence, 'noname', owner) && !isWord(sentence, 'opening', owner);
    if (whose) return { from: at - 1, to, whose: `${owner}'s ${tokens.slice(from, to).join(' ')}` };
  }
  return all.find(({ from }) => !deniedOf(sentence, from)) ?? null;
};

/** "Not my daughter". */
const deniedOf = (sentence: Sentence, from: number): boolean => {
  const at = isWord(sentence, 'whose', sentence.tokens[from - 1]) ? from - 2 : from - 1;
  return isWord(sentence, 'notthem', sentence.tokens[at]);
};

/** A name right after what somebody is to somebody. */
const namedAfter = (sentence: Sentence, at: number, known: readonly Match[]): string | null => {
  const word = sentence.tokens[at];
  if (word === undefined) return null;
  // "Her fella Rob has": any word that is none of ours, right before a verb.
  const heads =
    isWord(sentence, 'noname', sentence.tokens[at + 1]) &&
    !isWord(sentence, 'noname', word) &&
    !isWord(sentence, 'opening', word) &&
    movesLexicon(sentence.language)?.phrases.longestAt([word], 0) === null &&
    !lexical(sentence, at) &&
    !isFood(sentence, at);
  return known.some(({ from }) => from === at) || mayName(sentence, at) || heads ? word : null;
};

/** "No, not Aoife": of whom it is taken back, by name. */
export const deniedIn = (sentence: Sentence): string | null => {
  const { tokens, rules } = sentence;
  const known = matchesIn(tokens, rules, 'kitchen:person');
  const at = tokens.findIndex(
    (word, from) =>
      isWord(sentence, 'notthem', word) &&
      (known.some((one) => one.from === from + 1) || mayName(sentence, from + 1)),
  );
  return at < 0 ? null : tokens[at + 1]!;
};

/** "A coeliac coming on Saturday", "we have a vegan for tea": somebody without a name. */
export const guestIn = (sentence: Sentence): PersonSaid | null => {
  const [comes] = spotsOf(sentence, 'comes');
  return comes
    ? {
        words: guidanceWords(sentence.language, 'guest').values().next().value ?? '',
        candidates: [],
        to: comes.to,
      }
    : null;
};

/** A word that nothing else is known of: a name it may be. */
const mayName = (sentence: Sentence, at: number): boolean => {
  const { tokens, language, rules } = sentence;
  const word = tokens[at] ?? '';
  const lexicon = movesLexicon(language);
  const known =
    isWord(sentence, 'noname', word) ||
    isWord(sentence, 'opening', word) ||
    lexicon?.isOrdinary(word) === true ||
    lexicon?.isOrdinary(word.replace(/s$/, '')) === true ||
    (lexicon !== null && lexicon.phrases.longestAt([word], 0) !== null);
  const day = rules.get('builtin:grammar/date?lean=future')?.matchesAt(tokens, at).length ?? 0;
  return word.length > 1 && !known && day === 0 && !lexical(sentence, at) && !isFood(sentence, at);
};

/** "Rose is allergic", "May can't have nuts": what must not be had is told of the word right before it. */
const tellsNext = (sentence: Sentence, at: number): boolean =>
  [...spotsOf(sentence, 'allergy'), ...spotsOf(sentence, 'cannot')].some(
    ({ from }) => from > at && from - at <= 3,
  );

const isFood = (sentence: Sentence, at: number): boolean =>
  foodsIn(sentence).some(({ from, to }) => from <= at && at < to);
/** A word the lexicon knows is no name. */
const lexical = ({ spots }: Sentence, at: number): boolean =>
  spots.some(({ from, to }) => from <= at && at < to);

/** Where a clause begins, past fillers and joining words. */
const clauseHeads = (tokens: readonly string[], lexicon: MovesLexicon): readonly number[] => {
  const past = (from: number): number => {
    let at = from;
    for (let length = 0; (length = classAt(lexicon, tokens, at, 'fill', 'and', 'so', 'but')) > 0;)
      at += length;
    return at;
  };
  return [0, ...tokens.flatMap((_, at) => (classAt(lexicon, tokens, at, 'and', 'but') > 0 ? [at] : []))].map(
    past,
  );
};

/**
 * It orders something: "pop oat milk on the list", "you can take the flour off" at the head of a clause. What is asked
 * of a deed ("can I put it back") orders nothing, nor does what somebody did ("I cooked it and put it in the fridge").
 */
export const ordersIn = (sentence: Sentence): boolean => {
  const { tokens, language } = sentence;
  const lexicon = movesLexicon(language);
  if (!lexicon) return false;
  const did = tokens.some((_, at) => classAt(lexicon, tokens, at, 'i', 'they') > 0);
  return clauseHeads(tokens, lexicon).some(
    (at) => isWord(sentence, 'orders', tokens[at]) || (!did && isWord(sentence, 'ordersordid', tokens[at])),
  );
};
