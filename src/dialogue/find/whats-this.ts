/** What a touched or described thing is; everything about it; and how to get a hand on it. */
import { spotIn } from '../../understanding/index.js';
import { emptyMention } from '../../understanding/intents.js';
import { findMarkers, itemsRightAt, itemWithMarker, lastItemOf, marksOf } from '../../kitchen/index.js';
import type { Item, Marker } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import { ageParts } from '../age/age-parts.js';
import { dateSaidAs } from '../describe/came.js';
import { grouped, groupName, whereAndFeel } from '../describe/item.js';
import { tellBetween } from './between.js';
import { placeAt } from '../describe/place.js';
import { itemFeel, markerNoun } from '../describe/touch.js';
import { type Handler, type Reply, type Turn, about, day, list, say, todayOf } from '../handler.js';
import type { Act } from '../../understanding/intents.js';
import { findItems } from '../refer/items.js';
import { needItem } from '../refer/need.js';
import { frozenBefore } from './frozen-before.js';
import { plainTouch } from '../refer/touch-words.js';

/** A marker in the hand: what it stands on, or what it was on before. */
const tellMarker = (turn: Turn, marker: Marker): Reply => {
  const item = itemWithMarker(turn.kitchen, marker.id);
  if (item) return tellOne(turn, item);
  const last = lastItemOf(turn.kitchen, marker);
  const args = { marker: markerNoun(marker), ...(last ? { name: last.name } : {}) };
  return { parts: [say('marker-spare', args)], memory: { markerId: marker.id } };
};

/** What it is and how old, in one breath. */
const tellOne = (turn: Turn, item: Item): Reply => {
  const group = { items: [item], first: item };
  const { maker, amount } = item;
  const what = say('this-is', {
    name: item.name,
    ...(maker ? { maker } : {}),
    ...(amount ? { amount: { kind: 'amount', amount } } : {}),
  });
  const age = ageParts(turn, item);
  const cautions = item.cautions.map((caution) => say('item-caution', { caution }));
  return {
    parts: [what, ...age.parts.slice(0, 1), ...cautions],
    details: [
      say('kept-where', { item: groupName(group), where: whereAndFeel(turn.kitchen, group) }),
      ...age.details,
    ],
    sources: age.sources,
    memory: about(turn, [item]),
    names: [item.name],
    count: 1,
  };
};

/** A marker nobody told us of is most likely on something new. */
const unknownMarker: Reply = {
  parts: [say('marker-unknown')],
  ask: { slot: 'item', question: say('ask-marker-on'), again: say('ask-put-what-again'), expecting: 'name' },
  askFor: { intent: 'put-away', slots: {} },
};

export const whatsThis: Handler = (act, turn) => {
  if (act.slots.asked === 'guess') return tellGuess(act, turn);
  const { item, marker, container } = act.slots;
  const { touched } = turn.memory;
  const [settled] = (turn.picked.item ?? []).flatMap((id) => turn.kitchen.items.get(id) ?? []);
  if (settled) return tellOne(turn, settled);
  const pointed = item?.pointer === 'this' || item?.pointer === 'that' || item?.pointer === 'it';
  const felt = marker?.touch ?? item?.touch ?? container;
  if (touched && (pointed || (!item && !felt && !marker))) {
    if (touched.itemId) {
      const known = turn.kitchen.items.get(touched.itemId);
      if (known) return tellOne(turn, known);
    }
    const known = touched.markerId ? turn.kitchen.markers.get(touched.markerId) : undefined;
    return known ? tellMarker(turn, known) : unknownMarker;
  }
  const byId = marker?.candidates.flatMap(({ id }) => turn.kitchen.markers.get(id) ?? []) ?? [];
  const fitting = felt
    ? findMarkers(turn.kitchen, plainTouch(felt)).filter(({ differs }) => differs.length === 0)
    : [];
  const top = fitting[0]?.fit;
  const markers = byId.length === 1 ? byId : fitting.filter(({ fit }) => fit === top).map(({ of }) => of);
  if (markers.length === 1) return tellMarker(turn, markers[0]!);
  if (markers.length > 1) return tellMarkers(turn, markers, felt?.container);
  const mention = item ?? (felt ? { ...emptyMention, touch: felt } : undefined);
  const found = needItem(turn, mention, { question: say('ask-whats-this') });
  return 'reply' in found ? found.reply : tellOne(turn, found.got);
};

