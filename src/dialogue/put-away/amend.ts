/** A fact told later: a date, a diet mark, an allergen, the maker, how to heat it, a note. */
import {
  type Facts,
  amend as amendChange,
  applyChange,
  ingredientNote,
  isFrozen,
  isRefused,
  isShare,
  likeNames,
  shareOf,
} from '../../kitchen/index.js';
import { allergenNamed, allergensOf, allergenWord } from '../../safety/index.js';
import type { Change, DateKind, Item, Preparation } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { Act, Mention, SaidPreparation, Slots } from '../../understanding/intents.js';
import { dateSaidAs } from '../describe/came.js';
import { groupAmount } from '../describe/item.js';
import { pastByIt } from '../describe/past.js';
import { refusal } from '../describe/refusals.js';
import { watchers } from '../describe/watchers.js';
import { type Handler, type Reply, type Turn, about, day, list, say, notFound } from '../handler.js';
import { mark } from '../markers/markers.js';
import { needItems } from '../refer/need.js';
import type { Ask } from '../state.js';
import { dateKindOf } from './date-kind.js';
import { makerName } from './maker-name.js';
import { preparationOf } from './preparation.js';
import { saidDates } from './said-dates.js';

/** Facts to keep, and how they are read back. */
export interface Told {
  readonly facts: Facts;
  /** Read back, one short piece each. */
  readonly said: readonly Say[];
}

export const dateFacts = (told: Slots['dates'], maker: string | null): Told => {
  const dates = saidDates(told);
  const said = Object.entries(dates).map(([kind, at]) =>
    at
      ? say('read-back-date', { what: dateSaidAs(kind as DateKind, { maker }), date: day(at) })
      : say('date-unknown-noted', { what: kind }),
  );
  return { facts: Object.keys(dates).length > 0 ? { dates } : {}, said };
};

const allergenFacts = ({ allergens, free, negated }: Slots): Told => {
  if (!allergens?.length) return { facts: {}, said: [] };
  const names = list(allergens);
  if (free || negated)
    return { facts: { freeFrom: { add: allergens } }, said: [say('read-back-free', { allergens: names })] };
  return { facts: { contains: { add: allergens } }, said: [say('read-back-contains', { allergens: names })] };
};

const amountFacts = (item: Item, { amount, left, share }: Slots): Told => {
  const said = amount ?? left ?? share;
  if (!said) return { facts: {}, said: [] };
  const whole = isShare(said) ? (item.amountAtFirst ? shareOf(item.amountAtFirst, said) : null) : said;
  const counted =
    whole && whole.unit === 'piece' && item.amount ? { ...whole, unit: item.amount.unit } : whole;
  return counted
    ? {
        facts: { amount: counted },
        said: [say('read-back-amount', { amount: { kind: 'amount', amount: counted } })],
      }
    : { facts: {}, said: [] };
};

const preparationFacts = (turn: Turn, item: Item, slots: Slots): Told => {
  if (!slots.preparation) return { facts: {}, said: [] };
  const from =
    slots.from_state === 'freezer' || slots.from_state === 'fridge'
      ? slots.from_state
      : isFrozen(turn, item)
        ? 'freezer'
        : 'any';
  const { edit } = slots.preparation;
  if (edit) return editedStep(turn, item, slots.preparation, edit);
  const preparation: Preparation = preparationOf(slots.preparation, turn, from);
  const { minutes, watts, method, heat, steps } = preparation;
  return {
    facts: { preparation },
    said: [
      say('read-back-reheating', {
        method,
        ...(minutes !== null ? { time: { kind: 'duration', seconds: minutes * 60 } } : {}),
        ...(watts !== null ? { watts } : {}),
        ...(heat ? { heat: { kind: 'temperature', ...heat } } : {}),
      }),
      ...(slots.preparation.steps ? steps.map((words) => say('read-back-step', { words })) : []),
    ],
  };
};

/** "Add a last step to the waffles", "take the second step out": of the way that was named, else of the first with steps. */
const editedStep = (
  turn: Turn,
  { preparations }: Item,
  said: SaidPreparation,
  { kind, at }: NonNullable<SaidPreparation['edit']>,
): Told => {
  const asked = preparationOf(said, turn);
  const known =
    preparations.find(
      ({ method, steps }) => said.method !== null && method === asked.method && steps.length > 0,
    ) ?? preparations.find(({ steps }) => said.method === null && steps.length > 0);
  const before = known ?? { ...asked, steps: [] };
  const index = at > 0 ? at - 1 : before.steps.length + at + (kind === 'add' ? 1 : 0);
  const replaced = before.steps[index];
  if (kind !== 'add' && replaced === undefined) return { facts: {}, said: [] };
  const steps = before.steps.toSpliced(
    Math.min(index, before.steps.length),
    kind === 'add' ? 0 : 1,
    ...asked.steps,
  );
  const nth = { kind: 'ordinal', n: Math.min(index, before.steps.length) + 1 } as const;
  return {
    facts: { preparation: { ...before, steps } },
    said: [
      kind === 'drop'
        ? say('read-back-step-out', { words: replaced! })
        : say('read-back-step', { step: nth, words: asked.steps.join(', ') }),
    ],
  };
};

