/** What one conversation remembers. Plain JSON: a store keeps it between turns. */
import type { GuidanceFacts } from '../understanding/guidance/facts.js';
import type { Change, Id } from '../kitchen/model.js';
import type { Answer, Length, Listener, Say } from '../speech/answer.js';
import type { Quote } from '../terms/quote.js';
import type { Instant } from '../terms/dates.js';
import type { Act, Expectation, SaidDate } from '../understanding/intents.js';
import type { Conversation } from './api.js';
import type { SaidEater, SaidManner, SaidWhole } from '../protocol/first-day.js';
import type { Query } from '../protocol/query.js';

/** What "it", "them", "the other one" and "this" mean. */
export interface Memory {
  /** Items last spoken of; "it" when one, "them" when several. */
  readonly items: readonly Id[];
  /** The group before that. */
  readonly before: readonly Id[];
  /** What the last answer told apart: "the second one", "the other one". */
  readonly offered: readonly Id[];
  /** "Them": the several things last told of together, or the one last singled out that is many. */
  readonly them: readonly Id[];
  /** Turns so far when they were told. */
  readonly themTold: number;
  /** A food that is not on record, of which guidance was asked, with what was told of it: "it", until a thing is. */
  readonly spoken?: { readonly words: string; readonly facts: GuidanceFacts; readonly turn: number } | null;
  readonly placeId: Id | null;
  readonly markerId: Id | null;
  readonly purchases: readonly Id[];
  readonly personId: Id | null;
  /** Whoever was spoken of of late, the last first: "they both". */
  readonly people: readonly Id[];
  readonly reminderId: Id | null;
  /** What was last to be thawed, and for when. */
  readonly thawFor: { readonly itemId: Id; readonly when: SaidDate; readonly time?: string } | null;
  readonly lastAdded: readonly Id[];
  /** The marker touched last, while it is still what "this" means. */
  readonly touched: {
    readonly code: string;
    readonly markerId: Id | null;
    readonly itemId: Id | null;
    /** Turns so far when it was touched. */
    readonly turn: number;
  } | null;
}

/** One of several things a question offers. */
export interface Choice {
  readonly ids: readonly Id[];
  readonly label: Say;
}

/** The last question put together from its parts, and what was told for it. */
export interface Asked {
  readonly query: Query;
  /** In the order told. */
  readonly members: readonly Id[];
  /** Turns so far when it was told. */
  readonly turn: number;
  /** What each question of this talk was about, first of them first. */
  readonly subjects: readonly (readonly Id[])[];
}

/** What an act still needs, and how to ask for it. Asked the same way never more than twice. */
export interface Ask {
  /** Which part of the act: 'item', 'place', 'words' … or 'sure' for a yes. */
  readonly slot: string;
  readonly question: Say;
  /** A few words for coming back to it after other talk: "Which chilli?" */
  readonly brief?: Say;
  /** Other words for the second time. */
  readonly again?: Say;
  readonly expecting: Expectation;
  readonly choices?: readonly Choice[];
  /** What a plain "yes" would mean here: a place guessed, an item offered. */
  readonly guess?: readonly Id[];
  /** Asked in passing: talk of anything else drops it, "go on" and "all of them" read what was counted. */
  readonly passing?: boolean;
  /** What a plain "no" would mean, where it is an answer too. */
  readonly no?: readonly string[];
  /** What "I do not know" would mean, where it is an answer too. */
  readonly unsure?: readonly string[];
}

/** An act waiting for its answer. */
export interface Frame extends Ask {
  /** `slot`: cannot go on without it. `sure`: yes or no before doing it. `offer`: may be ignored. */
  readonly kind: 'slot' | 'sure' | 'offer';
  readonly act: Act;
  readonly picked: Picked;
  readonly asked: number;
  /** Times it was put again after other talk. */
  readonly offeredAgain?: number;
  /** Asked because the hearing was doubtful; `last`: it is the second guess, and there is no third. */
  readonly doubted?: 'first' | 'last';
  /** What else was likely heard. */
  readonly runnerUp?: Act;
  /** What a "no" does to an offer, when it does anything. */
  readonly otherwise?: Act;
}

/** Record ids that questions have settled, by slot. */
export type Picked = Readonly<Record<string, readonly Id[]>>;