/** "Wooden disc with one dot, that's the flour, isn't it?": yes or no first, and what it is. */
const tellGuess: Handler = ({ slots: { item, ...slots }, ...act }, turn) => {
  const { asked: _guess, ...felt } = slots;
  const told = whatsThis({ ...act, slots: felt }, turn);
  const guessed = findItems(turn, item).items;
  const ids = told.memory?.items ?? [];
  if (ids.length === 0 || guessed.length === 0) return told;
  const so = ids.length === 1 && guessed.some(({ id }) => id === ids[0]);
  const among = guessed.some(({ id }) => ids.includes(id));
  if (among && !so) return told;
  return { ...told, parts: [say(so ? 'guess-so' : 'guess-not', { name: guessed[0]!.name }), ...told.parts] };
};

const tellMarkers = (turn: Turn, markers: readonly Marker[], container?: string): Reply => {
  const all = markers.flatMap((marker) => itemWithMarker(turn.kitchen, marker.id) ?? []);
  // "The jar with the cloth patch": what it is in tells them apart, too.
  const fitting = all.filter(({ touch }) => touch.container === container);
  const on = fitting.length > 0 ? fitting : all;
  if (on.length === 1 && fitting.length === 1) return tellOne(turn, on[0]!);
  const spare = markers.length - all.length;
  // Tubs of one lot that all have it are one thing.
  const lots = grouped(turn.kitchen, on);
  if (lots.length === 1 && on.length > 1 && spare === 0) return tellOne(turn, on[0]!);
  const labels = lots.map(({ first }) =>
    say('marked-item', { name: first.name, at: placeAt(turn.kitchen, first.placeId) }),
  );
  const parts = on.length > 0 ? [say('several-markers', { count: lots.length, items: list(labels) })] : [];
  if (spare > 0) parts.push(say('several-spare', { count: spare }));
  return { parts, memory: about(turn, on), names: on.map(({ name }) => name), count: on.length };
};

const dateKinds = ['made', 'bought', 'opened', 'frozen', 'thawed', 'useBy', 'bestBefore'] as const;

/** Each date that is known, as one short sentence. */
export const datesOf = (item: Item): Say[] => [
  ...dateKinds.flatMap((kind) => {
    const at = item.dates[kind];
    if (kind === 'opened' && !at && item.open) return [say('open-since-unknown')];
    return at ? [say('date-of', { what: dateSaidAs(kind, item), date: day(at) })] : [];
  }),
  ...frozenBefore(item),
];

interface Fact {
  readonly fact: Say;
  /** About so many words. */
  readonly words: number;
}
/** Words one takes in at one go, the place and what must be said among them. */
const atOnce = 25;
const wordsOfPlace = { plain: 11, withSpot: 13 };

/** As many of the facts, in order, as there is room for. */
const fitting = (facts: readonly Fact[], room: number): Fact[] => {
  const taken: Fact[] = [];
  for (const one of facts) {
    if (taken.reduce((sum, { words }) => sum + words, one.words) > room) break;
    taken.push(one);
  }
  return taken;
};

