/**
 * The engine every transport talks to: a turn in, a reply out, for any household of a store.
 *
 * A turn begins with one read (the kitchen's version, the conversation so far, an earlier reply
 * to the same id), is understood and decided on a copy of the kitchen in memory, and ends with
 * one write of everything it changed. When somebody else changed the kitchen in between, the
 * write is refused and the turn is decided again on what is true now.
 */
import {
  afterTelling,
  checkAtHand,
  decide,
  decideMoves,
  interruption,
  lessonKitchenNow,
  picksUp,
  sharedLessons,
  type SharedLessons,
  standingAt,
  startConversation,
  justDone,
  answeredJustNow,
  listAtHand,
  toldJustNow,
  stepNames,
  dishesTold,
  stepsAtHand,
  talkedOf,
} from '../dialogue/index.js';
import type { Conversation, SaidMove, Speaker, Surroundings } from '../dialogue/index.js';
import type { Change, Id, JournalEntry, Kitchen } from '../kitchen/model.js';
import type { AroundSpeech, Answer, Listener, Spoken } from '../speech/index.js';
import type { Device, DeviceDeed, Store, TurnStart } from '../store/port.js';
import type { Clock, Instant } from '../terms/dates.js';
import { quote, wordsOf } from '../terms/quote.js';
import { meaningsHere, openReminders } from '../kitchen/index.js';
import {
  accounted,
  given,
  isRatherIn,
  movesOf,
  withoutIntroduction,
  type HouseholdNames,
} from '../understanding/index.js';
import type {
  ClockAtHand,
  DishSteps,
  HearingContext,
  Hypothesis,
  StepsAtHand,
  Understanding,
} from '../understanding/intents.js';
import type { TurnReply, TurnRequest } from '../../shared/wire/turn.js';
import { language, type Tongue, type Tongues } from './tongues.js';
import { namesOf, withChanged } from './names.js';
import { fingerprint, idsOf } from './ids.js';
import { heardInAll, type HeardMove } from './heard-moves.js';
import { createLine } from './in-line.js';
import { decideLookingUp } from './looking-up.js';
import { createLiveKitchens, type LiveKitchen } from './live-kitchens.js';
import { TurnProblem } from './problems.js';
import { changesMade, toFaultReply, toReply, withEarcon } from './reply.js';
import { noTracing, type Tracing } from './tracing.js';
import { whyOf, type WhyMove } from './why.js';
import { isForeseen, keptAfterFault, newFaultId, readKept, type TurnFault } from './unforeseen.js';

/** Who speaks, for which household. A transport knows it from the device's token. */
export interface TurnSpeaker extends Speaker {
  readonly householdId: Id;
  /** The rights version under which it was found to be who it is; undefined for who runs the machine. */
  readonly rights?: number | undefined;
}

/** A household as it is now. */
export interface Look extends Surroundings {
  readonly rights: number;
}

/** What a transport may tell about when a turn or a page changed a kitchen. */
export interface Committed {
  readonly householdId: Id;
  readonly entries: readonly JournalEntry[];
  /** Devices that were let in, renamed or sent away, as they are now. */
  readonly devices: readonly Device[];
}

/** A change asked for by a page rather than by voice: built on the kitchen as it is. */
export type BuildChange<R> = (
  around: Surroundings,
) => { readonly changes: readonly Change[] } | { readonly refused: R };

export type ChangeResult<R> =
  | { readonly outcome: 'done'; readonly version: number; readonly changes: TurnReply['changes'] }
  | { readonly outcome: 'refused'; readonly refused: R };

