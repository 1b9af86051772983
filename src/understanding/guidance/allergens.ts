/**
 * Allergens and allergies, heard in any wording. Whatever else a sentence may mean, one that names an
 * allergen as such is a question about food, a fact about somebody or a fact about food, and never passed over.
 */
import { emptyMention, itMention, type Act, type Mention } from '../intents.js';
import {
  asks,
  asksAnywhere,
  deniedIn,
  foodsIn,
  has,
  isWord,
  mentionOf,
  guestIn,
  personIn,
  pointerIn,
  saysWord,
  spotsOf,
  wholeNamesIn,
  type Sentence,
} from './sentence.js';
import type { SaidEater } from '../../protocol/first-day.js';
import type { Spot } from './spots.js';

/** "Nuts" may be of trees or peanuts: both are watched for until somebody says which. */
const groups = (value: string): readonly string[] => (value === 'nuts' ? ['tree nuts', 'peanuts'] : [value]);

/** "Just peanuts", "both kinds, tree nuts and peanuts": allergens and no more, where it was asked which are meant. */
export const allergensAnswered = (sentence: Sentence): Act | null => {
  const all = spotsOf(sentence, 'allergen');
  // "Tree nuts" are no nuts besides.
  const spots = all.filter(
    (one) => !all.some(({ from, to }) => from <= one.from && one.to <= to && to - from > one.to - one.from),
  );
  const rest = sentence.tokens.filter(
    (word, at) =>
      !spots.some(({ from, to }) => from <= at && at < to) &&
      !['justthat', 'opening', 'pointer', 'noname', 'everykind'].some((kind) => isWord(sentence, kind, word)),
  );
  // "All of them", "the lot", "any kind": both, by no name.
  const every = saysWord(sentence, 'everykind');
  if (rest.length > 0 || (spots.length === 0 && !every)) return null;
  if (asks(sentence) && !every) return null;
  const allergens = spots.length > 0 ? named(spots) : groups('nuts');
  return { intent: 'answer', slots: { allergens } };
};

const surelyHers = 0.95;
/** Allergens named as such, and not as part of a food's longer name. */
const allergenSpots = (sentence: Sentence): readonly Spot[] => {
  const all = spotsOf(sentence, 'allergen');
  // "All nuts, peanuts included": two allergens, one after the other, name no other food.
  const listed = ({ from, to }: { from: number; to: number }): boolean =>
    sentence.tokens
      .slice(from, to)
      .every((_, at) => all.some((one) => one.from <= from + at && from + at < one.to));
  // "The peanut butter" that is here is one food, and no peanuts and butter.
  const foods = foodsIn(sentence).filter(
    (food) => (mentionOf(food).candidates[0]?.fit ?? 0) >= surelyHers || !listed(food),
  );
  return spotsOf(sentence, 'allergen').filter(
    (spot) =>
      !foods.some(
        ({ from, to }) =>
          from <= spot.from && spot.to <= to && to - from > spot.to - spot.from && !isFree(sentence, spot),
      ),
  );
};

/** "Nut free", "free from nuts". */
const isFree = (sentence: Sentence, { from, to }: Spot): boolean =>
  isWord(sentence, 'free', sentence.tokens[to]) ||
  spotsOf(sentence, 'freeof').some((one) => one.to <= from && from - one.to <= 2);

const named = (spots: readonly Spot[]): readonly string[] => [
  ...new Set(spots.flatMap(({ value }) => groups(value))),
];

/** "The peanut butter", which is here, told of somebody: that, and neither its peanuts nor butter by themselves. */
const wholeFoods = (sentence: Sentence): readonly string[] => {
  const all = spotsOf(sentence, 'allergen');
  const forbids = spotsOf(sentence, 'cannot').map(({ to }) => to);
  return wholeNamesIn(sentence.tokens, sentence.rules).flatMap(({ from, to, words }) => {
    const after = forbids.some((end) => end <= from && from - end <= 2);
    const covers = all.some((spot) => from <= spot.from && spot.to <= to);
    // A word that is an allergen by itself is that: "can't have milk".
    return after && (to - from > 1 || !covers) ? [words] : [];
  });
};