/** One act of a guided procedure. */
export interface Step {
  /** The caution that comes before the act. */
  readonly caution?: Say;
  readonly text: Say;
  /** Started when the cook says she has done it. */
  readonly timer?: { readonly seconds: number; readonly label: string };
  /** What it may be called goes by this, else by the name of its phrase. */
  readonly code?: string;
  /** As the cook told it, or where it is done. */
  readonly own?: string;
  /** The things it is about: "them", while it is the step. */
  readonly items?: readonly Id[];
}

export interface Procedure {
  readonly kind: 'reheat' | 'thaw' | 'power-cut' | 'power-back' | 'cook';
  readonly title: Say;
  readonly itemId: Id | null;
  readonly steps: readonly Step[];
  readonly at: number;
  readonly paused: boolean;
  /** Asked to wait a moment: what is said next may still be about it. */
  readonly held?: boolean;
  /** The step it stands at was not read yet: a timer runs for the one before. */
  readonly unread?: boolean;
  /** What its heating is set to, as recorded, and how many seconds all of it takes. */
  readonly setting?: {
    readonly heat: { readonly degrees: number; readonly scale: 'fahrenheit' | 'celsius' } | null;
    readonly watts: number | null;
    readonly seconds: number | null;
  };
  /** Who says so. */
  readonly source?: readonly Say[];
  /** Who began it; null on a device that is nobody's own. */
  readonly by?: Id | null;
  /** When its steps were last moved in. */
  readonly touchedAt?: Instant;
}

/** The same procedure, in whichever conversation of the household. */
export const procedureKey = ({ kind, itemId, title }: Procedure): string =>
  JSON.stringify([kind, itemId, itemId ? null : title]);

export type Session =
  | {
      readonly kind: 'shop';
      /** What is there is told, standing before it, rather than what was bought. */
      readonly survey?: boolean;
      readonly items: readonly Id[];
      readonly placeId: Id | null;
      /** Bought and not put away yet, asked about one by one. */
      readonly queue?: readonly string[];
      /** The cook said no to the usual place of the first: it is asked plainly. */
      readonly elsewhere?: boolean;
    }
  | {
      readonly kind: 'count';
      readonly stockTakeId: Id;
      readonly itemIds: readonly Id[];
      readonly paused: boolean;
      /** Asked about out of turn: gone back to, or skipped to. */
      readonly at?: Id | null;
      /** The part of it that she stands at: what is there comes first. */
      readonly within?: Id | null;
    }
  | {
      readonly kind: 'setup';
      readonly step: number;
      readonly paused: boolean;
      /** Facts told at this step so far. */
      readonly said: number;
      /** This one question was asked for, and no other follows. */
      readonly alone?: boolean;
      /** What was told on the first day and waits for a yes before it is kept. */
      readonly draft?: FirstDayDraft;
      /** When it was last moved in. */
      readonly touchedAt?: Instant;
    };

/** Told, read back, and not kept yet. */
export interface FirstDayDraft {
  readonly wholes?: readonly SaidWhole[];
  readonly eaters?: readonly SaidEater[];
  readonly manner?: SaidManner;
  /** Agreed to, but for her name: it is asked. */
  readonly asksName?: boolean;
}

/** The household has one kitchen to set up. */
export const setupKey = 'setup';

/** Practice: changes are kept here and nowhere else. */
export interface Practice {
  readonly changes: readonly { readonly id: Id; readonly at: Instant; readonly change: Change }[];
  /** A lesson, in the lesson kitchen instead of her own. */
  readonly lesson?: LessonState;
}

/** Null: it was asked, and not answered. */
export interface Sharing {
  readonly may: boolean | null;
  readonly at: Instant;
}

export interface LessonState {
  /** Which, from 0. */
  readonly n: number;
  readonly beganAt: Instant;
  /** The task it stands at. */
  readonly task: number;
  /** Hints given for that task. */
  readonly hints: number;
  /** Turns spent on that task. */
  readonly tries: number;
  /** How each task before it went. */
  readonly results: readonly ('alone' | 'hint' | 'passed')[];
}