export interface Households {
  /**
   * Answers one turn. The same id again gives the same reply and changes nothing. Whatever breaks
   * unforeseen in working it out is answered too, with `fault` in the reply and nothing changed.
   * @throws StoreError when the store fails, or TurnProblem `no-such-household`, `turn-id-reused`, `too-many-waiting`, `too-busy`.
   */
  takeTurn(
    speaker: TurnSpeaker,
    request: TurnRequest,
    /** Entries of the journal the listener was told of unasked, see `interruption`. */
    told?: readonly Id[],
    /** Told how each move of the turn came to its answer; last of what counted. A turn answered again is not told. */
    why?: (moves: readonly WhyMove[]) => void,
  ): Promise<TurnReply>;
  /**
   * What to say at once to who is in the middle of something that others' deeds concern; null when it can
   * wait for the next turn. Never writes: `told` notes that it was heard.
   */
  interruption(
    speaker: TurnSpeaker,
    conversation: Id,
    entries: readonly JournalEntry[],
  ): Promise<{ readonly entryId: Id; readonly speech: Spoken } | null>;
  /** The listener was told of an entry: the next turn does not tell it again. */
  told(speaker: TurnSpeaker, conversation: Id, entryId: Id): Promise<void>;
  /** Whether words so far begin something understood here. Never acts, never writes. */
  partial(speaker: TurnSpeaker, conversation: Id, text: string): Promise<boolean>;
  /**
   * Makes a change that was not spoken. `request.id` makes a retry harmless, as with turns;
   * `request.said` is what was asked for, to notice an id used twice.
   * @throws TurnProblem as `takeTurn`.
   */
  change<R>(
    speaker: TurnSpeaker,
    request: { readonly id: Id; readonly said: unknown },
    build: BuildChange<R>,
  ): Promise<ChangeResult<R>>;
  /** The kitchen as it is now, its newest journal entries (newest first) and the household's clock. */
  look(householdId: Id): Promise<Look>;
  /** What a teacher may see of how the lessons went: nothing without a yes said aloud, see `sharedLessons`. */
  lessons(householdId: Id): Promise<SharedLessons>;
  /** Says an answer of this household's, as its listeners hear it. */
  say(around: Surroundings, answer: Answer): Spoken;
  /** Drops what is kept in memory of a household (it was deleted or restored). */
  forget(householdId: Id): void;
  /** Called after each commit made by this process. Returns how to stop listening. */
  onCommitted(hear: (committed: Committed) => void): () => void;
}

export interface HouseholdsOptions {
  readonly store: Store;
  readonly tongues: Tongues;
  /** The clock, given by the edge. */
  readonly now: () => Instant;
  /** About how many bytes kitchens may take up in memory, the least lately used going first. Default 256 MiB. */
  readonly bytesInMemory?: number;
  /** Turns that may wait for one household. Default 64. */
  readonly waitingAtMost?: number;
  /** How long one may wait for those before it. Default 10,000. */
  readonly waitingMilliseconds?: number;
  /** Told where the time of each turn goes. */
  readonly tracing?: Tracing;
  /** Told of what broke unforeseen in a turn; the cook was answered. */
  readonly onFault?: (fault: TurnFault) => void;
  /** How a new conversation's listener likes to be spoken to. */
  readonly listener?: Listener;
}

/** What the listener said, where the client can play it; else what the client offers. */
const wantsSounds = ({ sounds }: TurnRequest, { earcons, earconsChosen }: Listener): boolean =>
  earconsChosen ? earcons && sounds !== false : (sounds ?? earcons);

/** In how many conversations a turn looks that goes on with what was begun elsewhere. */
const CONVERSATIONS_ELSEWHERE = 20;
/** Conversations are dropped after a week. */
const LESSONS_HOURS = 7 * 24;
const CONVERSATIONS_OF_LESSONS = 200;
const hoursBefore = (at: Instant, hours: number): Instant =>
  new Date(Date.parse(at) - hours * 3_600_000).toISOString();

/** Decided again this often before giving up: each try means somebody else's change went first. */
const TRIES = 8;
/** Conversations of pages hold nothing; they share this name. */
const NO_CONVERSATION = 'page';

/** A turn as it was heard whole, and in which tongue. */
interface HeardWhole {
  readonly tongue: Tongue;
  readonly context: HearingContext;
  /** Without who speaks. */
  readonly said: readonly Hypothesis[];
  readonly understanding: Understanding;
}