/** What the allergen is asked or told of: another food, else what was just spoken of. */
const carrier = (sentence: Sentence, spots: readonly Spot[]): Mention | null => {
  const free = spots.flatMap((spot) =>
    isWord(sentence, 'free', sentence.tokens[spot.to]) ? [{ from: spot.from, to: spot.to + 1 }] : [],
  );
  const [food] = foodsIn(sentence, [...spots, ...free]);
  return food ? mentionOf(food) : pointerIn(sentence);
};

const doubting = (sentence: Sentence): boolean => {
  const { tokens } = sentence;
  // "Right, it's got nuts in it" opens; "it's got nuts in it, right" doubts.
  return spotsOf(sentence, 'doubted').some(
    ({ from, to }) =>
      (from === 0 && !isWord(sentence, 'opensonly', tokens[0])) || (to === tokens.length && from > 0),
  );
};

const capital = (name: string): string => name.replace(/^\p{Ll}/u, (letter) => letter.toUpperCase());

/** "Not Aoife, it's Tom that's allergic to nuts": hers no longer, and his. What it is, where none is named, is asked. */
const movedTo = (from: string, to: string, spots: readonly Spot[], allergens: readonly string[]): Act => {
  const plain = { relation: null, nuts: false, diets: [], risks: [] } as const;
  const nuts = spots.some(({ value }) => value === 'nuts') && !spots.some(({ value }) => isKind.has(value));
  const who = to === 'me' ? ('me' as const) : to === 'she' ? ('last' as const) : ('named' as const);
  const eaters: readonly SaidEater[] = [
    { ...plain, who: 'named', name: capital(from), allergens: [], none: true },
    {
      ...plain,
      who,
      name: who === 'named' ? capital(to) : null,
      allergens,
      nuts,
      ...(allergens.length === 0 ? { unclear: true as const } : {}),
    },
  ];
  return { intent: 'add-person', slots: { eaters } };
};
const isKind: ReadonlySet<string> = new Set(['tree nuts', 'peanuts']);

/** "Nuts of every kind", "any nut at all": both kinds are said, and which is no question. */
export const everyKind = (act: Act, sentence: Sentence, answers: boolean): Act => {
  const { asked, eaters, ...slots } = act.slots;
  const open = asked === 'which-nuts' || eaters?.some(({ nuts }) => nuts) === true;
  if (act.intent !== 'add-person' || !open || !saysEveryKind(sentence, answers)) return act;
  const both = eaters?.map((one) =>
    one.nuts ? { ...one, nuts: false, allergens: [...new Set([...one.allergens, ...groups('nuts')])] } : one,
  );
  return {
    ...act,
    slots: {
      ...slots,
      ...(asked && asked !== 'which-nuts' ? { asked } : {}),
      ...(both ? { eaters: both } : {}),
    },
  };
};

/** "Of every kind", "any … at all": so few words from the nuts. */
const kindWithin = 4;
const saysEveryKind = (sentence: Sentence, answers: boolean): boolean =>
  // "Both, both, and it's Tom": asked which, that is said first.
  (answers && sentence.tokens.slice(0, kindWithin).some((word) => isWord(sentence, 'everykind', word))) ||
  spotsOf(sentence, 'allergen').some(
    ({ value, from, to }) =>
      value === 'nuts' &&
      sentence.tokens
        .slice(Math.max(0, from - kindWithin), to + kindWithin)
        .some((word) => isWord(sentence, 'everykind', word)),
  );

/** A fact about somebody who eats here, or comes to. */
export const ofPerson = (
  sentence: Sentence,
  spots: readonly Spot[] = allergenSpots(sentence),
): Act | null => {
  const coeliac = has(sentence, 'coeliac');
  const allergens = [...new Set([...named(spots), ...wholeFoods(sentence), ...(coeliac ? ['gluten'] : [])])];
  const told =
    ['allergy', 'cannot', 'saidno', 'outgrown'].some((kind) => has(sentence, kind)) ||
    (has(sentence, 'nomore') && personIn(sentence) !== null);
  const isOver = has(sentence, 'outgrown');
  const moved = has(sentence, 'allergy') && deniedIn(sentence) !== null;
  if (!told || (allergens.length === 0 && !isOver && !moved)) return null;
  // A question about people is one; "my grandson Jack, can he have nuts" tells nothing of him.
  if (asks(sentence)) return null;
  const person = personIn(sentence) ?? guestIn(sentence);
  // "There's no more rice": a food, and nobody.
  if (!person && spots.length === 0 && !coeliac) return null;
  if (!person) return { intent: 'danger', slots: { asked: 'allergy', allergens } };
  const { words, candidates } = person;
  const other = isOver ? null : deniedIn(sentence);
  if (other && other !== words) return movedTo(other, words, spots, allergens);
  // "Nuts, tree nuts or peanuts" says which.
  const said = spots.some(({ value }) => value === 'tree nuts' || value === 'peanuts');
  const unsure = !said && spots.some(({ value }) => value === 'nuts') ? { asked: 'which-nuts' } : {};
  const over = isOver ? { negated: true } : unsure;
  return { intent: 'add-person', slots: { person: { words, candidates }, allergens, ...over } };
};