/** What the last answer was, for "more", "why", "shorter", "how many", "spell that". */
export interface Told {
  /** The last act that asked about things, so that "the other one" can be asked the same. */
  readonly act?: Act | null;
  /** Turns so far when it was given. */
  readonly turn?: number;
  readonly answer: Answer;
  /** Groups of a list not yet read. */
  readonly rest: readonly Say[];
  readonly details: readonly Say[];
  readonly sources: readonly Say[];
  readonly names: readonly string[];
  readonly count: number | null;
  /** What was heard before it. */
  readonly quote: Quote | null;
  /** Something was said in between since: "slower". */
  readonly aside?: boolean;
  /** Sentences not yet spoken when the answer was cut, set by "stop". */
  readonly cut: readonly string[];
  /** Lines of the summary told before this, while what it told apart is still what is talked about. */
  readonly lines?: readonly (readonly Say[])[];
  /** What the answer before this still had to say, when another request came in the middle of it. */
  readonly earlier?: Unsaid | null;
}

/** The rest of an answer that was broken off. */
export interface Unsaid {
  readonly sentences: readonly string[];
  readonly rest: readonly Say[];
  /** Turns so far when it was broken off. */
  readonly turn: number;
}

/** The last thing that was done, so that a part of it can be corrected. */
export interface Done {
  readonly act: Act;
  readonly picked: Picked;
  readonly changes: readonly Change[];
  readonly at: Instant;
  /** Turns so far when it was done. */
  readonly turn?: number;
}

export interface State {
  readonly memory: Memory;
  /** Open questions, the one being asked last. */
  readonly frames: readonly Frame[];
  readonly procedure: Procedure | null;
  readonly session: Session | null;
  readonly practice: Practice | null;
  readonly told: Told | null;
  /** What was asked last, and what was told of it. */
  readonly asked: Asked | null;
  readonly done: Done | null;
  /** What was heard two turns running that made no sense. */
  readonly misses: number;
  /** Others' deeds since then were not thought of yet: a question was open, or steps were read. */
  readonly newsSince: Instant | null;
  /** Entries of the journal that were told unasked, last ones. */
  readonly toldUnasked: readonly Id[];
  /** Turns so far. */
  readonly turns: number;
  /** How the lessons went that were held in this conversation, by their keys. */
  readonly held?: Readonly<
    Record<string, { readonly at: Instant; readonly results: LessonState['results'] }>
  >;
  /** Whether a teacher may see that. */
  readonly sharing?: Sharing;
  /** What was denied last when the hearing was doubtful. */
  readonly denied: { readonly intent: Act['intent']; readonly turn: number } | null;
  /** The procedure or set-up that was ended last here: kept, so that a copy of it elsewhere is not gone on with. */
  readonly over: { readonly key: string; readonly at: Instant } | null;
  /** What the first day left open and was offered since, and the day of the last offer. */
  readonly offered?: { readonly keys: readonly string[]; readonly on: string | null };
  /** "Whisper for the rest of the evening" ends then. */
  readonly whisperUntil: Instant | null;
}

const emptyMemory: Memory = {
  items: [],
  before: [],
  offered: [],
  them: [],
  themTold: 0,
  placeId: null,
  markerId: null,
  purchases: [],
  personId: null,
  people: [],
  reminderId: null,
  thawFor: null,
  lastAdded: [],
  touched: null,
};

const emptyState: State = {
  memory: emptyMemory,
  frames: [],
  procedure: null,
  session: null,
  practice: null,
  told: null,
  asked: null,
  done: null,
  misses: 0,
  newsSince: null,
  toldUnasked: [],
  turns: 0,
  denied: null,
  over: null,
  whisperUntil: null,
};

export const usualListener: Listener = {
  length: 'usual',
  rate: 1,
  volume: 'medium',
  whisper: false,
  earcons: false,
};

export const lengths: readonly Length[] = ['short', 'usual', 'full'];

/** A conversation in which nothing has been said. */
export const startConversation = (listener: Partial<Listener> = {}): Conversation => ({
  format: 1,
  listener: { ...usualListener, ...listener },
  expecting: 'anything',
  lastAt: null,
  lastSentences: [],
  state: emptyState,
});

/** The dialogue's own part of a conversation; a fresh one when it was stored empty. */
export const stateOf = (conversation: Conversation): State => {
  const kept = conversation.state as Partial<State> | null;
  return { ...emptyState, ...kept, memory: { ...emptyMemory, ...kept?.memory } };
};