/** What the store keeps of a reply. `said` notices an id used for two different turns. */
interface KeptReply<T> {
  readonly said: string;
  readonly reply: T;
}

/** A turn or a page's change, decided. */
interface Worked<T> {
  readonly changes: readonly Change[];
  readonly devices?: readonly DeviceDeed[];
  /** Tidying up that may as well fail. */
  readonly afterwards?: () => Promise<unknown>;
  readonly conversation: unknown;
  readonly at: Instant;
  readonly reply: T;
}

export const createHouseholds = (options: HouseholdsOptions): Households => {
  const { store, tongues, now, tracing = noTracing, onFault = () => undefined } = options;
  const live = createLiveKitchens(store, options.bytesInMemory ?? 256 * 1024 * 1024, (error, householdId) =>
    onFault({ id: newFaultId(), householdId, error }),
  );
  const inLine = createLine(options.waitingAtMost ?? 64, options.waitingMilliseconds ?? 10_000);
  const listeners = new Set<(committed: Committed) => void>();

  const clockOf = (kitchen: Kitchen): Clock => ({ now: now(), timeZone: kitchen.household.timeZone });

  const around = (here: LiveKitchen, speaker: Speaker, newId: () => Id): Surroundings => ({
    kitchen: here.kitchen,
    journal: here.journal,
    clock: clockOf(here.kitchen),
    speaker: {
      personId: speaker.personId,
      deviceId: speaker.deviceId,
      owner: speaker.owner === true,
    },
    newId,
  });

  /** The household's locale words the answer, unless it is spoken in another language than its own. */
  const aroundSpeech = ({ kitchen, clock }: Surroundings, { locale }: Tongue): AroundSpeech => ({
    clock,
    locale: language(locale) === language(kitchen.household.locale) ? kitchen.household.locale : locale,
    measures: kitchen.household.measures,
  });

  /** Steps being followed, as they are spoken: what is said next is heard with their words. */
  const stepsHeardOf = (
    earlier: Conversation,
    tongue: Tongue,
    surroundings: Surroundings,
  ): StepsAtHand | null => {
    const procedure = stepsAtHand(earlier);
    if (!procedure) return null;
    const speech = aroundSpeech(surroundings, tongue);
    return {
      title: tongue.voice.phraseText(procedure.title, speech),
      dish: (procedure.itemId ? surroundings.kitchen.items.get(procedure.itemId) : undefined) ?? null,
      texts: procedure.steps.map(({ text }) => tongue.voice.phraseText(text, speech)),
      at: procedure.at,
      waiting: procedure.unread === true,
      held: procedure.held === true,
    };
  };

  /** How dishes are got ready, as it is spoken: made once, and only where something may be asked of it. */
  const dishesHeardOf = (earlier: Conversation, tongue: Tongue, surroundings: Surroundings) => {
    let made: readonly DishSteps[] | null = null;
    return (): readonly DishSteps[] => {
      const speech = aroundSpeech(surroundings, tongue);
      made ??= dishesTold(earlier, surroundings).map(({ procedure, method, item, spokenOf }) => ({
        dish: item,
        method,
        texts: procedure.steps.map(({ text }) => tongue.voice.phraseText(text, speech)),
        spokenOf,
      }));
      return made;
    };
  };

  /** Timers and reminders by name: "the pasta one" is one of them; one that nobody named is called nothing. */
  const clocksAtHand = ({ kitchen }: Surroundings): readonly ClockAtHand[] =>
    openReminders(kitchen).map(({ id, kind, label, heldLeft }) => ({
      id,
      kind,
      label: label ?? '',
      ...(heldLeft === undefined ? {} : { held: true as const }),
    }));

  /** What what is said next is heard against. */
  const hearingOf = (earlier: Conversation, tongue: Tongue, surroundings: Surroundings): HearingContext => ({
    now: surroundings.clock.now,
    timeZone: surroundings.clock.timeZone,
    locale: tongue.locale,
    expecting: earlier.expecting,
    steps: stepsHeardOf(earlier, tongue, surroundings),
    dishes: dishesHeardOf(earlier, tongue, surroundings),
    clocks: clocksAtHand(surroundings),
    last: justDone(earlier, surroundings.kitchen),
    answered: answeredJustNow(earlier),
    list: listAtHand(earlier, surroundings.kitchen),
    told: toldJustNow(earlier),
    talkedOf: talkedOf(earlier),
    checking: checkAtHand(earlier),
    standing: standingAt(earlier),
    stepNames: stepNames(earlier),
    meanings: meaningsHere(surroundings.kitchen),
  });

  /**
   * What was said, in the speaker's tongue; where that makes nothing of it, and it is rather of the tongue beside
   * it, it was said in that one, and is answered so.
   */
  const hear = (
    own: Tongue,
    { hypotheses }: TurnRequest,
    names: HouseholdNames,
    earlier: Conversation,
    surroundings: Surroundings,
  ): HeardWhole => {
    const heardIn = (tongue: Tongue): HeardWhole => {
      const context = hearingOf(earlier, tongue, surroundings);
      const said = withoutIntroduction(hypotheses, names, context);
      const understanding = tongue.understander.understand(said, names, context);
      return { tongue, context, said, understanding };
    };
    const first = heardIn(own);
    const { verdict } = first.understanding;
    const beside = verdict === 'out-of-scope' || verdict === 'ask-again' ? tongues.beside(own) : null;
    const text = hypotheses[0]?.text ?? '';
    if (!beside || !isRatherIn(text, beside.locale, own.locale)) return first;
    const second = heardIn(beside);
    const made = second.understanding.verdict;
    return made === 'act' || made === 'confirm' ? second : first;
  };

  /** The moves the turn is made of, each to be heard on what those before it left. */
  const movesSaid = (
    { tongue, context: first, said: all, understanding: whole }: HeardWhole,
    names: HouseholdNames,
  ): readonly SaidMove<HeardMove>[] =>
    movesOf(tongue.understander, all, names, first, whole).map(({ said, matters }) => ({
      quote: quote(said[0]?.text ?? ''),
      matters,
      hear: (before, at, changed) =>
        withChanged(names, changed, () => {
          const context = hearingOf(before, tongue, at);
          const words = said[0]?.text ?? '';
          const heard = tongue.understander.understand(said, names, context);
          const understanding = accounted(heard, words, names, context);
          return {
            understood: given(understanding, words, names, context),
            kept: { words, understanding },
          };
        }),
    }));

  const answerAgain = <T>(kept: unknown, said: string): T => {
    const earlier = kept as KeptReply<T>;
    if (earlier.said !== said) {
      throw new TurnProblem('turn-id-reused', 'this turn id was used for something else');
    }
    return earlier.reply;
  };

  /** Whoever was looked up under older rights is looked up again before anything is said or done. */
  const mayStill = ({ rights }: TurnSpeaker, start: TurnStart): void => {
    if (rights !== undefined && rights !== start.rights)
      throw new TurnProblem('rights-changed', 'what this device may do was changed meanwhile');
  };

  const tell = (committed: Committed): void => {
    if (committed.entries.length === 0 && committed.devices.length === 0) return;
    for (const hear of listeners) hear(committed);
  };

  /** The shape of every turn, spoken or from a page: begin, decide, commit, perhaps again. */
  const settle = async <T>(
    speaker: TurnSpeaker,
    names: { readonly turn: Id; readonly conversation: Id; readonly said: string },
    work: (
      here: LiveKitchen,
      conversation: unknown,
      newId: () => Id,
    ) => Worked<T> | { readonly nothing: T } | Promise<Worked<T>>,
    next: () => void,
    /** What to answer when `work` broke. Left out: whoever asked gets the error. */
    broken?: (error: unknown, start: TurnStart) => Worked<T>,
  ): Promise<T> => {
    const { householdId } = speaker;
    for (let attempt = 0; attempt < TRIES; attempt += 1) {
      const start = await store.beginTurn(householdId, names.conversation, names.turn);
      if (!start) throw new TurnProblem('no-such-household', 'this household is not in the store');
      mayStill(speaker, start);
      if (start.earlierReply !== undefined) return answerAgain<T>(start.earlierReply, names.said);
      const decidedOn = { version: start.version };
      let done: Worked<T> | { readonly nothing: T };
      try {
        const here = await live.at(householdId, start);
        decidedOn.version = here.kitchen.version;
        done = await work(here, start.conversation, idsOf(householdId, names.turn));
      } catch (error) {
        if (!broken || isForeseen(error)) throw error;
        done = broken(error, start);
      }
      if ('nothing' in done) return done.nothing;
      const kept: KeptReply<T> = { said: names.said, reply: done.reply };
      const result = await tracing.span('commit', (facts) => {
        facts({ 'tellshelf.changes': done.changes.length, 'tellshelf.attempt': attempt + 1 });
        return store.commitTurn(
          householdId,
          {
            turnId: names.turn,
            conversationId: names.conversation,
            deviceId: speaker.deviceId,
            personId: speaker.personId,
            at: done.at,
            decidedOn: decidedOn.version,
            generation: start.generation,
            rights: speaker.rights,
            changes: done.changes,
            devices: done.devices ?? [],
            conversation: done.conversation,
            reply: kept,
          },
          (seen) => {
            // The next turn goes on from here; this one is answered when the disk has it.
            if (seen.outcome === 'done') live.follow(householdId, seen.entries);
            if (seen.outcome !== 'stale') next();
          },
        );
      });
      if (result.outcome === 'repeat') return answerAgain<T>(result.reply, names.said);
      if (result.outcome === 'done') {
        await done.afterwards?.().catch(() => undefined);
        tell({ householdId, entries: result.entries, devices: result.devices });
        return done.reply;
      }
    }
    throw new TurnProblem('too-busy', 'the kitchen kept changing while this was decided');
  };

  /** The answer to a turn that broke. The conversation stays where it was, unless that breaks it again. */
  const apologise = (
    { householdId }: TurnSpeaker,
    request: TurnRequest,
    error: unknown,
    { version, conversation }: TurnStart,
  ): Worked<TurnReply> => {
    const fault = newFaultId();
    onFault({ id: fault, householdId, error });
    const { earlier, broke } = readKept(conversation);
    const goesOn = earlier !== null && !broke;
    const after = goesOn ? earlier : startConversation(earlier?.listener ?? options.listener);
    // A household that could not be read has no locale to ask.
    const locale = live.peek(householdId)?.kitchen.household.locale ?? '';
    const tongue = tongues.for(request.locale, locale);
    const at = now();
    const spoken = tongue.voice.render(
      { parts: [{ kind: 'say', phrase: broke ? 'went-wrong-again' : 'went-wrong' }], earcon: 'problem' },
      { ...after.listener, earcons: wantsSounds(request, after.listener) },
      { clock: { now: at, timeZone: 'UTC' }, locale: tongue.locale, measures: 'metric' },
    );
    return {
      changes: [],
      conversation: goesOn ? keptAfterFault(after) : after,
      at,
      reply: toFaultReply(request, { fault, at, version, expecting: after.expecting }, spoken),
    };
  };

  /** One device's ids never meet another's: a client need only keep its own apart. Device ids hold no colon. */
  const own = (speaker: TurnSpeaker, id: Id): Id => `${speaker.deviceId ?? '-'}:${id}`;

  return {
    takeTurn: (speaker, request, told = [], why = undefined) =>
      // From its arrival, so that what it waited for others shows.
      tracing.span('turn', (facts) =>
        inLine(speaker.householdId, (next) => {
          const { id, conversation, ...said } = request;
          const names = {
            turn: own(speaker, id),
            conversation: own(speaker, conversation),
            said: fingerprint([conversation, said]),
          };
          facts({ 'tellshelf.guesses': request.hypotheses.length });
          return settle<TurnReply>(
            speaker,
            names,
            async (here, before, newId) => {
              const surroundings = around(here, speaker, newId);
              const earlier = readKept(before).earlier ?? startConversation(options.listener);
              const own = tongues.for(request.locale, here.kitchen.household.locale);
              const lesson = lessonKitchenNow(earlier, surroundings);
              const spokenNames = lesson ? namesOf(lesson) : here.names;
              const {
                tongue,
                understanding: whole,
                moves,
              } = tracing.span('understand', () => {
                const heard = hear(own, request, spokenNames, earlier, surroundings);
                return {
                  ...heard,
                  moves: movesSaid(heard, spokenNames),
                };
              });
              const hours = picksUp(whole.readings);
              const elsewhere =
                hours === null
                  ? []
                  : await store.recentConversations(
                      speaker.householdId,
                      hoursBefore(surroundings.clock.now, hours),
                      CONVERSATIONS_ELSEWHERE,
                    );
              const beside = { touched: request.touched ?? null, cutAt: request.cutAt ?? null, told };
              const words = request.hypotheses[0]?.text ?? null;
              const { outcome, each, deeds, afterwards } = await decideLookingUp(
                store,
                speaker,
                surroundings.clock.now,
                (found) =>
                  tracing.span('decide', () => {
                    const at = {
                      ...surroundings,
                      ...found,
                      newId: idsOf(speaker.householdId, names.turn),
                      elsewhere: elsewhere.flatMap((one) => readKept(one).earlier ?? []),
                    };
                    // One that is left of several is no longer all that was said.
                    const isCut = moves.length > 1 || (moves[0] ? wordsOf(moves[0].quote) : '') !== words;
                    const several = isCut ? decideMoves(earlier, moves, beside, at) : null;
                    if (several) return several;
                    const said = words ?? '';
                    const context = hearingOf(earlier, tongue, surroundings);
                    const heard = accounted(whole, said, spokenNames, context);
                    const understood = given(heard, said, spokenNames, context);
                    const decided = decide(earlier, { ...beside, understanding: understood }, at);
                    const { by, answer } = decided;
                    const kept = { words: said, understanding: heard };
                    return { outcome: decided, each: [{ heard: kept, by, answer, passedOver: false }] };
                  }),
              );
              why?.(whyOf(each, tongue.locale, earlier.expecting));
              const understanding = heardInAll(each, whole);
              const { listener } = outcome.conversation;
              const spoken = tracing.span('speak', () =>
                tongue.voice.render(
                  withEarcon(outcome, understanding),
                  { ...listener, earcons: wantsSounds(request, listener) },
                  aroundSpeech(surroundings, tongue),
                ),
              );
              // After silence, what was last said aloud is still what can be said again.
              const { lastSentences } = outcome.conversation;
              const after: Conversation = {
                ...outcome.conversation,
                lastSentences: spoken.sentences.length > 0 ? spoken.sentences : lastSentences,
              };
              return {
                changes: outcome.changes,
                devices: deeds,
                afterwards,
                conversation: after,
                at: surroundings.clock.now,
                reply: toReply(request, surroundings, understanding, outcome, spoken, (phrase) => {
                  const aside = { ...listener, length: 'usual', earcons: false } as const;
                  return tongue.voice.render({ parts: [phrase] }, aside, aroundSpeech(surroundings, tongue))
                    .text;
                }),
              };
            },
            next,
            (error, start) => apologise(speaker, request, error, start),
          );
        }),
      ),

    interruption: async (speaker, conversation, entries) => {
      const { householdId } = speaker;
      const start = await store.beginTurn(householdId, own(speaker, conversation), NO_CONVERSATION);
      if (!start?.conversation) return null;
      mayStill(speaker, start);
      const here = await live.at(householdId, start);
      const surroundings = around(here, speaker, idsOf(householdId, 'interruption'));
      const { earlier } = readKept(start.conversation);
      if (!earlier) return null;
      const told = interruption(earlier, entries, surroundings);
      if (!told) return null;
      const tongue = tongues.for(undefined, here.kitchen.household.locale);
      const speech = tongue.voice.render(told.answer, earlier.listener, aroundSpeech(surroundings, tongue));
      return { entryId: told.entryId, speech };
    },

    told: (speaker, conversation, entryId) =>
      inLine(speaker.householdId, (next) =>
        settle<null>(
          speaker,
          {
            turn: own(speaker, `told:${fingerprint([conversation, entryId])}`),
            conversation: own(speaker, conversation),
            said: entryId,
          },
          (here, before, newId) => {
            const { earlier } = readKept(before);
            if (!earlier) return { nothing: null };
            const surroundings = around(here, speaker, newId);
            return {
              changes: [],
              conversation: afterTelling(earlier, [entryId], surroundings),
              at: surroundings.clock.now,
              reply: null,
            };
          },
          next,
        ),
      ).then(() => undefined),

    partial: async (speaker, conversation, text) => {
      const start = await store.beginTurn(speaker.householdId, own(speaker, conversation), NO_CONVERSATION);
      if (!start) throw new TurnProblem('no-such-household', 'this household is not in the store');
      mayStill(speaker, start);
      const here = await live.at(speaker.householdId, start);
      const earlier = readKept(start.conversation).earlier ?? startConversation(options.listener);
      const tongue = tongues.for(undefined, here.kitchen.household.locale);
      const { now: at, timeZone } = clockOf(here.kitchen);
      const hearing = { now: at, timeZone, locale: tongue.locale, expecting: earlier.expecting };
      try {
        return tongue.understander.begins(text, here.names, hearing);
      } catch (error) {
        // Words so far are only a hint: the whole turn tells what is wrong.
        onFault({ id: newFaultId(), householdId: speaker.householdId, error });
        return false;
      }
    },

    change: <R>(speaker: TurnSpeaker, request: { id: Id; said: unknown }, build: BuildChange<R>) =>
      inLine(speaker.householdId, (next) => {
        const names = {
          turn: own(speaker, request.id),
          conversation: own(speaker, NO_CONVERSATION),
          said: fingerprint(['page', request.said]),
        };
        return settle<ChangeResult<R>>(
          speaker,
          names,
          (here, _before, newId) => {
            const surroundings = around(here, speaker, newId);
            const built = build(surroundings);
            if ('refused' in built) return { nothing: { outcome: 'refused', refused: built.refused } };
            return {
              changes: built.changes,
              conversation: null,
              at: surroundings.clock.now,
              reply: {
                outcome: 'done',
                version: here.kitchen.version + built.changes.length,
                changes: changesMade(built.changes),
              },
            };
          },
          next,
        );
      }),

    look: async (householdId) => {
      const start = await store.beginTurn(householdId, NO_CONVERSATION, NO_CONVERSATION);
      if (!start) throw new TurnProblem('no-such-household', 'this household is not in the store');
      const here = await live.at(householdId, start);
      const nobody = { personId: null, deviceId: null };
      const newId = idsOf(householdId, `look at ${here.kitchen.version}`);
      return { ...around(here, nobody, newId), rights: start.rights };
    },

    lessons: async (householdId) => {
      const start = await store.beginTurn(householdId, NO_CONVERSATION, NO_CONVERSATION);
      if (!start) throw new TurnProblem('no-such-household', 'this household is not in the store');
      const { kitchen } = await live.at(householdId, start);
      const since = hoursBefore(options.now(), LESSONS_HOURS);
      const kept = await store.recentConversations(householdId, since, CONVERSATIONS_OF_LESSONS);
      return sharedLessons(
        kept.flatMap((one) => readKept(one).earlier ?? []),
        kitchen.household.locale,
      );
    },

    say: (surroundings, answer) => {
      const tongue = tongues.for(undefined, surroundings.kitchen.household.locale);
      const { listener } = startConversation(options.listener);
      return tongue.voice.render(answer, listener, aroundSpeech(surroundings, tongue));
    },

    forget: (householdId) => live.forget(householdId),

    onCommitted: (hear) => {
      listeners.add(hear);
      return () => void listeners.delete(hear);
    },
  };
};