const ofFood = (sentence: Sentence, spots: readonly Spot[]): Act | null => {
  const allergens = named(spots);
  const { tokens } = sentence;
  const free = spots.some((spot) => isFree(sentence, spot));
  const item = carrier(sentence, spots);
  const which = spotsOf(sentence, 'which')[0];
  const first = spots[0]!;
  const holds = spotsOf(sentence, 'contain').some(
    ({ from, to }) => (to <= first.from && first.from - to <= 2) || from === first.to,
  );
  const preposition =
    typeof item?.words === 'string' &&
    /\bin (the |my |this |that |our )?$/.test(`${tokens.join(' ').split(item.words)[0]}`);
  const asksThere = /\b(is|are) there\b|\bany\b/.test(tokens.join(' '));
  const inside = has(sentence, 'inside') || tokens.at(-1) === 'in' || (preposition && asksThere);
  const wholly = saysWord(sentence, 'wholly');
  // "What have I got with milk in it" asks of food; "have I got any milk" looks for milk.
  const ofAll = which && which.to <= first.from && tokens[which.to] !== tokens[first.from] && (holds || free);
  // "El guiso tiene nueces": a language may ask in the order in which it tells.
  if (asksAnywhere(sentence) || doubting(sentence) || (item?.words && has(sentence, 'asksastold'))) {
    if (ofAll && !item?.words)
      return { intent: 'contains', slots: { allergens, ...(free ? { free: true } : {}) } };
    if (item && (inside || wholly || free || (item.words !== null && holds)))
      return { intent: 'contains', slots: { allergens, item } };
    return null;
  }
  return null;
};

/** A denial stands so few words before what it denies: "has not got any peanuts". */
const deniesWithin = 4;

/** "Not wheat": the one, where another is; "no wheat" and "it does not have wheat" set it against nothing. */
const isContrary = (sentence: Sentence, { from }: Spot): boolean =>
  isWord(sentence, 'contrary', sentence.tokens[from - 1]);

/** "Not wheat and not milk", "not wheat or milk": denied with the one before. */
const joinsDenied = (sentence: Sentence, { from }: Spot): boolean =>
  isWord(sentence, 'deniesalso', sentence.tokens[from - 1]);

/** Allergens that are said not to be in it, and those that are: a denial holds on over "and", "or" and "nor". */
const denied = (
  sentence: Sentence,
  spots: readonly Spot[],
): { readonly free: readonly Spot[]; readonly held: readonly Spot[] } => {
  const free: Spot[] = [];
  const held: Spot[] = [];
  const { tokens } = sentence;
  const contrary = spots.filter((spot) => isContrary(sentence, spot));
  // "No, not wheat, celery", "no, soy, not milk": that one is denied, and what has no denial of its own is in it.
  if (contrary.length > 0 && contrary.length < spots.length) {
    const isFreeToo = (spot: Spot): boolean =>
      contrary.includes(spot) || isWord(sentence, 'free', tokens[spot.to]) || joinsDenied(sentence, spot);
    return { free: spots.filter(isFreeToo), held: spots.filter((spot) => !isFreeToo(spot)) };
  }
  for (const spot of spots) {
    const before = tokens.slice(Math.max(0, spot.from - deniesWithin), spot.from);
    const turns = before.findLastIndex((word) => isWord(sentence, 'clausebreak', word));
    const said = before.slice(turns + 1).some((word) => isWord(sentence, 'denier', word));
    const last = free.at(-1);
    const joined = last !== undefined && spot.from - last.to <= 2 && turns < 0;
    (said || joined || isFree(sentence, spot) ? free : held).push(spot);
  }
  return { free, held };
};

