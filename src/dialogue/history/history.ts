/** Who did what and when; taking back and doing again. */
import {
  applyChange,
  doerOf,
  isRefused,
  lastRedoable,
  lastUndoable,
  likeness,
  redo as redoChange,
  undo as undoChange,
  personNamed,
  placeUnder,
} from '../../kitchen/index.js';
import type { Act } from '../../understanding/intents.js';
import type { Id, JournalEntry, Purchase, Verb } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import { dayOf } from '../../terms/dates.js';
import { andMore, inGroups } from '../describe/lists.js';
import { placeAt, placeNoun } from '../describe/place.js';
import { refusal } from '../describe/refusals.js';
import { byOthers } from '../news/deeds.js';
import {
  type Handler,
  type Reply,
  type Turn,
  about,
  ago,
  list,
  say,
  todayOf,
  notFound,
  assent,
} from '../handler.js';
import { findItems } from '../refer/items.js';
import { bringAllBack, undoByName } from './bring-back.js';
import { goneLately } from './gone.js';
import { askWhetherMeant, nobodyCalled, personSaid } from '../people/people.js';
import { ofTheList } from '../shopping/said.js';

/** Phrase names hold no spaces. */
const verbKey = (verb: Verb): string => verb.replaceAll(' ', '-');

const whoOf = (turn: Turn, entry: JournalEntry): { who?: string; self: 'yes' | 'no' } => {
  const personId = doerOf(entry);
  if (entry.doerId === undefined && !byOthers(turn.speaker, entry)) return { self: 'yes' };
  const person = personId ? turn.kitchen.people.get(personId) : undefined;
  return person ? { who: person.name, self: 'no' } : { self: 'no' };
};

export const entryWords = (turn: Turn, entry: JournalEntry): Say => {
  const { who, self } = whoOf(turn, entry);
  const about = entry.about.length > 0 ? { about: list(entry.about) } : {};
  return say('did', {
    verb: verbKey(entry.verb),
    who: self === 'yes' ? 'you' : (who ?? 'somebody'),
    when: ago(entry.at),
    ...about,
  });
};

/** Anyone may take back her own last change; a device without a person, its own. */
export const own = (turn: Turn): readonly JournalEntry[] => {
  const deeds = turn.journal.filter((entry) => !onlyHeard(entry) && !onlyOpensCheck(entry));
  const { personId, deviceId } = turn.speaker;
  if (personId !== null) return deeds;
  return deeds.filter(
    (entry) => entry.personId === null && (entry.deviceId === null || entry.deviceId === deviceId),
  );
};

/** Messages that were read out: nothing anybody did. */
const onlyHeard = ({ ops }: JournalEntry): boolean =>
  ops.every((op) => op.kind === 'note' && op.before !== null && op.after?.heard === true);

/** That a check began or ended: nothing to take back, for what it noted stands in entries of its own. */
const onlyOpensCheck = ({ ops }: JournalEntry): boolean =>
  ops.length > 0 &&
  ops.every(
    (op) => op.kind === 'stockTake' && (op.before === null || op.before.finishedAt !== op.after?.finishedAt),
  );

/** What was done in the first place, through any undoing and redoing. */
const deedOf = (turn: Turn, entry: JournalEntry): Verb => {
  const earlier = entry.undoes ? turn.journal.find(({ id }) => id === entry.undoes) : undefined;
  return earlier ? deedOf(turn, earlier) : entry.verb;
};

const itemsOf = (entry: JournalEntry, turn: Turn): Id[] =>
  entry.ops.flatMap((op) =>
    op.kind === 'item' && (op.before ?? turn.kitchen.items.has(op.id)) ? [op.id] : [],
  );

/** Where it was before, when it is one thing. */
const backAt = ({ ops }: JournalEntry, turn: Turn): { at?: Say } => {
  const [first, ...rest] = ops.flatMap((op) => (op.kind === 'item' && op.before ? [op.before] : []));
  return first?.placeId && rest.length === 0 ? { at: placeAt(turn.kitchen, first.placeId, first.spot) } : {};
};

