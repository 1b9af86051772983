/** Getting the one thing an act needs: from the words, from what was said before, or by asking. */
import { foodKey } from '../../kitchen/index.js';
import { itMention } from '../../understanding/intents.js';
import type { Item, Place } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { Mention, PlaceMention } from '../../understanding/intents.js';
import { type Reply, type Turn, about, list, say, notFound } from '../handler.js';
import type { Ask, Choice } from '../state.js';
import { dishAmong } from './dish.js';
import { findItems, noSuch } from './items.js';
import { goneSpokenOf, itJustGone, noneLeft } from './none-left.js';
import { findPlace } from './places.js';
import { allAlike, choicesOf, oldestFirst } from './tell-apart.js';

export type Needed<T> = { readonly got: T } | { readonly reply: Reply };

const shownChoices = 4;

/** "Two fit: the small jar, or the large jar with the wooden bead. Which one?" */
export const askWhich = (slot: string, names: readonly string[], choices: readonly Choice[]): Ask => {
  const labels = choices.map(({ label }) => label);
  const shown = list(labels.slice(0, shownChoices), true);
  const count = choices.length;
  const name = new Set(names).size === 1 ? names[0]! : null;
  const crowded = count > shownChoices;
  // When only the place differs, the places alone are named.
  const places = labels.flatMap(({ phrase, args }) =>
    phrase === 'apart-place' && args?.at ? [args.at] : [],
  );
  const apart = places.length === labels.length;
  const question = crowded
    ? say('which-many', { count, choices: shown })
    : name
      ? apart
        ? say('which-place-of', { name, choices: list(places.slice(0, shownChoices), true) })
        : say('which-named', { count, name, choices: shown })
      : say('which-mixed', { count, choices: shown });
  const again = say('which-again', { choices: shown });
  const brief = name ? say('which-brief', { name }) : say('which-brief-any');
  return { slot, question, again, brief, expecting: 'choice', choices };
};

export interface NeedItem {
  readonly slot?: string;
  /** Asked when nothing was named: "What did you finish?" */
  readonly question: Say;
  /** Several at once are fine when that is what was said ("them", "all", "both"). */
  readonly several?: boolean;
  /** Only these can be meant. */
  readonly fitting?: (item: Item) => boolean;
  /** Containers that differ only by place: take the oldest rather than ask. */
  readonly anyOfBatch?: boolean;
  /** Of several that fit, the one just spoken of is meant: for questions, which a wrong guess costs little. */
  readonly lastOne?: boolean;
  /** With nothing named, the one thing just spoken of is meant. Default true. */
  readonly orIt?: boolean;
}

const it = (turn: Turn): Mention | undefined => (turn.memory.items.length === 1 ? itMention : undefined);

const pluralPointers = new Set(['them', 'both', 'all', 'rest']);

/** "The old tub of chilli": of several of one name, which by its age. */
const ageSaid = ({ qualifiers }: Turn): 'old' | 'new' | null =>
  qualifiers.has('older') ? 'old' : qualifiers.has('newer') ? 'new' : null;

/** "The chicken", while the roast chicken is heated or was just asked about. */
export const justSpokenOf = (turn: Turn, items: readonly Item[]): Item | null => {
  const [only, ...more] = turn.memory.items;
  return (
    dishAmong(turn, items) ?? (more.length === 0 ? items.find(({ id }) => id === only) : undefined) ?? null
  );
};

/** "The stew", of several dishes of which one was just put away: that one. */
const likelier = (turn: Turn, items: readonly Item[]): readonly Item[] => {
  const { memory, state } = turn;
  const keys = new Set(items.map(({ name }) => foodKey(name)));
  if (keys.size < 2 || state.turns - (state.done?.turn ?? -9) > turnsDoneLasts) return items;
  const done = items.filter(({ id }) => memory.lastAdded.includes(id));
  return new Set(done.map(({ name }) => foodKey(name))).size === 1 ? done : items;
};
/** What was done stays the likelier one so many turns. */
const turnsDoneLasts = 3;