/**
 * "There ain't no peanuts in the soup", "that one's got no nuts and no shellfish neither", "write down it has no dairy":
 * told that a food is free of it. It is kept after one yes, and never taken for a question or for a food of that name.
 */
const toldFree = (sentence: Sentence, spots: readonly Spot[]): readonly Act[] | null => {
  if (spots.length === 0 || asks(sentence) || has(sentence, 'whatif')) return null;
  if (['allergy', 'cannot', 'outgrown'].some((kind) => has(sentence, kind))) return null;
  const { free: all, held } = denied(sentence, spots);
  const free = all.filter((spot) => !isOfName(sentence, spot));
  const [first] = free;
  // "It has no milk in it, right" doubts; "it has none, so they can have it, right" tells, and then asks.
  if (!first || (doubting(sentence) && !thenSpeaks(sentence, free.at(-1)!))) return null;
  const item = carrier(sentence, spots);
  if (!item || !isOfIt(sentence, spots, first)) return null;
  return notThat(item, free, held);
};

/** "The lactose free milk": before the name of a food it is part of it, and nothing is told. */
const isOfName = (sentence: Sentence, { to }: Spot): boolean =>
  isWord(sentence, 'free', sentence.tokens[to]) &&
  (foodsIn(sentence).some(({ from }) => from === to + 1) ||
    foodsIn(sentence).some((food) => food.from <= to && to + 1 < food.to));

/** Another clause follows. */
const thenSpeaks = (sentence: Sentence, { to }: Spot): boolean =>
  sentence.tokens.slice(to).some((word) => isWord(sentence, 'clausebreak', word));

/**
 * The denial is of what is in a food: "in it", "in the soup", "the soup has no …", "that one's got no …". "I have no
 * peanuts", "no milk left in the fridge" are of what is here.
 */
const isOfIt = (sentence: Sentence, spots: readonly Spot[], first: Spot): boolean => {
  const { tokens } = sentence;
  const isIn = (at: number): boolean =>
    isWord(sentence, 'in', tokens[at - 1]) ||
    (['the', 'article'].some((kind) => isWord(sentence, kind, tokens[at - 1])) &&
      isWord(sentence, 'in', tokens[at - 2]));
  const foods = foodsIn(sentence, spots);
  if (has(sentence, 'inside') || foods.some(({ from }) => from > first.to && isIn(from))) return true;
  if (isWord(sentence, 'free', tokens[first.to])) return true;
  const pointed = tokens.findLastIndex((word, at) => at < first.from && isWord(sentence, 'pointer', word));
  const from = Math.max(pointed + 1, ...foods.map(({ to }) => (to <= first.from ? to : 0)));
  const links = [
    ...spotsOf(sentence, 'contain'),
    ...spotsOf(sentence, 'freeof').filter((one) => one.to - one.from > 1),
  ];
  return from > 0 && links.some((one) => one.from >= from && one.from - from <= 2 && one.from < first.to);
};

/** "No peanuts, no shellfish": what is noted of the food that was asked about, and no refusal. */
export const freeAnswered = (sentence: Sentence): readonly Act[] | null => {
  const spots = allergenSpots(sentence);
  const { free, held } = denied(sentence, spots);
  const others = sentence.tokens.filter(
    (word, at) =>
      !spots.some(({ from, to }) => from <= at && at < to) &&
      !['justthat', 'opening', 'pointer', 'noname', 'denier'].some((kind) => isWord(sentence, kind, word)),
  );
  if (free.length === 0 || others.length > 0 || asks(sentence)) return null;
  return notThat(itMention, free, held);
};

/** What is not in it, and beside it what is. */
const notThat = (item: Mention, free: readonly Spot[], held: readonly Spot[]): readonly Act[] => [
  { intent: 'amend', slots: { item, allergens: named(free), free: true } },
  ...(held.length > 0
    ? [{ intent: 'amend', slots: { item: itMention, allergens: named(held) } } as const]
    : []),
];

