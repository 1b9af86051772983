/**
 * The three questions of the first day: what is told is held, read back, and kept after a yes. More may be
 * told before that, and put right; who must not eat what is never let go without a word.
 */
import {
  addPerson,
  amendPerson,
  applyChange,
  isRefused,
  joinChanges,
  personNamed,
} from '../../kitchen/index.js';
import type { Change, Kitchen } from '../../kitchen/model.js';
import type { SaidEater, SaidManner, SaidWhole } from '../../protocol/first-day.js';
import type { Listener, Say } from '../../speech/answer.js';
import type { Slots } from '../../understanding/intents.js';
import { type Reply, type Turn, list, say, speakerPerson } from '../handler.js';
import { buildWhole } from '../places/places.js';
import { kindNamed } from '../places/place-kinds.js';
import type { FirstDayDraft } from '../state.js';

const both = ['tree nuts', 'peanuts'] as const;

/** The same people, with what was now told of them; a pronoun is of who was named last. */
const withEaters = (
  before: readonly SaidEater[],
  told: readonly SaidEater[],
  anew: boolean,
): readonly SaidEater[] => {
  const all = [...before];
  for (const eater of told) {
    const at =
      eater.who === 'last'
        ? all.length - 1
        : all.findIndex((one) => (eater.who === 'me' ? one.who === 'me' : one.name === eater.name));
    const known = all[at];
    if (!known) {
      if (eater.who !== 'last') all.push(eater);
      continue;
    }
    all[at] = {
      ...known,
      nuts: eater.nuts || (known.nuts && !anew && eater.allergens.length === 0),
      allergens:
        anew && eater.allergens.length > 0
          ? eater.allergens
          : [...new Set([...known.allergens, ...eater.allergens])],
      diets: [...new Set([...known.diets, ...eater.diets])],
      risks: [...new Set([...known.risks, ...eater.risks])],
    };
  }
  return all;
};

/** What there is with what is told now; of a kind that is denied, or put right, nothing told before stands. */
const withWholes = (
  before: readonly SaidWhole[],
  told: readonly SaidWhole[],
  anew: boolean,
): readonly SaidWhole[] => [
  ...before.filter(
    ({ name, kind }) => !told.some((one) => one.name === name || (one.kind === kind && (anew || one.none))),
  ),
  ...told.filter(({ none }) => !none),
];

/** What was told so far with what is told now. `anew`: it puts right what was read back. */
export const draftWith = (draft: FirstDayDraft, slots: Slots, anew: boolean): FirstDayDraft => ({
  ...draft,
  ...(slots.wholes ? { wholes: withWholes(draft.wholes ?? [], slots.wholes, anew) } : {}),
  ...(slots.eaters ? { eaters: withEaters(draft.eaters ?? [], slots.eaters, anew) } : {}),
  ...(slots.manner ? { manner: anew ? slots.manner : { ...draft.manner, ...slots.manner } } : {}),
});

/** Whose nuts are still to be told apart. */
const nutsOf = ({ eaters = [] }: FirstDayDraft): SaidEater | undefined => eaters.find(({ nuts }) => nuts);

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

const wholeWords = ({ name, parts }: SaidWhole): Say => {
  const told = parts.flatMap(({ kind, count }) => {
    const known = kindNamed(kind);
    return known ? [say('place-part', { kind: known, count })] : [];
  });
  return told.length > 0 ? say('told-whole-with', { name, parts: list(told) }) : say('told-whole', { name });
};

const eaterWords = ({ who, name, allergens, diets, risks }: SaidEater): Say =>
  say('told-eater', {
    ...(who === 'me' ? {} : { name: name ?? '' }),
    ...(allergens.length > 0 ? { allergens: list(allergens, true) } : {}),
    ...(diets.length > 0 ? { diets: list(diets) } : {}),
    ...(risks.length > 0 ? { risk: 'yes' } : {}),
  });

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
  const told = [...wholes.map(wholeWords), ...eaters.map(eaterWords), ...(manner ? mannerWords(manner) : [])];
  return told.length > 0 ? say('setup-right', { told: list(told) }) : null;
};

const placesKept = (turn: Turn, wholes: readonly SaidWhole[]): readonly Change[] => {
  const changes: Change[] = [];
  let kitchen: Kitchen = turn.kitchen;
  for (const { name, kind, parts } of wholes) {
    const known = kindNamed(kind);
    if (!known) continue;
    const counted = parts.flatMap((part) => {
      const of = kindNamed(part.kind);
      return of ? [{ kind: of, count: part.count }] : [];
    });
    const made = buildWhole({ ...turn, kitchen }, name, known, counted).changes ?? [];
    changes.push(...made);
    kitchen = made.reduce(applyChange, kitchen);
  }
  return changes;
};

const peopleKept = (turn: Turn, eaters: readonly SaidEater[]): readonly Change[] => {
  const changes: Change[] = [];
  let kitchen: Kitchen = turn.kitchen;
  for (const { who, name, allergens, diets, risks } of eaters) {
    const person = who === 'me' ? speakerPerson(turn) : name ? personNamed(kitchen, name) : null;
    const doing = { ...turn, kitchen };
    const facts = { allergens, diets, ...(risks.length > 0 ? { atRisk: true, risks } : {}) };
    const result = person
      ? amendPerson(doing, person.id, {
          addAllergens: allergens,
          addDiets: diets,
          ...(risks.length > 0 ? { atRisk: true, addRisks: risks } : {}),
        })
      : name
        ? addPerson(doing, { name, ...facts })
        : null;
    if (!result || isRefused(result)) continue;
    changes.push(result);
    kitchen = applyChange(kitchen, result);
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