/** The items meant, or the reply that asks for them or says there are none. */
export const needItems = (
  turn: Turn,
  mention: Mention | undefined,
  need: NeedItem,
): Needed<readonly Item[]> => {
  const slot = need.slot ?? 'item';
  const settled = (turn.picked[slot] ?? []).flatMap((id) => turn.kitchen.items.get(id) ?? []);
  if (settled.length > 0) return { got: settled };
  const found = findItems(turn, mention ?? (need.orIt === false ? undefined : it(turn)));
  if (found.unknown) return { reply: { parts: noSuch(turn, found.unknown) } };
  if (found.near && found.items.length > 0) return { reply: nearMiss(turn, slot, found.items) };
  if (found.items.length === 0) {
    const gone = found.missing ? (itJustGone(turn, mention) ?? goneSpokenOf(turn, mention)) : null;
    if (gone) return { reply: noneLeft(turn, gone) };
    if (!found.missing) return { reply: { parts: [notFound('nothing-like-that')] } };
    const { question } = need;
    return { reply: { parts: [], ask: { slot, question, again: say('ask-item-again'), expecting: 'item' } } };
  }
  const fitting = need.fitting ? found.items.filter(need.fitting) : found.items;
  const items = likelier(turn, fitting.length > 0 ? fitting : found.items);
  if (items.length === 1) return { got: items };
  const age = new Set(items.map(({ name }) => name)).size === 1 ? ageSaid(turn) : null;
  const aged = oldestFirst(items).at(age === 'new' ? -1 : 0);
  if (age && aged) return { got: [aged] };
  const dish = mention?.words ? dishAmong(turn, items) : null;
  const last = dish ?? (need.lastOne === true ? justSpokenOf(turn, items) : null);
  if (last) return { got: [last] };
  const all = (mention?.pointer && pluralPointers.has(mention.pointer)) || turn.qualifiers.has('all');
  if (need.several && all && new Set(items.map(({ name }) => name)).size === 1) return { got: items };
  if (need.several && mention?.pointer && pluralPointers.has(mention.pointer)) return { got: items };
  const oneBatch = items[0]!.batchId !== null && items.every(({ batchId }) => batchId === items[0]!.batchId);
  if (allAlike(turn.kitchen, items) || (need.anyOfBatch && oneBatch)) {
    return { got: [oldestFirst(items)[0]!] };
  }
  const names = items.map(({ name }) => name);
  return { reply: { parts: [], ask: askWhich(slot, names, choicesOf(turn.kitchen, items)) } };
};

/** What was described is not quite here: offer what is nearest. */
const nearMiss = (turn: Turn, slot: string, items: readonly Item[]): Reply => {
  const choices = choicesOf(turn.kitchen, items).slice(0, shownChoices);
  const labels = list(
    choices.map(({ label }) => label),
    true,
  );
  const one = choices.length === 1;
  const question = one
    ? say('near-one', { choice: labels, name: items[0]!.name })
    : say('near-several', { choices: labels });
  const ask: Ask = { slot, question, expecting: one ? 'yes-no' : 'choice', choices };
  if (!one) return { parts: [], ask };
  // "Yes, chuck it": what was guessed is what "it" means now, and not what was spoken of before.
  return {
    parts: [],
    ask: { ...ask, guess: choices[0]!.ids },
    memory: about(turn, items),
  };
};

export const needItem = (turn: Turn, mention: Mention | undefined, need: NeedItem): Needed<Item> => {
  const found = needItems(turn, mention, need);
  return 'reply' in found ? found : { got: found.got[0]! };
};

export interface NeedPlace {
  readonly slot?: string;
  readonly question: Say;
  readonly again?: Say;
  readonly guess?: readonly string[];
  /** What a place nobody told of may be made as, see `new-place.ts`. */
  readonly offers?: (words: string) => string | null;
  /** "The second shelf" of two cupboards is taken to be in the one this place is in. */
  readonly nearId?: string | null;
  /** Of several that the words fit, the likelier is taken; the answer says which. */
  readonly likely?: boolean;
}

export const needPlace = (
  turn: Turn,
  mention: PlaceMention | undefined,
  need: NeedPlace,
): Needed<{ place: Place; spot: string | null }> => {
  const slot = need.slot ?? 'place';
  const found = findPlace(turn, mention, slot, need.nearId ?? null, need.likely === true);
  switch (found.found) {
    case 'one':
      return { got: { place: found.place, spot: found.spot } };
    case 'several': {
      const labels = list(
        found.choices.slice(0, shownChoices).map(({ label }) => label),
        true,
      );
      const question = say(found.sideBySide ? 'which-beside' : 'which-place', { choices: labels });
      const again = say('which-place-again', { choices: labels });
      return {
        reply: { parts: [], ask: { slot, question, again, expecting: 'place', choices: found.choices } },
      };
    }
    case 'unknown': {
      const offer = need.offers?.(found.words) ?? null;
      const ask: Ask = {
        slot,
        question: say('no-such-place', { words: found.words, offer: offer ? 'yes' : 'no' }),
        again: say('ask-place-again'),
        expecting: 'place',
      };
      return { reply: { parts: [], ask: offer ? { ...ask, guess: [offer] } : ask } };
    }
    case 'none': {
      const ask: Ask = {
        slot,
        question: need.question,
        again: need.again ?? say('ask-place-again'),
        expecting: 'place',
      };
      return { reply: { parts: [], ask: need.guess ? { ...ask, guess: need.guess } : ask } };
    }
  }
};
