/** What a handler of one intent is given, and what it gives back. */
import { isPlural } from '../kitchen/index.js';
import type { Change, Id, Item, JournalEntry, Kitchen, Person } from '../kitchen/model.js';
import type { Length, Listener, Say, Tells, Value } from '../speech/answer.js';
import type { Clock, Instant, PlainDate } from '../terms/dates.js';
import { today } from '../terms/dates.js';
import type { Beside } from '../protocol/beside.js';
import type { Qualifier } from '../protocol/qualifiers.js';
import type { Act } from '../understanding/intents.js';
import type { Conversation, Effect, KnockedOn, KnownDevice, LookUp, Speaker } from './api.js';
import type { Asked, Sharing } from './state.js';
import type { Ask, Memory, Picked, Practice, Procedure, Session, State } from './state.js';

/** One act, being decided. The kitchen already holds what earlier acts of the same turn did. */
export interface Turn {
  readonly kitchen: Kitchen;
  readonly journal: readonly JournalEntry[];
  readonly clock: Clock;
  readonly speaker: Speaker;
  readonly newId: () => Id;
  readonly state: State;
  readonly memory: Memory;
  readonly listener: Listener;
  readonly lastSentences: readonly string[];
  /** What questions about this act have settled. */
  readonly picked: Picked;
  /** The cook has said yes to it. */
  readonly sure: boolean;
  /** Other conversations of the household, when this turn may pick up there. */
  readonly elsewhere: readonly Conversation[];
  /** The household's devices, once looked up. */
  readonly devices: readonly KnownDevice[] | null;
  /** Who waits with the code that was said, once looked up. */
  readonly knockedOn: KnockedOn | null;
  /** What all that was heard says beside its acts; null when nothing was said. */
  readonly beside: Beside | null;
  /** The language it was heard in: names that are free words are read in it. */
  readonly locale: string;
  /** What all that was heard says beside its requests and things: which of several, how much, at which half of the day. */
  readonly qualifiers: ReadonlySet<Qualifier>;
  readonly cutAt: string | null;
}

/** What an act comes to. Everything left out stays as it is. */
export interface Reply {
  readonly parts: readonly Say[];
  /** Further groups of a list, for "more". */
  readonly more?: readonly Say[];
  /** For "tell me more": what was left out. */
  readonly details?: readonly Say[];
  /** For "who says so". */
  readonly sources?: readonly Say[];
  readonly names?: readonly string[];
  readonly count?: number;
  readonly changes?: readonly Change[];
  /** What was told and stands, whatever is still asked about it: made also beside `ask`. */
  readonly noted?: readonly Change[];
  /** What is done about devices. */
  readonly effects?: readonly Effect[];
  /** This act cannot be decided before that was looked up. Nothing else of the reply counts. */
  readonly lookUp?: LookUp;
  /** The part that is missing: the act waits for it. Nothing else of the reply may change the kitchen. */
  readonly ask?: Ask;
  /** The act the answer goes to, when it is another than this one. */
  readonly askFor?: Act;
  /** A yes is wanted first, whatever the confidence. */
  readonly confirm?: Say;
  /** Done where that is denied. */
  readonly otherwise?: Act;
  /** How to ask "shall I?" when the hearing was doubtful; only used with changes. */
  readonly doubt?: Say;
  /** Something that may be said yes to, and may be passed over. */
  readonly offer?: { readonly question: Say; readonly act: Act; readonly otherwise?: Act };
  /** Done next, on what this left: a question that what was recorded leaves open. */
  readonly next?: Act;
  readonly memory?: Partial<Memory>;
  /** The question as it was understood, whole, and what was told of it: what a follow-up changes. */
  readonly asked?: Pick<Asked, 'query' | 'members'>;
  readonly procedure?: Procedure | null;
  readonly session?: Session | null;
  readonly practice?: Practice | null;
  /** Whether a teacher may see how the lessons went. */
  readonly sharing?: Sharing;
  readonly listener?: Listener;
  readonly whisperUntil?: Instant | null;
  /** Length of this one answer. */
  readonly length?: Length;
  /** Say nothing more of an open question this turn. */
  readonly quiet?: boolean;
  /** Drop open questions. */
  readonly dropFrames?: boolean;
  /** Keep what the last answer was: this one is about it. */
  readonly keepTold?: boolean;
  /** A word in between ("slower"): "say that again" means the answer before it. */
  readonly aside?: boolean;
  /** Told in place of the last answer's rest. */
  readonly rest?: readonly Say[];
  readonly cut?: readonly string[];
}

export type Handler = (act: Act, turn: Turn) => Reply;

export const say = (phrase: string, args?: Readonly<Record<string, Value>>): Say =>
  args ? { kind: 'say', phrase, args } : { kind: 'say', phrase };

export const day = (of: PlainDate, monthOnly?: boolean): Value =>
  monthOnly ? { kind: 'date', day: of, monthOnly } : { kind: 'date', day: of };
export const days = (count: number): Value => ({ kind: 'days', days: count });
export const ago = (at: Instant): Value => ({ kind: 'ago', at });
export const clockTime = (at: Instant): Value => ({ kind: 'time', at });
export const seconds = (count: number): Value => ({ kind: 'duration', seconds: count });
const telling =
  (tells: Tells) =>
  (phrase: string, args?: Readonly<Record<string, Value>>): Say => ({ ...say(phrase, args), tells });

/** Says only that something was heard. */
export const assent = telling('assent');
/** Says what is on record now. */
export const onRecord = telling('record');
/** Says that nothing here is what was named. */
export const notFound = telling('not-found');

/** "rice, beans and peas"; one thing alone stays itself, so that phrases can agree with it. */
export const list = (of: readonly Value[], or = false): Value =>
  of.length === 1 ? of[0]! : { kind: 'list', of, or };

/** A plain answer of one sentence. */
export const tell = (phrase: string, args?: Readonly<Record<string, Value>>): Reply => ({
  parts: [say(phrase, args)],
});

export const todayOf = (turn: Turn): PlainDate => today(turn.clock);

export const speakerPerson = (turn: Turn): Person | undefined =>
  turn.speaker.personId ? turn.kitchen.people.get(turn.speaker.personId) : undefined;

/** The items an answer was about become what "it" and "them" mean. */
export const about = (
  turn: Turn,
  items: readonly Item[],
  offered: readonly Item[] = items,
): Partial<Memory> => {
  const ids = items.map((item) => item.id);
  const several = items.length > 1 ? items : offered.length > 1 ? offered : null;
  const many = items.length === 1 && (isPlural(items[0]!.name) || (items[0]!.amount?.value ?? 1) > 1);
  const them = several ?? (many ? items : null);
  const same = ids.length === turn.memory.items.length && ids.every((id) => turn.memory.items.includes(id));
  return {
    items: ids,
    before: same ? turn.memory.before : turn.memory.items,
    // One of several that were told apart: the others can still be chosen next.
    offered:
      items.length === 1 && offered.length === 1 && turn.memory.offered.includes(items[0]!.id)
        ? turn.memory.offered
        : offered.map((item) => item.id),
    ...(them ? { them: them.map(({ id }) => id), themTold: turn.state.turns } : {}),
    ...(items.length === 1 ? { placeId: items[0]!.placeId, markerId: items[0]!.markerId } : {}),
  };
};