/** "Take both of those back": each in its own change, the last done first. */
const undoSeveral = (turn: Turn, count: number): Reply => {
  const replies: Reply[] = [];
  let at = turn;
  for (let left = count; left > 0; left -= 1) {
    const reply = undo({ intent: 'undo', slots: {} }, at);
    replies.push(reply);
    const [change] = reply.changes ?? [];
    if (!change) break;
    const kitchen = applyChange(at.kitchen, change);
    const { personId, deviceId } = turn.speaker;
    const entry = { ...change, id: `taking-back-${left}`, at: turn.clock.now, version: kitchen.version };
    at = { ...at, kitchen, journal: [{ ...entry, personId, deviceId, turnId: null }, ...at.journal] };
  }
  return {
    parts: replies.flatMap(({ parts }) => parts),
    changes: replies.flatMap(({ changes }) => changes ?? []),
    dropFrames: true,
    memory: { items: replies.flatMap(({ memory }) => memory?.items ?? []) },
  };
};

export const undo: Handler = (act, turn) => {
  const { item, asked } = act.slots;
  const byName = item?.words ? undoByName(turn, own(turn), act) : null;
  if (byName) return byName;
  const all = asked === 'gone' || asked === 'all' ? bringAllBack(turn, own(turn)) : null;
  if (all) return all;
  // "All that gone business" is of what went; "put them all back" may be of what was moved.
  if (asked === 'gone') return { parts: [say('nothing-taken-off')] };
  const count = act.slots.number ?? 1;
  if (count > 1) return undoSeveral(turn, count);
  const entry = lastUndoable(own(turn), turn.speaker.personId);
  if (!entry) return { parts: [say('nothing-to-undo')] };
  const result = undoChange(turn, entry);
  if (isRefused(result))
    return result.refused === 'changed-since'
      ? cannotUndo(turn, entry, result.about ?? [])
      : refusal(turn, result);
  const about = entry.about.length > 0 ? { about: list(entry.about) } : {};
  return {
    parts: [say('undone', { verb: verbKey(deedOf(turn, entry)), ...about, ...backAt(entry, turn) })],
    details: [entryWords(turn, entry)],
    changes: [result],
    dropFrames: true,
    memory: { items: itemsOf(entry, turn) },
  };
};

const cannotUndo = (turn: Turn, entry: JournalEntry, about: readonly string[]) => {
  const ids = new Set(entry.ops.map(({ id }) => id));
  const since = turn.journal.find(
    (later) => later.version > entry.version && later.ops.some(({ id }) => ids.has(id)),
  );
  const { who, self } = since ? whoOf(turn, since) : { who: undefined, self: 'no' as const };
  const args = { about: list(about), ...(self === 'no' && who ? { who } : {}) };
  return { parts: [say('undo-blocked', args)] };
};

export const redo: Handler = (_act, turn) => {
  const entry = lastRedoable(own(turn), turn.speaker.personId);
  if (!entry) return { parts: [say('nothing-to-redo')] };
  const result = redoChange(turn, entry);
  if (isRefused(result)) return refusal(turn, result);
  const about = entry.about.length > 0 ? { about: list(entry.about) } : {};
  return { parts: [say('redone', about)], changes: [result], memory: { items: itemsOf(entry, turn) } };
};

const asks: Readonly<Record<string, readonly Verb[]>> = {
  'put away': ['put away'],
  added: ['put away'],
  finished: ['finished', 'took', 'threw out', 'gave away'],
  moved: ['moved', 'froze', 'thawed', 'took out'],
  took: ['took', 'finished'],
  opened: ['opened'],
  frozen: ['froze'],
  'threw out': ['threw out'],
};

const quietVerbs: ReadonlySet<Verb> = new Set<Verb>(['set', 'checked', 'undid', 'redid']);

/** Settings, and checks that found all as recorded, are no news. */
const isNews = (entry: JournalEntry): boolean =>
  !onlyHeard(entry) &&
  (!quietVerbs.has(entry.verb) ||
    (entry.verb === 'checked' && entry.ops.some(({ kind }) => kind === 'item')));

const within = (turn: Turn, entry: JournalEntry, from: string | null, until: string | null): boolean => {
  const at = dayOf(entry.at, turn.clock.timeZone);
  return (!from || at >= from) && (!until || at <= until);
};

