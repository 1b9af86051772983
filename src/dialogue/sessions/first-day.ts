/**
 * The three questions of the first day: what is told is held, read back, and kept after a yes. More may be
 * told before that, and put right; who must not eat what is never let go without a word.
 */
import { applyChange, joinChanges } from '../../kitchen/index.js';
import type { Change, Kitchen } from '../../kitchen/model.js';
import type { SaidEater, SaidManner, SaidWhole } from '../../protocol/first-day.js';
import type { Listener, Say } from '../../speech/answer.js';
import type { Slots } from '../../understanding/intents.js';
import { type Reply, type Turn, list, say, speakerPerson } from '../handler.js';
import { eaterWords, peopleKept } from '../people/eaters.js';
import { buildWhole } from '../places/places.js';
import { recordKind } from '../places/place-kinds.js';
import type { FirstDayDraft } from '../state.js';

const both = ['tree nuts', 'peanuts'] as const;

const tells = ({ allergens, nuts, diets, risks, unclear }: SaidEater): boolean =>
  allergens.length + diets.length + risks.length > 0 || nuts || unclear === true;

const without = (of: readonly string[], gone: readonly string[]): readonly string[] =>
  of.filter((one) => !gone.includes(one));

/** One of them with what is told of them now. */
const joinedWith = (known: SaidEater, told: SaidEater, anew: boolean): SaidEater => {
  const { unclear: _was, none: _none, ...rest } = known;
  const said = told.allergens.length > 0 || told.nuts;
  const unclear = told.unclear === true || (known.unclear === true && !said);
  return {
    ...rest,
    name: known.name ?? told.name,
    nuts: told.nuts || (known.nuts && !anew && told.allergens.length === 0),
    allergens:
      anew && told.allergens.length > 0
        ? told.allergens
        : [...new Set([...known.allergens, ...told.allergens])],
    diets: [...new Set([...known.diets, ...told.diets])],
    risks: [...new Set([...known.risks, ...told.risks])],
    ...(unclear ? { unclear: true as const } : {}),
  };
};

/** Who is meant: "he" of who was named last, what is told of nobody of whom something was not made out. */
const whomOf = (all: readonly SaidEater[], told: SaidEater, mine: string | null): number => {
  const isMe = told.who === 'me' || (told.name !== null && told.name === mine);
  switch (true) {
    case told.who === 'last':
      return all.length - 1;
    case told.who === 'whose':
      return all.findIndex(({ unclear }) => unclear);
    case isMe:
      return all.findIndex(({ who, name }) => who === 'me' || (mine !== null && name === mine));
    default:
      return all.findIndex(({ name }) => name?.toLowerCase() === told.name?.toLowerCase());
  }
};

/** Not them: nobody of that name, or, where another is told to have what they were, only no longer that. */
const takenBack = (
  all: readonly SaidEater[],
  { name }: SaidEater,
  others: readonly SaidEater[],
): readonly SaidEater[] => {
  const moved = others.flatMap(({ allergens, nuts }) => [...allergens, ...(nuts ? both : [])]);
  return all.flatMap((one) => {
    if (one.name?.toLowerCase() !== name?.toLowerCase()) return [one];
    const left = without(one.allergens, moved);
    return left.length < one.allergens.length ? [{ ...one, allergens: left }] : [];
  });
};

/**
 * The same people, with what was now told of them. What is told of nobody stays, to be asked whose it is; whoever
 * is named next is who it is of. `mine`: the speaker's own name.
 */
const withEaters = (
  before: readonly SaidEater[],
  told: readonly SaidEater[],
  anew: boolean,
  mine: string | null,
): readonly SaidEater[] => {
  const others = told.filter(({ none }) => !none);
  let all = told.filter(({ none }) => none).reduce((left, one) => takenBack(left, one, others), before);
  const whose = all.find(({ who }) => who === 'whose');
  const [only] = others;
  if (whose && only && others.length === 1 && only.who !== 'whose' && !tells(only)) {
    all = all.filter((one) => one !== whose);
    const { who: _whose, name: _name, relation: _relation, ...facts } = whose;
    return withEaters(all, [{ ...only, ...facts }], false, mine);
  }
  // "Cashews and pistachios, just those", of whom it was told already: nothing new.
  const heldBy = ({ allergens, nuts, diets, risks }: SaidEater): boolean =>
    !nuts &&
    diets.length + risks.length === 0 &&
    allergens.length > 0 &&
    all.some((one) => one.who !== 'whose' && allergens.every((of) => one.allergens.includes(of)));
  for (const eater of others.filter((one) => one.who !== 'whose' || !heldBy(one))) {
    const at = whomOf(all, eater, mine);
    const known = all[at];
    const me = eater.who === 'named' && eater.name !== null && eater.name === mine;
    all = known
      ? all.map((one, n) => (n === at ? joinedWith(one, eater, anew) : one))
      : [
          ...all,
          eater.who === 'last'
            ? { ...eater, who: 'whose' as const }
            : me
              ? { ...eater, who: 'me' as const }
              : eater,
        ];
  }
  return all;
};

