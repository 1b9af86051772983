/**
 * Who eats here and what they must not: people by how their names are written and the frame around them, and
 * after what says that they must not, the groups of the tables and any other food by its own name. What is told
 * of nobody, or was not made out, is kept as that, so that it can be asked.
 */
import type { SaidEater } from '../../../protocol/first-day.js';
import type { Guess } from '../../guesses.js';
import { namedMention } from '../../meaning-parts.js';
import type { Reader } from '../../readings.js';
import type { MovesLexicon } from '../lexicon.js';
import { lengthNamed } from '../named-at.js';
import { mayBeName, spelled, type Spelled } from './people-words.js';
import type { FirstDayWords } from './words.js';

interface EaterDraft {
  readonly who: SaidEater['who'];
  name: string | null;
  relation: string | null;
  readonly allergens: Set<string>;
  nuts: boolean;
  readonly diets: Set<string>;
  readonly risks: Set<string>;
  /** A watch was said and nothing after it was made out so far. */
  waiting: boolean;
  none: boolean;
  /** Named for their own sake, and not by a sentence of theirs about anything: "I'd like it short". */
  stands: boolean;
}

const nobody = (who: SaidEater['who'], name: string | null, relation: string | null): EaterDraft => ({
  who,
  name,
  relation,
  allergens: new Set(),
  nuts: false,
  diets: new Set(),
  risks: new Set(),
  waiting: false,
  none: false,
  stands: who !== 'me',
});

const capital = (name: string): string => name.replace(/^\p{Ll}/u, (letter) => letter.toUpperCase());

/** The allergen named at a place, and of how many words: the longest name there is. */
const allergenAt = (
  tokens: readonly string[],
  at: number,
  moves: MovesLexicon,
): { value: string; length: number } | null => {
  for (let length = 3; length > 0; length -= 1) {
    if (at + length > tokens.length) continue;
    const value = moves.allergenOf(tokens.slice(at, at + length).join(' '));
    if (value !== undefined) return { value, length };
  }
  return null;
};

const isNuts = (word: string): boolean => word === 'nut' || word === 'nuts';

interface Reading {
  readonly sentence: Spelled;
  readonly words: FirstDayWords;
  readonly moves: MovesLexicon;
  readonly reader: Reader;
}

/** The longest food named at a place, in words; 0 for none. */
const foodAt = ({ sentence: { tokens }, reader }: Reading, at: number): number =>
  lengthNamed(reader.rules, tokens, at, 'kitchen:food');

const surelyHers = 0.95;

/** "The peanut stew", which is here: one thing that somebody must not have, and no peanuts and stew. */
const wholeAt = ({ sentence: { tokens }, reader }: Reading, at: number): number =>
  Math.max(
    0,
    ...(reader.rules.get('kitchen:item')?.matchesAt(tokens, at) ?? []).map(({ length, value }) =>
      length > 1 && (namedMention(value).candidates[0]?.fit ?? 0) >= surelyHers ? length : 0,
    ),
  );

/** Words between a name and what they are to her: "Sam, my lodger". */
const aside: ReadonlySet<string> = new Set(['my', 'our', 'the', 'his', 'her']);