const minutesTogether = 15;

/** The same thing done to several foods in one go is told once. */
const together = (entries: readonly JournalEntry[]): JournalEntry[] => {
  const merged: JournalEntry[] = [];
  for (const entry of entries) {
    const last = merged.at(-1);
    const near = last && Date.parse(last.at) - Date.parse(entry.at) < minutesTogether * 60_000;
    if (last && near && last.verb === entry.verb && doerOf(last) === doerOf(entry)) {
      merged[merged.length - 1] = { ...last, about: [...new Set([...last.about, ...entry.about])] };
    } else merged.push(entry);
  }
  return merged;
};

const readEntries = (turn: Turn, entries: readonly JournalEntry[], none: Say) => {
  if (entries.length === 0) return { parts: [none], count: 0 };
  const words = together(entries).map((entry) => entryWords(turn, entry));
  const { first, more, left } = inGroups(words);
  const parts =
    words.length === 1
      ? [say('entry', { entry: words[0]! })]
      : [say('entries', { count: words.length, entries: list(first) }), ...andMore(left)];
  const items = entries
    .flatMap((entry) => itemsOf(entry, turn))
    .filter((id) => turn.kitchen.items.get(id)?.gone === null);
  return {
    parts,
    more,
    count: entries.length,
    memory: { items: [...new Set(items)].slice(0, 8), offered: [...new Set(items)] },
  };
};

/** "Who put the salsa on the list", of whatever is or was on it. */
const whoListed = (turn: Turn, name: string): Reply | null => {
  const named = (line: Purchase | null): boolean => line !== null && likeness(line.name, name) > 0;
  const entry = turn.journal.find(
    ({ verb, ops }) =>
      verb === 'put on the list' && ops.some((op) => op.kind === 'purchase' && named(op.after)),
  );
  if (entry) return { parts: [say('entry', { entry: entryWords(turn, entry) })], count: 1 };
  const line = [...turn.kitchen.purchases.values()].find(named);
  if (!line) return null;
  const who = line.addedBy ? turn.kitchen.people.get(line.addedBy) : undefined;
  const self = line.addedBy !== null && line.addedBy === turn.speaker.personId;
  return {
    parts: [
      self || who
        ? say('listed-by', { name: line.name, who: self ? 'you' : who!.name, when: ago(line.addedAt) })
        : say('nobody-listed', { name: line.name }),
    ],
    memory: { purchases: [line.id] },
    count: 1,
  };
};

/** "What did I just do": one's own last change, whatever came of it. */
const lastOwn = (turn: Turn): Reply => {
  const entry = own(turn).find(
    (one) =>
      one.verb !== 'told' && (turn.speaker.personId === null || one.personId === turn.speaker.personId),
  );
  if (!entry) return { parts: [say('nothing-of-yours')], count: 0 };
  return {
    parts: [say('entry', { entry: entryWords(turn, entry) })],
    count: 1,
    memory: { items: itemsOf(entry, turn).filter((id) => turn.kitchen.items.get(id)?.gone === null) },
  };
};

/** "What did Peter put in", "who finished the hummus". */
/** "When did I last check that drawer": the place named, or the one that was checked last; a whole is checked by its parts. */
const lastChecked = (turn: Turn, { place }: Act['slots']): Reply => {
  const { kitchen } = turn;
  const named = place?.candidates.map(({ id }) => id) ?? [];
  const checked = turn.journal.flatMap((entry) =>
    entry.verb === 'checked'
      ? entry.ops.flatMap((op) => {
          const at =
            op.kind === 'stockTake' ? kitchen.places.get((op.after ?? op.before)?.placeId ?? '') : undefined;
          return at &&
            (named.length === 0 || named.some((id) => at.id === id || placeUnder(kitchen, at.id, id)))
            ? [{ at, entry }]
            : [];
        })
      : [],
  );
  const [last] = checked;
  const first = named[0] ? kitchen.places.get(named[0]) : undefined;
  if (!last)
    return {
      parts: [first ? say('checked-never', { at: placeNoun(kitchen, first.id) }) : say('nothing-done')],
    };
  const { who, self } = whoOf(turn, last.entry);
  return {
    parts: [
      say('checked-last', {
        at: placeNoun(kitchen, last.at.id),
        when: ago(last.entry.at),
        ...(self === 'yes' ? { who: 'you' } : who ? { who } : {}),
      }),
    ],
  };
};