/** "There's tahini in it": noted, and the allergen group that the published table counts it to. */
const ingredientFacts = (turn: Turn, { asked, words }: Slots): Told => {
  if (asked !== 'ingredient' || !words) return { facts: {}, said: [] };
  const groups = allergensOf(turn.kitchen.household.region);
  const ids = allergenNamed(words);
  const here = ids.filter((id) => groups.some((group) => group.id === id));
  // One that only another country's list holds is told all the same.
  const names = (here.length > 0 ? here : ids).map(allergenWord);
  const same = names.includes(words) || names.includes(`${words}s`);
  const contains = names.length > 0 ? { contains: { add: names } } : {};
  const notes = same ? {} : { notes: { add: [ingredientNote(words)] } };
  return {
    facts: { ...contains, ...notes },
    said: [
      ...(same ? [] : [say('read-back-ingredient', { what: words })]),
      ...(names.length > 0 ? [say('read-back-contains', { allergens: list(names) })] : []),
    ],
  };
};

const wordFacts = (item: Item, { words, spelled, asked, caution }: Slots): Told => {
  const facts: { -readonly [K in keyof Facts]: Facts[K] } = {};
  const said: Say[] = [];
  if (caution) {
    facts.cautions = { add: [caution] };
    said.push(say('read-back-caution', { caution }));
  }
  const name = spelled ?? (asked === 'name' ? words : undefined);
  if (name) {
    facts.name = name;
    said.push(say('read-back-name', { name }));
  } else if (asked === 'no notes') {
    facts.notes = { remove: item.notes };
    said.push(say('read-back-no-notes'));
  } else if (words && asked !== 'ingredient') {
    facts.notes = { add: [words] };
    said.push(say('read-back-note', { note: words }));
  }
  return { facts, said };
};

const personFacts = (turn: Turn, { maker, person, diet, negated }: Slots): Told => {
  const facts: { -readonly [K in keyof Facts]: Facts[K] } = {};
  const said: Say[] = [];
  if (maker) {
    facts.maker = makerName(turn, maker);
    said.push(say('read-back-maker', { maker: facts.maker }));
  }
  const owner = person?.candidates[0] ? turn.kitchen.people.get(person.candidates[0].id) : undefined;
  if (owner) {
    facts.ownerId = owner.id;
    said.push(say('read-back-owner', { name: owner.name }));
  }
  if (diet) {
    facts.diets = negated ? { remove: [diet] } : { add: [diet] };
    said.push(say(negated ? 'read-back-not-diet' : 'read-back-diet', { diet }));
  }
  return { facts, said };
};

const told = (turn: Turn, item: Item, slots: Slots): Told => {
  const all = [
    dateFacts(slots.dates, slots.maker ?? item.maker),
    allergenFacts(slots),
    ingredientFacts(turn, slots),
    amountFacts(item, slots),
    preparationFacts(turn, item, slots),
    wordFacts(item, slots),
    personFacts(turn, slots),
  ];
  return {
    facts: Object.assign({}, ...all.map(({ facts }) => facts)) as Facts,
    said: all.flatMap(({ said }) => said),
  };
};

/** A date whose kind was not said, put where it belongs; a question when that is not plain. */
const withDate = (turn: Turn, item: Item, slots: Slots): { slots: Slots } | { ask: Ask } => {
  const { when, dates, asked } = slots;
  if (dates) return { slots };
  if (!when || when === 'unknown') {
    const question = say('ask-what-date', { name: item.name });
    return asked === 'date' && !when ? { ask: { slot: 'when', question, expecting: 'date' } } : { slots };
  }
  const which = dateKindOf(turn, item, when);
  return 'ask' in which ? which : { slots: { ...slots, dates: { [which.kind]: when } } };
};

/** Facts about the dish hold for every container of it; a date or an amount is of one. */
const ofTheDish = (facts: Facts): boolean =>
  facts.amount === undefined &&
  (facts.dates === undefined || Object.keys(facts.dates).every((kind) => kind === 'made')) &&
  (facts.preparation ??
    facts.contains ??
    facts.freeFrom ??
    facts.diets ??
    facts.maker ??
    facts.dates ??
    facts.cautions) !== undefined;