/** The first and the second of a kind, as they are called where nothing tells them apart. */
const numbered = (told: readonly SaidWhole[], kind: string): boolean => {
  const alike = told.filter((one) => one.kind === kind && !one.none);
  return alike.length > 1 && alike.every(({ name }) => name.endsWith(` ${kind}`));
};

/** Told over again, with no fewer of any kind than before: it stands for all of that. */
const saidOver = (before: readonly SaidWhole[], told: readonly SaidWhole[]): boolean => {
  const of = (all: readonly SaidWhole[], kind: string): number =>
    all.filter((one) => one.kind === kind && !one.none).length;
  return before.length > 1 && before.every(({ kind }) => of(told, kind) >= of(before, kind));
};

/**
 * What there is with what is told now. Of a kind that is denied, put right or counted, nothing told before stands,
 * but for what has a name of its own, where the other is told without one: a garage freezer stays beside "the freezer".
 */
const withWholes = (
  before: readonly SaidWhole[],
  told: readonly SaidWhole[],
  anew: boolean,
): readonly SaidWhole[] => {
  const replaced = ({ name, kind }: SaidWhole): boolean => {
    const same = told.filter((one) => one.kind === kind);
    const plain = same.length === 1 && same[0]!.name === kind && !same[0]!.none;
    const ownName = name !== kind && !numbered(before, kind);
    return (
      told.some((one) => one.name === name) ||
      (same.length > 0 && anew && !(plain && ownName)) ||
      same.some(({ none }) => none) ||
      (numbered(told, kind) && !ownName)
    );
  };
  const kept = saidOver(before, told) ? [] : before.filter((one) => !replaced(one));
  return [...kept, ...told.filter(({ none }) => !none)];
};

/** What was told so far with what is told now. `anew`: it puts right what was read back. */
export const draftWith = (
  draft: FirstDayDraft,
  slots: Slots,
  anew: boolean,
  mine: string | null,
): FirstDayDraft => ({
  ...draft,
  ...(slots.wholes ? { wholes: withWholes(draft.wholes ?? [], slots.wholes, anew) } : {}),
  ...(slots.eaters ? { eaters: withEaters(draft.eaters ?? [], slots.eaters, anew, mine) } : {}),
  ...(slots.manner ? { manner: anew ? slots.manner : { ...draft.manner, ...slots.manner } } : {}),
});

/** Whose nuts are still to be told apart. */
const nutsOf = ({ eaters = [] }: FirstDayDraft): SaidEater | undefined =>
  eaters.find(({ who, nuts }) => nuts && who !== 'whose');

/** "Tree nuts", "both": what the nuts were. A yes to the question means both. */
export const withNuts = (draft: FirstDayDraft, said: readonly string[] | 'both'): FirstDayDraft => {
  const of = nutsOf(draft);
  const kinds = said === 'both' ? both : said;
  return {
    ...draft,
    eaters: (draft.eaters ?? []).map((eater) =>
      eater === of
        ? { ...eater, nuts: false, allergens: [...new Set([...eater.allergens, ...kinds])] }
        : eater,
    ),
  };
};

export const asksNuts = (draft: FirstDayDraft | undefined): boolean =>
  draft !== undefined && nutsOf(draft) !== undefined;

/** Told of nobody: who must not have it, or who eats so. */
const whoseQuestion = ({ allergens, diets, risks }: SaidEater): Say =>
  allergens.length > 0
    ? say('setup-whose', { allergens: list(allergens, true) })
    : say('setup-whose-else', { what: list([...diets, ...risks]) });

/** Without what nobody said whose it is: it is let go, and said to be. */
export const withoutWhose = (
  draft: FirstDayDraft,
): { readonly draft: FirstDayDraft; readonly told: readonly Say[] } => {
  const { eaters = [] } = draft;
  const open = eaters.filter(({ who, unclear }) => who === 'whose' || unclear);
  return {
    draft: {
      ...draft,
      eaters: eaters.filter(({ who }) => who !== 'whose').map(({ unclear: _unclear, ...one }) => one),
    },
    told: open.map((one) =>
      one.who === 'whose'
        ? say('setup-whose-not-kept', { what: list([...one.allergens, ...one.diets, ...one.risks]) })
        : say('setup-unclear-not-kept', one.who === 'me' ? {} : { name: one.name ?? '' }),
    ),
  };
};