/** Facts of the food that stand beside another request: "I put bread in the pantry, it is gluten free". */
const besides = (sentence: Sentence, spots: readonly Spot[], base: readonly Act[]): readonly Act[] | null => {
  const [act] = base;
  if (!act || base.length !== 1 || act.intent !== 'put-away') return null;
  if (act.slots.allergens !== undefined) return null;
  const free = spots.filter((spot) => isFree(sentence, spot));
  const holding = spots.filter(
    (spot) =>
      !free.includes(spot) &&
      spotsOf(sentence, 'contain').some(
        ({ from, to }) => to <= spot.from && spot.from - to <= 2 && from > 2,
      ) &&
      has(sentence, 'inside'),
  );
  const facts: Act[] = [
    ...(holding.length > 0
      ? [{ intent: 'amend', slots: { item: itMention, allergens: named(holding) } } as const]
      : []),
    ...(free.length > 0
      ? [{ intent: 'amend', slots: { item: itMention, allergens: named(free), free: true } } as const]
      : []),
  ];
  return facts.length > 0 ? [act, ...facts] : null;
};

const peopleAsked = new Set(['who-allergic', 'can-eat', 'people', 'leave-note']);

/** The same with "nuts" as both kinds of nut, wherever an allergen was heard. */
export const bothNuts = (act: Act, sentence: Sentence): Act =>
  spotsOf(sentence, 'allergen').some(({ value }) => value === 'nuts') &&
  !spotsOf(sentence, 'allergen').some(({ value }) => value === 'peanuts') &&
  act.slots.allergens?.length === 1 &&
  act.slots.allergens[0] === 'tree nuts'
    ? {
        ...act,
        slots: {
          ...act.slots,
          allergens: ['tree nuts', 'peanuts'],
          ...(act.intent === 'add-person' ? { asked: 'which-nuts' } : {}),
        },
      }
    : act;

/** What the sentence says of allergens, where the reading so far does not; null leaves that reading. */
export const allergenActs = (sentence: Sentence, base: readonly Act[]): readonly Act[] | null => {
  const spots = allergenSpots(sentence);
  const [act] = base;
  const heard = act?.slots.allergens ?? [];
  const person = ofPerson(sentence, spots);
  // "Tom, he's allergic to milk" is told, whatever else it sounds like: a question of people names nobody's allergy.
  const told = person?.intent === 'add-person' && act?.intent === 'who-allergic' && !has(sentence, 'which');
  // "Ines can't have nuts, what is there for her": told first, and then answered.
  if (act?.intent === 'can-eat' && person?.intent === 'add-person' && person.slots.person)
    return [person, { ...act, slots: { ...act.slots, person: person.slots.person } }];
  if (act && peopleAsked.has(act.intent) && !told) return null;
  if (person) {
    const same =
      act?.intent === 'add-person' &&
      person.slots.eaters === undefined &&
      wholeFoods(sentence).length === 0 &&
      heard.length >= (person.slots.allergens ?? named(spots)).length &&
      !/ /.test(act.slots.words ?? '');
    return same ? null : [person];
  }
  // "Let them mean gluten free": what marks mean is told of no food.
  if (spots.length === 0 || act?.intent === 'define-dots') return null;
  const beside = besides(sentence, spots, base);
  if (beside) return beside;
  const held =
    act?.slots.statements?.some(({ freeFrom, place }) => freeFrom !== undefined && place !== undefined) ??
    false;
  const frees = held ? null : toldFree(sentence, spots);
  const same = act?.intent === 'amend' && act.slots.free === true && heard.length >= named(spots).length;
  if (frees && !same) return frees;
  if (act?.intent === 'contains' && heard.length > 0) return null;
  // "The cooked rice is free from peanuts", told plainly: noted after a yes.
  const plain = act?.intent === 'amend' && heard.length > 0 && !doubting(sentence) && !asks(sentence);
  if (plain || act?.intent === 'add-person') return null;
  const food = ofFood(sentence, spots);
  if (food) return [food];
  // An allergy was named, and nothing takes it.
  if (!asks(sentence) && has(sentence, 'allergy') && heard.length === 0)
    return [{ intent: 'danger', slots: { asked: 'allergy', allergens: named(spots), item: emptyMention } }];
  return null;
};