/** What is told of the whole sentence, in order. `open`: it is asked who eats here, so that a bare name is an answer. */
export const eatersIn = (
  guess: Guess,
  words: FirstDayWords,
  moves: MovesLexicon,
  reader: Reader,
  { open = true }: { readonly open?: boolean } = {},
): readonly SaidEater[] => {
  const sentence = spelled(guess, words);
  const { tokens, pauses, capitals } = sentence;
  const reading: Reading = { sentence, words, moves, reader };
  const found: EaterDraft[] = [];
  const isName = (at: number, surely: boolean): boolean =>
    mayBeName(sentence, at, surely, words, moves, reader);

  const named = (name: string, relation: string | null): EaterDraft => {
    const there = found.find((one) => one.name?.toLowerCase() === name.toLowerCase());
    if (there) return there;
    const made = nobody('named', capital(name), relation);
    found.push(made);
    return made;
  };
  const only = (who: SaidEater['who']): EaterDraft => {
    const there = found.find((one) => one.who === who);
    if (there) return there;
    const made = nobody(who, null, null);
    found.push(made);
    return made;
  };
  /** Of whom the clause is; null where it names nobody. */
  let current: EaterDraft | null = null;
  let pronoun = false;
  const whom = (): EaterDraft => {
    if (current) return current;
    current = pronoun ? (found.at(-1) ?? only('last')) : only('whose');
    return current;
  };
  /** Where the list that a "must not have" opened goes on, at the latest; what may be had instead closes it. */
  let listTo = -1;
  let may = false;
  let watcher: EaterDraft | null = null;
  let lastPerson = -1;

  const closeClause = (): void => {
    listTo = -1;
    may = false;
  };
  const take = (eater: EaterDraft, at: number, length: number, value: string): void => {
    if (length === 1 && isNuts(tokens[at]!)) eater.nuts = true;
    else eater.allergens.add(value);
    eater.waiting = false;
  };
  const isWatchAt = (at: number): boolean => {
    let next = at;
    while (words.between.has(tokens[next] ?? '')) next += 1;
    return words.watches.longestAt(tokens, next) !== null || words.comes.longestAt(tokens, next) !== null;
  };
  const describedAt = (at: number): boolean =>
    words.extra.longestAt(tokens, at) !== null ||
    words.risks.longestAt(tokens, at) !== null ||
    words.diets.longestAt(tokens, at) !== null ||
    (moves.phrases.longestAt(tokens, at)?.value.has('diet') ?? false);
  const isPronoun = (at: number): boolean => words.pronouns.has(tokens[at] ?? '');

  for (let at = 0; at < tokens.length;) {
    if (pauses.has(at) && at > 0) may = false;
    const before = tokens[at - 1] ?? '';
    const taken = words.takenBack.longestAt(tokens, at);
    const target = at + (taken?.length ?? 0);
    const notOne = words.notOne.longestAt(tokens, at + 1);
    const gone = words.notOne.longestAt(tokens, at);
    const self = words.me.longestAt(tokens, at);
    const nameIs = words.nameIs.longestAt(tokens, at);
    const denies = words.watches.longestAt(tokens, at);
    // "No, Ben": a no by itself.
    const meant = open || words.weak.longestAt(tokens, at)?.length !== denies?.length;
    const watch = denies && meant && !(denies.length === 1 && pauses.has(at + 1)) ? denies : null;
    const allowed = words.allowed.longestAt(tokens, at);
    const relation = words.relations.longestAt(tokens, at);
    const group = words.groups.longestAt(tokens, at);
    const extra = words.extra.longestAt(tokens, at);
    const risk = words.risks.longestAt(tokens, at);
    const allergen = allergenAt(tokens, at, moves);
    const whole = watcher !== null && listTo >= at - 1 ? wholeAt(reading, at) : 0;
    const eats = words.diets.longestAt(tokens, at);
    const diet = moves.phrases.longestAt(tokens, at);
    const told = tokens[target];

    const isFood =
      told !== undefined &&
      !capitals.has(told) &&
      (allergenAt(tokens, target, moves) !== null || foodAt(reading, target) > 0);
    if (taken && told !== undefined && !words.chatter.has(told) && !isFood && !isPronoun(target)) {
      named(told, null).none = true;
      at = target + (words.notBefore.has(tokens[target + 1] ?? '') || tokens[target + 1] === 'off' ? 2 : 1);
    } else if (notOne && !words.chatter.has(tokens[at]!)) {
      named(tokens[at]!, null).none = true;
      at += 1 + notOne.length;
    } else if (gone && current) {
      current.none = true;
      at += gone.length;
    } else if (nameIs && isName(at + nameIs.length, true)) {
      current = only('me');
      current.name = capital(tokens[at + nameIs.length]!);
      lastPerson = at + nameIs.length + 1;
      at = lastPerson;
    } else if (extra) {
      whom().allergens.add(extra.value);
      at += extra.length;
    } else if (eats) {
      whom().diets.add(eats.value);
      at += eats.length;
    } else if (allowed && !(watch && watch.length > allowed.length)) {
      closeClause();
      may = true;
      at += allowed.length;
    } else if (watch && !(self && self.length > watch.length)) {
      closeClause();
      watcher = whom();
      watcher.waiting ||= words.strong.longestAt(tokens, at) !== null;
      at += watch.length;
      listTo = at;
    } else if (watcher && whole > (allergen?.length ?? 0)) {
      take(watcher, at, whole, tokens.slice(at, at + whole).join(' '));
      at += whole;
      listTo = at;
    } else if (allergen) {
      const after = tokens[at + allergen.length] ?? '';
      const listed = at <= listTo || at - 1 <= listTo;
      const ofClause = open && !may;
      if (listed && watcher) take(watcher, at, allergen.length, allergen.value);
      else if (words.allergicAfter.has(after)) take(whom(), at, allergen.length, allergen.value);
      else if (ofClause) take(whom(), at, allergen.length, allergen.value);
      at += allergen.length;
      if (listed) listTo = at;
    } else if (isPronoun(at)) {
      pronoun = true;
      if (found.length > 0) current = found.at(-1)!;
      at += 1;
    } else if (diet?.value.has('diet')) {
      whom().diets.add(tokens.slice(at, at + diet.length).join(' '));
      at += diet.length;
    } else if (relation) {
      const end = at + relation.length;
      const called = words.called.longestAt(tokens, end);
      const nameAt = end + (called?.length ?? 0);
      closeClause();
      if (isName(nameAt, true)) {
        current = named(tokens[nameAt]!, relation.value);
        lastPerson = nameAt + 1;
        at = lastPerson;
      } else if (current?.name && aside.has(before) && lastPerson === at - 1) {
        current.relation = relation.value;
        at = end;
      } else if (words.gone.longestAt(tokens, end)) {
        at = end;
      } else {
        current = named(relation.value, relation.value);
        lastPerson = end;
        at = end;
      }
      if (words.infants.has(relation.value)) current?.risks.add('infant');
    } else if (group) {
      closeClause();
      at += group.length;
      lastPerson = at;
    } else if (risk) {
      whom().risks.add(risk.value);
      at += risk.length;
    } else if (self) {
      closeClause();
      current = only('me');
      const alone = words.alone.longestAt(tokens, at) !== null;
      const next = at + self.length;
      // "I", before anything but who else eats here, is whoever speaks.
      current.stands ||=
        !(self.length === 1 && words.bare.has(tokens[at]!)) ||
        next >= tokens.length ||
        pauses.has(next) ||
        words.and.longestAt(tokens, next) !== null;
      at = next;
      lastPerson = at;
      // "Just me, Dorothy": her own name, and nobody besides.
      if (alone && pauses.has(at) && isName(at, true) && !isWatchAt(at + 1)) {
        current.name ??= capital(tokens[at]!);
        at += 1;
        lastPerson = at;
      }
    } else {
      // "Mrs Patel".
      const title = words.titles.has(tokens[at]!) ? 1 : 0;
      const next = at + title + 1;
      const and = words.and.longestAt(tokens, at - 1) !== null;
      const joined = lastPerson === at || (lastPerson === at - 1 && and);
      // "Peter can't do shellfish, Dele's peanuts": as the one before, each what is hers.
      const likewise =
        watcher !== null && tokens[next] === 'is' && allergenAt(tokens, next + 1, moves) !== null;
      const watched = isWatchAt(next) || likewise || (tokens[next] === 'is' && describedAt(next + 1));
      const spoken = isPronoun(next) && pauses.has(next);
      const surely = joined || watched || spoken;
      const begins =
        at === 0 ||
        pauses.has(at) ||
        and ||
        before === 'called' ||
        (words.chatter.has(before) && !words.notBefore.has(before));
      const ends =
        next >= tokens.length ||
        pauses.has(next) ||
        words.and.longestAt(tokens, next) !== null ||
        words.chatter.has(tokens[next]!) ||
        isName(next, false);
      const stands = surely || (begins && ends && (open || capitals.has(tokens[at]!)));
      const food = listTo === at || (listTo === at - 1 && !pauses.has(at)) ? foodAt(reading, at) : 0;
      if (food > 0 && watcher && !(surely && isName(at, true))) {
        take(watcher, at, food, tokens.slice(at, at + food).join(' '));
        at += food;
        listTo = at;
        continue;
      }
      // "Warfarin" between pauses is nobody, where no name is written with a capital.
      const bare = pauses.has(at) && pauses.has(next) && !joined && !capitals.has(tokens[at]!) && at > 0;
      if (stands && !bare && isName(at + title, surely || title > 0) && !words.gone.longestAt(tokens, next)) {
        closeClause();
        current = named(tokens.slice(at, next).map(capital).join(' '), null);
        lastPerson = next;
        if (likewise) {
          watcher = current;
          listTo = next + 1;
        }
      } else if (listTo === at && (words.fill.has(tokens[at]!) || words.and.longestAt(tokens, at))) {
        listTo = next;
      }
      at = next;
    }
  }
  const held = found.filter(
    ({ who, name, stands, nuts, allergens, diets, risks, waiting }) =>
      (who === 'me' && (stands || waiting || name !== null)) ||
      who === 'named' ||
      nuts ||
      allergens.size + diets.size + risks.size > 0,
  );
  return held.map(({ allergens, diets, risks, waiting, none, stands: _stands, ...eater }) => ({
    ...eater,
    allergens: [...allergens],
    diets: [...diets],
    risks: [...risks],
    ...(waiting ? { unclear: true as const } : {}),
    ...(none ? { none: true as const } : {}),
  }));
};