/** "Put Saturday on it as the use by", of four portions just put away: a date that is printed on one of them is on all. */
const lotJustTold = ({ kitchen, memory }: Turn, { item: said, dates, amount }: Slots, item: Item): Item[] => {
  const pointed = !said || (said.words === null && (said.pointer === null || said.pointer === 'it'));
  if (!pointed || amount || !(dates?.useBy ?? dates?.bestBefore) || item.batchId === null) return [];
  if (!memory.lastAdded.includes(item.id)) return [];
  return memory.lastAdded.flatMap((id) => {
    const one = kitchen.items.get(id);
    return one && one.id !== item.id && one.gone === null && one.batchId === item.batchId ? [one] : [];
  });
};

/** "The big jar with the wooden bead is sorghum": the bead is the marker of the sorghum. */
const wearsMarker = ({ slots }: Act, turn: Turn): Reply | null => {
  const { marker, words, item } = slots;
  if (!marker || !words || item) return null;
  const candidates = likeNames(turn.kitchen, words).map((one) => ({ id: one.item.id, fit: one.fit }));
  const named: Mention = { ...marker, words, candidates, pointer: null, touch: null };
  return candidates.length > 0
    ? mark({ intent: 'mark', slots: { marker, item: named } }, turn)
    : { parts: [notFound('no-such-item', { name: words })] };
};

export const amend: Handler = (act, turn) => {
  const worn = wearsMarker(act, turn);
  if (worn) return worn;
  const found = needItems(turn, act.slots.item, {
    question: say('ask-amend'),
    anyOfBatch: true,
    several: true,
  });
  if ('reply' in found) return found.reply;
  const [item, ...named] = found.got as [Item, ...Item[]];
  const others = named.length > 0 ? named : lotJustTold(turn, act.slots, item);
  const memory = about(turn, found.got);
  const dated = withDate(turn, item, act.slots);
  if ('ask' in dated) return { parts: [], ask: dated.ask, memory };
  const { facts, said } = told(turn, item, dated.slots);
  if (said.length === 0 && act.slots.asked === 'name') {
    return {
      parts: [],
      ask: { slot: 'words', question: say('ask-new-name', { name: item.name }), expecting: 'words' },
      memory,
    };
  }
  if (said.length === 0) {
    return {
      parts: [],
      ask: { slot: 'words', question: say('ask-amend-what', { name: item.name }), expecting: 'words' },
      memory,
    };
  }
  const dish = item.batchId !== null && !facts.amount;
  const whole = { ...facts, wholeBatch: dish, sure: turn.sure };
  const result = amendChange(turn, item.id, whole);
  if (isRefused(result) && result.refused === 'contains-it') {
    const allergens = list(result.about ?? []);
    return { parts: [], confirm: say('confirm-free', { name: item.name, allergens }), memory };
  }
  if (isRefused(result) && (result.refused !== 'nothing-changes' || others.length > 0))
    return refusal(turn, result);
  if (isRefused(result))
    return { parts: [say('known-already', { name: item.name, facts: list(said) })], memory };
  const changes = [result, ...amendedToo(applyChange(turn.kitchen, result), turn, others, whole)];
  const all = changes.flatMap(({ ops }) =>
    ops.flatMap((op) => (op.kind === 'item' && op.after ? [op.after] : [])),
  );
  const { name } = item;
  const group = all.length > 1 && ofTheDish(facts) ? groupAmount({ items: all, first: all[0]! }) : null;
  return {
    parts: [
      group
        ? say('amended-all', { name, amount: group, facts: list(said) })
        : say('amended', { name, facts: list(said) }),
      ...(facts.dates ? pastByIt(turn, changes) : []),
      ...watchers(turn, item, facts.contains?.add ?? []),
    ],
    changes,
    doubt: say('confirm-amend', { name: item.name, facts: list(said) }),
    memory,
    names: [facts.name ?? name],
  };
};

/** The same facts of other containers that were meant, batch by batch. */
const amendedToo = (
  from: Turn['kitchen'],
  turn: Turn,
  others: readonly Item[],
  facts: Facts,
): readonly Change[] => {
  const changes: Change[] = [];
  let kitchen = from;
  for (const { id } of others) {
    const result = amendChange({ ...turn, kitchen }, id, facts);
    if (isRefused(result)) continue;
    changes.push(result);
    kitchen = applyChange(kitchen, result);
  }
  return changes;
};