/** Something is still to be told before it can be kept: agreeing to it keeps nothing. */
export const lacks = ({ eaters = [] }: FirstDayDraft): boolean =>
  eaters.some(({ who, unclear }) => who === 'whose' || unclear);

const wholeWords = ({ name, parts }: SaidWhole): Say => {
  const told = parts.flatMap(({ kind, count }) => {
    const known = recordKind(kind);
    return known ? [say('place-part', { kind: known, count })] : [];
  });
  return told.length > 0 ? say('told-whole-with', { name, parts: list(told) }) : say('told-whole', { name });
};

const mannerWords = ({ length, rate, volume, whisper }: SaidManner): readonly Say[] => [
  ...(length ? [say('told-length', { length })] : []),
  ...(rate ? [say('told-rate', { rate })] : []),
  ...(volume ? [say('told-volume', { volume })] : []),
  ...(whisper ? [say('told-whisper')] : []),
];

/** The question that reads back what was told, or asks for what is missing; null where nothing waits. */
export const draftQuestion = (draft: FirstDayDraft | undefined): Say | null => {
  if (!draft) return null;
  if (draft.asksName) return say('setup-your-name');
  const nuts = nutsOf(draft);
  if (nuts) return say('setup-which-nuts', nuts.who === 'me' ? {} : { name: nuts.name ?? '' });
  const { wholes = [], eaters = [], manner } = draft;
  const unclear = eaters.find((one) => one.unclear);
  if (unclear) return say('setup-what-not', unclear.who === 'me' ? {} : { name: unclear.name ?? '' });
  const whose = eaters.find(({ who }) => who === 'whose');
  if (whose) return whoseQuestion(whose);
  const told = [...wholes.map(wholeWords), ...eaters.map(eaterWords), ...(manner ? mannerWords(manner) : [])];
  return told.length > 0 ? say('setup-right', { told: list(told) }) : null;
};

const placesKept = (turn: Turn, wholes: readonly SaidWhole[]): readonly Change[] => {
  const changes: Change[] = [];
  let kitchen: Kitchen = turn.kitchen;
  for (const { name, kind, parts } of wholes) {
    const known = recordKind(kind);
    if (!known) continue;
    const counted = parts.flatMap((part) => {
      const of = recordKind(part.kind);
      return of ? [{ kind: of, count: part.count }] : [];
    });
    const made = buildWhole({ ...turn, kitchen }, name, known, counted).changes ?? [];
    changes.push(...made);
    kitchen = made.reduce(applyChange, kitchen);
  }
  return changes;
};

/** A fifth quicker or slower, as "slower" alone makes it. */
const quicker = 1.2;

const heardAs = (listener: Listener, { length, rate, volume, whisper }: SaidManner): Listener => ({
  ...listener,
  ...(length ? { length } : {}),
  ...(rate
    ? {
        rate: Math.round((rate === 'slower' ? listener.rate / quicker : listener.rate * quicker) * 100) / 100,
      }
    : {}),
  ...(volume ? { volume: volume === 'louder' ? 'loud' : 'soft' } : {}),
  ...(whisper ? { whisper: true } : {}),
});

/** Who told of an allergy of her own, and is not known by name. */
export const nameless = (turn: Turn, { eaters = [] }: FirstDayDraft): boolean =>
  eaters.some(
    ({ who, name, allergens, diets, risks }) =>
      who === 'me' && !name && !speakerPerson(turn) && allergens.length + diets.length + risks.length > 0,
  );

export const withName = ({ asksName: _asked, ...draft }: FirstDayDraft, name: string): FirstDayDraft => ({
  ...draft,
  eaters: (draft.eaters ?? []).map((eater) => (eater.who === 'me' ? { ...eater, name } : eater)),
});

/** Keeps what was read back and agreed to. */
export const keepDraft = (turn: Turn, draft: FirstDayDraft): Reply => {
  const changes = [...placesKept(turn, draft.wholes ?? []), ...peopleKept(turn, draft.eaters ?? [])];
  const [first, ...rest] = changes;
  return {
    parts: [say('setup-kept')],
    ...(first ? { changes: [joinChanges(first, ...rest)] } : {}),
    ...(draft.manner ? { listener: heardAs(turn.listener, draft.manner) } : {}),
  };
};

/** What is let go when the question is passed over: an allergy told is named. */
export const notKept = ({ eaters = [] }: FirstDayDraft): readonly Say[] => {
  const told = eaters.filter(({ allergens, nuts }) => allergens.length > 0 || nuts);
  return told.length > 0
    ? [
        say('setup-not-kept', {
          told: list(
            told.map((eater) => eaterWords({ ...eater, allergens: eater.nuts ? ['nuts'] : eater.allergens })),
          ),
        }),
      ]
    : [];
};