export const whoDid: Handler = (act, turn) => {
  const { slots } = act;
  if (slots.asked === 'checked') return lastChecked(turn, slots);
  if ((slots.asked === 'listed' || slots.asked === 'put away') && slots.item?.words && !slots.place) {
    const listed = whoListed(turn, slots.item.words);
    const here = slots.asked === 'put away' && findItems(turn, slots.item).items.length > 0;
    if (listed && (!here || ofTheList(turn))) return listed;
    if (slots.asked === 'listed') return { parts: [say('not-on-list', { items: slots.item.words })] };
  }
  const { person, name } = personSaid(turn, slots);
  if (name && !person) return nobodyCalled(turn, slots, name);
  const found = slots.item ? findItems(turn, slots.item) : null;
  const ids = new Set([
    ...(found?.items.map(({ id }) => id) ?? []),
    ...(slots.item?.candidates.map(({ id }) => id) ?? []),
  ]);
  const verbs = slots.asked ? asks[slots.asked] : undefined;
  const when = slots.when && slots.when !== 'unknown' ? slots.when : null;
  const entries = turn.journal.filter(
    (entry) =>
      isNews(entry) &&
      (!verbs || verbs.includes(entry.verb)) &&
      (!person || doerOf(entry) === person.id) &&
      (ids.size === 0 || entry.ops.some(({ id }) => ids.has(id))) &&
      (!when || within(turn, entry, when.day, when.until ?? when.day)),
  );
  const here = found?.items ?? [];
  const makers = [...new Set(here.flatMap(({ maker }) => maker ?? []))];
  const onlyMaker = makers.length === 1 ? personNamed(turn.kitchen, makers[0]!) : undefined;
  if (slots.asked === 'made' && !person && makers.length > 0)
    return {
      parts: [say('maker-is', { maker: list(makers) })],
      memory: { ...about(turn, here), ...(onlyMaker ? { personId: onlyMaker.id } : {}) },
      names: here.map(({ name }) => name),
      count: here.length,
    };
  // What was there before the journal began is known by its own record.
  const how = slots.asked === 'threw out' ? 'thrown out' : slots.asked === 'finished' ? 'used' : null;
  const gone = how && !slots.item && !person && entries.length === 0 ? goneLately(turn, how, slots) : null;
  if (gone) return gone;
  const none = slots.item?.words
    ? notFound('nobody-did', { name: slots.item.words, did: (slots.asked ?? 'any').replaceAll(' ', '-') })
    : notFound('nothing-done');
  const told = readEntries(turn, slots.item && !person ? entries.slice(0, 1) : entries, none);
  return here.length > 0 ? { ...told, memory: about(turn, here) } : told;
};

/** "What changed since yesterday": newest first, undone things left out. */
export const whatChanged: Handler = (act, turn) => {
  const { person, asked } = act.slots;
  if (asked === 'last') return lastOwn(turn);
  const how = asked === 'threw out' ? 'thrown out' : asked === 'finished' ? 'used' : null;
  if (how)
    return (
      goneLately(turn, how, act.slots) ?? {
        parts: [say('nothing-gone', { how: how.replace(' ', '-') })],
        count: 0,
      }
    );
  const when = asked === 'day' ? { day: todayOf(turn) } : act.slots.when;
  const from = when && when !== 'unknown' ? when.day : null;
  const until = when && when !== 'unknown' ? (when.until ?? null) : null;
  const by = person ? personSaid(turn, act.slots).person : null;
  const misheard = person && !by ? askWhetherMeant(turn, act.slots) : null;
  if (misheard) return misheard;
  const back = new Set(turn.journal.flatMap(({ undoes }) => undoes ?? []));
  const entries = turn.journal.filter(
    (entry) =>
      isNews(entry) &&
      !back.has(entry.id) &&
      within(turn, entry, from, until) &&
      (!by || doerOf(entry) === by.id),
  );
  return readEntries(turn, from ? entries : entries.slice(0, 12), assent('nothing-changed'));
};