/** What is recorded, most useful first. */
export const tellAbout: Handler = (act, turn) => {
  if (!act.slots.item && turn.memory.touched) return whatsThis(act, turn);
  const apart = tellApart(turn, act);
  if (apart) return apart;
  const found = needItem(turn, act.slots.item, {
    question: say('ask-about'),
    anyOfBatch: true,
    lastOne: true,
  });
  if ('reply' in found) return found.reply;
  const item = found.got;
  const { kitchen } = turn;
  const group = { items: [item], first: item };
  if (act.slots.asked === 'feel') return tellFeel(turn, item);
  if (act.slots.asked === 'owner') return tellOwner(turn, item);
  const marks = marksOf(kitchen, item);
  const owner = item.ownerId ? kitchen.people.get(item.ownerId) : undefined;
  const age = ageParts(turn, item);
  const dates = datesOf(item);
  const feel = itemFeel(kitchen, item);
  // Said at any length: what must not be eaten, and what hurts.
  const must: Fact[] = [
    ...age.parts.filter(({ phrase }) => phrase.startsWith('verdict-')).map((fact) => ({ fact, words: 6 })),
    ...(marks.contains.length > 0
      ? [
          {
            fact: say('contains-list', { allergens: list(marks.contains) }),
            words: 3 + 2 * marks.contains.length,
          },
        ]
      : []),
    ...item.cautions.map((caution) => ({
      fact: say('item-caution', { caution }),
      words: 1 + caution.split(' ').length,
    })),
  ];
  // A day of another year is said with its year.
  const thisYear = `"day":"${todayOf(turn).slice(0, 4)}`;
  // The rest, most useful first: as much of it as is heard in one go; "tell me more" is what is left.
  const facts: Fact[] = [
    ...(owner ? [{ fact: say('belongs-to', { name: owner.name }), words: 4 }] : []),
    ...(dates.length > 0 || age.parts.some(({ phrase }) => phrase === 'verdict-unknown')
      ? dates.slice(-1)
      : [say('no-dates')]
    ).map((fact) => ({ fact, words: JSON.stringify(fact).includes(thisYear) ? 4 : 6 })),
    ...(item.amount
      ? [
          {
            fact: say('amount-left', { amount: { kind: 'amount', amount: item.amount } }),
            words: Number.isInteger(item.amount.value) ? 3 : 7,
          },
        ]
      : []),
    ...(item.maker ? [{ fact: say('made-by', { maker: item.maker }), words: 2 }] : []),
  ];
  const rest: Say[] = [
    ...item.notes.map((note) => say('item-note', { note })),
    ...(feel ? [say('reach-feel', { feel })] : []),
    ...dates.slice(0, -1),
    ...(marks.diets.length > 0 ? [say('diets-of', { diets: list(marks.diets) })] : []),
    ...(marks.freeFrom.length > 0 ? [say('said-free-list', { allergens: list(marks.freeFrom) })] : []),
    ...(item.preparations.length > 0 ? [say('has-reheating')] : []),
  ];
  const full = turn.listener.length === 'full';
  const taken =
    wordsOfPlace[item.spot ? 'withSpot' : 'plain'] + must.reduce((sum, { words }) => sum + words, 0);
  const now = full ? facts : turn.listener.length === 'short' ? [] : fitting(facts, atOnce - taken);
  return {
    parts: [
      say('kept-where', { item: groupName(group), where: placeAt(kitchen, item.placeId, item.spot) }),
      ...[...must, ...now].map(({ fact }) => fact),
      ...(full ? rest : []),
    ],
    details: [...facts.slice(now.length).map(({ fact }) => fact), ...(full ? [] : rest), ...age.details],
    sources: age.sources,
    memory: about(turn, [item]),
    names: [item.name],
    count: 1,
  };
};

/** More than so many at once the hand does not keep apart by words. */
const toldApart = 3;

/** "How do I tell the honey from the peanut butter", "which is which": the feel of each. */
const tellApart = (turn: Turn, { slots }: Act): Reply | null => {
  const [other] = slots.items ?? [];
  if (slots.asked !== 'apart' && !other) return null;
  const { items, before } = turn.memory;
  const spoken = items.length > 1 ? items : [...items, ...before];
  const named = [slots.item, other].flatMap((mention) => findItems(turn, mention).items.slice(0, 1));
  const meant = slots.asked === 'apart' ? spoken.flatMap((id) => turn.kitchen.items.get(id) ?? []) : named;
  const told = meant.filter(({ gone }) => gone === null).slice(0, toldApart);
  if (told.length < 2) return null;
  const markers = told.flatMap(({ markerId }) => turn.kitchen.markers.get(markerId ?? '') ?? []);
  // Where each bears a marker, that is what tells them apart.
  const each = told.map((item, at) =>
    markers.length === told.length
      ? say('apart-by-marker', { name: item.name, marker: markerNoun(markers[at]!) })
      : tellFeel(turn, item).parts[0]!,
  );
  const alike = new Set(told.map((item) => JSON.stringify(itemFeel(turn.kitchen, item)))).size === 1;
  return {
    parts: [...each, ...(alike ? [say('felt-alike')] : [])],
    memory: about(turn, told),
    names: told.map(({ name }) => name),
    count: told.length,
  };
};

/** "Whose is that", "is it hers": who it is kept for, and who made it. */
const tellOwner = (turn: Turn, item: Item): Reply => {
  const owner = item.ownerId ? turn.kitchen.people.get(item.ownerId) : undefined;
  return {
    parts: [
      owner
        ? say('owner-is', { name: item.name, owner: owner.name })
        : say('owner-unknown', { name: item.name }),
      ...(item.maker ? [say('made-by', { maker: item.maker })] : []),
    ],
    memory: { ...about(turn, [item]), ...(owner ? { personId: owner.id } : {}) },
    names: [item.name],
    count: 1,
  };
};

/** "What does it feel like", "which marker is on it": for the hand, and where to put it. */
const tellFeel = (turn: Turn, item: Item): Reply => {
  const feel = itemFeel(turn.kitchen, item);
  const marker = item.markerId ? turn.kitchen.markers.get(item.markerId) : undefined;
  const spot = marker?.touch.spot;
  const meaning = marker?.touch.dots ? turn.kitchen.household.dotMeanings[marker.touch.dots] : undefined;
  return {
    parts: [
      feel ? say('felt-as', { name: item.name, feel }) : say('reach-no-feel'),
      ...(marker && spot ? [say('felt-marker-at', { spot })] : []),
      ...(marker ? [] : [say('no-marker-on', { name: item.name })]),
    ],
    details: [
      // What is counted on it tells something, too.
      ...(meaning ? [say('so-it-is', { meaning })] : []),
      say('reach-place', { at: placeAt(turn.kitchen, item.placeId, item.spot) }),
    ],
    memory: about(turn, [item]),
    names: [item.name],
    count: 1,
  };
};

/** By hand: place, side, feel, and what stands beside it. */
export const howToReach: Handler = (act, turn) => {
  if (act.slots.asked === 'between') return tellBetween(act, turn);
  const found = needItem(turn, act.slots.item, { question: say('ask-find') });
  if ('reply' in found) return found.reply;
  const item = found.got;
  const { kitchen } = turn;
  const feel = itemFeel(kitchen, item);
  const marker = item.markerId ? kitchen.markers.get(item.markerId) : undefined;
  const beside = item.placeId ? itemsRightAt(kitchen, item.placeId).filter(({ id }) => id !== item.id) : [];
  const { asked } = act.slots;
  if (asked) return tellBeside(turn, item, asked, beside);
  const parts: Say[] = [
    say('reach-place', { at: placeAt(kitchen, item.placeId, item.spot), ...positionOf(turn, item) }),
    ...(feel ? [say('reach-feel', { feel })] : [say('reach-no-feel')]),
    ...(marker?.touch.spot
      ? [say('reach-marker', { marker: markerNoun(marker), spot: marker.touch.spot })]
      : []),
    ...(beside.length > 0
      ? [say('reach-beside', { items: list(beside.slice(0, 2).map((other) => neighbour(turn, other))) })]
      : []),
  ];
  return { parts, memory: about(turn, [item]), names: [item.name], count: 1 };
};

/** "What is behind the rice" is also told by the rice's own "in front of the stew". */
const otherSide: Readonly<Record<string, string>> = {
  behind: 'in front of',
  'in front of': 'behind',
  'on top of': 'under',
  under: 'on top of',
};

/** "The lentil stew" is the stew, too. */
const isCalled = (said: string, name: string): boolean => ` ${said}`.endsWith(` ${name.toLowerCase()}`);

/** By their recorded spots: those said to be by it, those it is said to be by, and those on its side of the shelf. */
const standingBy = (turn: Turn, item: Item, asked: string, shelf: readonly Item[]): readonly Item[] => {
  const any = asked === 'beside';
  /** Whether a spot is that side of a thing. */
  const is = (spot: string | null, side: string | undefined, name: string): boolean => {
    const by = spot === null ? null : spotIn(spot, turn.kitchen.household.locale).by;
    return by !== null && isCalled(by.name, name) && (any || by.side === side);
  };
  const by = shelf.filter(({ spot }) => is(spot, asked, item.name));
  const own = shelf.filter(({ name }) => is(item.spot, otherSide[asked], name));
  const same = any ? shelf.filter(({ spot }) => spot !== null && spot === item.spot) : [];
  return [...new Set([...by, ...own, ...same])];
};

/** "What is next to it", "what is behind the stew"; with nothing recorded, what shares its shelf, and that it is no more. */
const tellBeside = (turn: Turn, item: Item, asked: string, shelf: readonly Item[]): Reply => {
  const by = standingBy(turn, item, asked, shelf);
  const told = (by.length > 0 ? by : shelf).slice(0, 4);
  const args = {
    name: item.name,
    at: placeAt(turn.kitchen, item.placeId),
    side: asked.replaceAll(' ', '-'),
    items: list(told.map((one) => neighbour(turn, one))),
  };
  const phrase = shelf.length === 0 ? 'beside-nothing' : by.length > 0 ? 'beside-told' : 'beside-shelf';
  return {
    parts: [say(phrase, args)],
    memory: about(turn, [item], [item, ...told]),
    names: told.map(({ name }) => name),
    count: told.length,
  };
};

const neighbour = (turn: Turn, item: Item): Say => {
  const feel = itemFeel(turn.kitchen, item);
  return say('reach-neighbour', { name: item.name, ...(feel ? { feel } : {}) });
};

/** "from the top", when the place is a counted one. */
const positionOf = (turn: Turn, item: Item): { position?: { kind: 'ordinal'; n: number } } => {
  const place = item.placeId ? turn.kitchen.places.get(item.placeId) : undefined;
  return place?.position && ['shelf', 'basket', 'drawer'].includes(place.kind)
    ? { position: { kind: 'ordinal', n: place.position } }
    : {};
};
