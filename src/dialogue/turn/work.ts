/** What a turn has come to so far: acts are run one after the other, each on what the one before left. */
import { applyChange, joinChanges, personNamed, purchaseOf } from '../../kitchen/index.js';
import type { Change, Id, Item, JournalEntry, Kitchen } from '../../kitchen/model.js';
import type { Answer, Length, Listener, Say } from '../../speech/answer.js';
import type { Beside } from '../../protocol/beside.js';
import type { Qualifier } from '../../protocol/qualifiers.js';
import type { Act, Statement } from '../../understanding/intents.js';
import type { Conversation, Effect, Heard, LookUp, Surroundings } from '../api.js';
import { buttonLabels } from '../describe/buttons.js';
import { askedAfter } from '../ask/record.js';
import { about, assent, type Reply, type Turn } from '../handler.js';
import { handlers } from '../table.js';
import { lessonKitchen } from '../lessons/files.js';
import { keepFacts } from '../tell/facts.js';
import { stepsForAll, together } from '../tell/plan.js';
import { type Frame, type Memory, type Picked, type State, procedureKey, stateOf } from '../state.js';
import { toldTogether } from './told-together.js';
import { leavingTheCut } from '../outages/the-cut.js';

export interface Work {
  readonly state: State;
  readonly kitchen: Kitchen;
  readonly journal: readonly JournalEntry[];
  readonly listener: Listener;
  readonly changes: readonly Change[];
  readonly effects: readonly Effect[];
  readonly lookUp: LookUp | null;
  readonly parts: readonly Say[];
  readonly more: readonly Say[];
  readonly details: readonly Say[];
  readonly sources: readonly Say[];
  readonly names: readonly string[];
  readonly count: number | null;
  readonly length: Length | null;
  readonly quiet: boolean;
  readonly keepTold: boolean;
  readonly aside: boolean;
  /** Asked for the first time in this turn. */
  readonly asking: boolean;
  /** What all that was heard says beside its acts; null when nothing was said. */
  readonly beside: Beside | null;
  /** The language it was heard in. */
  readonly locale: string;
  /** What all that was heard says beside its requests and things. */
  readonly qualifiers: ReadonlySet<Qualifier>;
  /** Who took what was heard, outermost first: files of this room, and the handlers that were run. */
  readonly by: readonly string[];
  /** The last act that was run. */
  readonly act: Act | null;
  readonly rest: readonly Say[] | null;
  readonly cut: readonly string[] | null;
  readonly around: Surroundings;
  readonly before: Conversation;
  readonly cutAt: string | null;
  /** What else was likely heard, should this be denied. */
  readonly runnerUp: Act | null;
}

export const practised = (state: State, around: Surroundings): Pick<Work, 'kitchen' | 'journal'> => {
  if (!state.practice) return { kitchen: around.kitchen, journal: around.journal };
  const { lesson } = state.practice;
  let kitchen = lesson
    ? lessonKitchen(around.kitchen.household, { ...around.clock, now: lesson.beganAt })
    : around.kitchen;
  const journal: JournalEntry[] = [];
  for (const { id, at, change } of state.practice.changes) {
    kitchen = applyChange(kitchen, change);
    const { personId, deviceId } = around.speaker;
    journal.unshift({ ...change, id, at, version: kitchen.version, personId, deviceId, turnId: null });
  }
  // What was done before practice began is no practice, and stays out of reach of "undo".
  return { kitchen, journal };
};

export const startWork = (conversation: Conversation, heard: Heard, around: Surroundings): Work => {
  const state = stateOf(conversation);
  return {
    state,
    ...practised(state, around),
    listener: conversation.listener,
    changes: [],
    effects: [],
    lookUp: null,
    parts: [],
    more: [],
    details: [],
    sources: [],
    names: [],
    count: null,
    length: null,
    quiet: false,
    keepTold: false,
    aside: false,
    asking: false,
    beside: heard.understanding.beside ?? null,
    locale: heard.understanding.locale ?? around.kitchen.household.locale,
    qualifiers: new Set(heard.understanding.qualifiers),
    by: [],
    act: null,
    rest: null,
    cut: null,
    around,
    before: conversation,
    cutAt: heard.cutAt,
    runnerUp: null,
  };
};

export interface Settled {
  readonly picked: Picked;
  readonly sure: boolean;
}
export const unsettled: Settled = { picked: {}, sure: false };

export const turnOf = (work: Work, { picked, sure }: Settled = unsettled): Turn => ({
  kitchen: work.kitchen,
  journal: work.journal,
  clock: work.around.clock,
  speaker: work.around.speaker,
  newId: work.around.newId,
  state: work.state,
  memory: work.state.memory,
  listener: work.listener,
  lastSentences: work.before.lastSentences,
  picked,
  sure,
  beside: work.beside,
  locale: work.locale,
  qualifiers: work.qualifiers,
  cutAt: work.cutAt,
  elsewhere: work.around.elsewhere ?? [],
  devices: work.around.devices ?? null,
  knockedOn: work.around.knockedOn ?? null,
});

/** What one resolver makes of it, which is noted to have taken it. */
export const via = <T extends Work | null>(work: Work, by: string, resolve: (work: Work) => T): T =>
  resolve({ ...work, by: [...work.by, by] });

/** The handler of an act, as `table.ts` and its own file call it; a bundle numbers what is called alike in two files. */
export const handlerOf = (intent: Act['intent']): string =>
  `${intent}: ${handlers[intent].name.replace(/\d+$/, '') || 'table.ts'}`;

export const withState = (work: Work, state: Partial<State>): Work => ({
  ...work,
  state: { ...work.state, ...state },
});

/** So many people are remembered as spoken of. */
const peopleKept = 4;

export const withMemory = (work: Work, memory: Partial<Memory>): Work => {
  const last = memory.people ?? (memory.personId ? [memory.personId] : []);
  const people = [...new Set([...last, ...work.state.memory.people])].slice(0, peopleKept);
  // A thing that is told is what "it" means, and no food that was only asked about.
  const spoken = memory.items && memory.items.length > 0 ? { spoken: null } : {};
  return withState(work, { memory: { ...work.state.memory, ...spoken, ...memory, people } });
};

export const saying = (work: Work, ...parts: readonly Say[]): Work => ({
  ...work,
  parts: [...work.parts, ...parts],
});

/** So many questions wait at most; several may come of what was told in one breath. */
const mostFrames = 6;

export const pushFrame = (work: Work, frame: Frame): Work => ({
  ...withState(work, { frames: [...work.state.frames.slice(1 - mostFrames), frame] }),
  asking: true,
});

/**
 * What was told in one breath may raise several questions: the first is asked first, the others wait beneath it, and
 * what is only offered is not put before any of them.
 */
const askedInTurn = (before: Work, after: Work): Work => {
  const known = new Set(before.state.frames);
  const raised = after.state.frames.filter((frame) => !known.has(frame));
  if (raised.length < 2) return after;
  const asks = raised.filter(({ kind }) => kind !== 'offer');
  const ordered = asks.length > 0 ? asks.toReversed() : raised.slice(-1);
  return withState(after, {
    frames: [...after.state.frames.filter((frame) => known.has(frame)), ...ordered],
  });
};

const applied = (work: Work, changes: readonly Change[]): Work => {
  if (changes.length === 0) return work;
  const kitchen = changes.reduce<Kitchen>(applyChange, work.kitchen);
  const { practice } = work.state;
  if (practice) {
    const at = work.around.clock.now;
    const more = changes.map((change) => ({ id: work.around.newId(), at, change }));
    return {
      ...withState(work, { practice: { ...practice, changes: [...practice.changes, ...more] } }),
      kitchen,
    };
  }
  return { ...work, kitchen, changes: [...work.changes, ...changes] };
};

/** How much was changed so far, also where it is only practised. */
export const changesSoFar = ({ changes, state: { practice } }: Work): number =>
  changes.length + (practice?.changes.length ?? 0);

/** What one act did is one change: told, undone and redone together. The last step names it. */
const asOne = (changes: readonly Change[]): readonly Change[] => {
  const [first, ...rest] = changes;
  // What takes back several deeds is as many changes: each names the one it takes back.
  if (!first || rest.length === 0 || changes.some(({ undoes }) => undoes !== undefined)) return changes;
  return [{ ...joinChanges(first, ...rest), verb: changes.at(-1)!.verb }];
};

const createdItems = (changes: readonly Change[]): Id[] =>
  changes.flatMap(({ ops }) =>
    ops.flatMap((op) => (op.kind === 'item' && op.before === null && op.after ? [op.id] : [])),
  );

/** The procedure as it stands after a reply, or that it is over. */
const procedureAfter = (work: Work, next: Reply['procedure']): Partial<State> => {
  const { now } = work.around.clock;
  const { procedure } = work.state;
  if (next === undefined) return {};
  if (next === null)
    return { procedure: null, ...(procedure ? { over: { key: procedureKey(procedure), at: now } } : {}) };
  const by = next.by === undefined ? work.around.speaker.personId : next.by;
  return { procedure: { ...next, by, touchedAt: now } };
};

/** Nothing is left of the dish whose steps were followed: they are over. */
const isEatenUp = ({ state: { procedure }, kitchen }: Work): boolean => {
  const dish = procedure?.itemId ? kitchen.items.get(procedure.itemId) : undefined;
  return dish !== undefined && dish.gone !== null;
};

/** Sounds so much like somebody's name that she was meant. */
const surelyThem = 0.85;

/** Who was named, or made the one thing asked about: what "she" and "he" mean next. */
const spokenOf = ({ kitchen }: Work, { intent, slots }: Act): Partial<Memory> => {
  const [near] = slots.person?.candidates ?? [];
  if (near && near.fit >= surelyThem && kitchen.people.has(near.id)) return { personId: near.id };
  const id = intent === 'who-did' && slots.asked === 'made' ? slots.item?.candidates[0]?.id : undefined;
  const maker = slots.maker ?? slots.item?.maker ?? (id ? kitchen.items.get(id)?.maker : null) ?? null;
  const person = maker ? personNamed(kitchen, maker) : null;
  return person ? { personId: person.id } : {};
};

/** "Remind me to take the thighs out, and how do I thaw them": what an act names is spoken of, where its answer says nothing else is. */
const namedBy = (work: Work, { slots }: Act, { memory }: Reply): Partial<Memory> => {
  const [near, next] = slots.item?.candidates ?? [];
  const item = near && near.fit >= surelyThem ? work.kitchen.items.get(near.id) : undefined;
  const sure = item && item.gone === null && (!next || next.fit < near!.fit);
  const ofOther = (memory?.items ?? memory?.purchases) !== undefined;
  return !ofOther && sure ? about(turnOf(work), [item]) : {};
};

/** Puts a reply into the turn: its changes, what it says, what it waits for. */
export const absorb = (work: Work, act: Act, settled: Settled, reply: Reply): Work => {
  const { picked } = settled;
  if (reply.lookUp) return { ...work, lookUp: reply.lookUp };
  if (reply.confirm && !settled.sure) {
    const frame: Frame = {
      kind: 'sure',
      slot: 'sure',
      question: reply.confirm,
      expecting: 'yes-no',
      act,
      picked,
      asked: 1,
      ...(reply.otherwise ? { otherwise: reply.otherwise } : {}),
    };
    // What a yes would do is not told as done before it.
    return pushFrame(withMemory(work, reply.memory ?? {}), frame);
  }
  const told = applied(work, asOne(reply.noted ?? []));
  const said = saying(told, ...reply.parts);
  if (reply.ask) {
    // Which item was meant is settled, whatever is asked next about it.
    const items = reply.ask.slot === 'item' || reply.askFor ? undefined : reply.memory?.items;
    const known = items && items.length > 0 && !picked.item ? { item: items, ...picked } : picked;
    const frame: Frame = { ...reply.ask, kind: 'slot', act: reply.askFor ?? act, picked: known, asked: 1 };
    const ids = frame.choices?.flatMap((choice) => choice.ids) ?? [];
    const offered = ids.every((id) => work.kitchen.items.has(id)) && ids.length > 0 ? ids : null;
    const asked = pushFrame(withMemory(said, { ...reply.memory, ...(offered ? { offered } : {}) }), frame);
    return withState(
      {
        ...asked,
        more: [...asked.more, ...(reply.more ?? [])],
        names: [...asked.names, ...(reply.names ?? [])],
        count: reply.count ?? asked.count,
      },
      {
        ...(reply.session === undefined ? {} : { session: reply.session }),
        // What was told before a question in passing was asked and answered all the same.
        ...(reply.asked
          ? { asked: askedAfter(asked.state.asked, act, reply, asked.state.turns, work.state.memory.offered) }
          : {}),
      },
    );
  }
  const changes = leavingTheCut(
    { kitchen: work.kitchen, clock: work.around.clock },
    asOne((reply.changes ?? []).map((change) => doneBy(work, act, change))),
  );
  const done = applied(said, changes);
  const added = createdItems(changes);
  const memory: Partial<Memory> = {
    ...spokenOf(work, act),
    ...namedBy(work, act, reply),
    ...reply.memory,
    ...(added.length > 0 ? { lastAdded: added } : {}),
  };
  const next: Work = {
    ...withMemory(done, memory),
    effects: [...done.effects, ...(reply.effects ?? [])],
    more: [...done.more, ...(reply.more ?? [])],
    details: [...done.details, ...(reply.details ?? [])],
    sources: [...done.sources, ...(reply.sources ?? [])],
    names: [...done.names, ...(reply.names ?? [])],
    count: reply.count ?? done.count,
    listener: reply.listener ?? done.listener,
    length: reply.length ?? done.length,
    quiet: done.quiet || reply.quiet === true,
    keepTold: done.keepTold || reply.keepTold === true,
    aside: reply.aside === true,
    rest: reply.rest ?? done.rest,
    cut: reply.cut ?? done.cut,
  };
  const { done: lastDone, session, practice } = next.state;
  const stated = withState(next, {
    asked: askedAfter(next.state.asked, act, reply, next.state.turns, work.state.memory.offered),
    done:
      changes.length > 0
        ? { act, picked, changes, at: work.around.clock.now, turn: work.state.turns }
        : lastDone,
    ...procedureAfter(work, isEatenUp(next) ? null : reply.procedure),
    session: reply.session === undefined ? session : reply.session,
    practice: reply.practice === undefined ? practice : reply.practice,
    ...(reply.sharing ? { sharing: reply.sharing } : {}),
    whisperUntil: reply.whisperUntil === undefined ? next.state.whisperUntil : reply.whisperUntil,
    // What is gone through from here on leaves no question of before open.
    ...(reply.dropFrames || (reply.session && reply.session.kind !== session?.kind)
      ? { frames: [] }
      : { frames: next.state.frames.filter((frame) => !isListed(next, frame)) }),
  });
  if (reply.next) return runAct(stated, reply.next);
  if (!reply.offer) return stated;
  const { question, act: offered, otherwise } = reply.offer;
  const frame: Frame = {
    kind: 'offer',
    slot: 'offer',
    question,
    expecting: 'yes-no',
    act: offered,
    picked: {},
    asked: 1,
    ...(otherwise ? { otherwise } : {}),
  };
  return pushFrame(stated, frame);
};

/** "Sam ate two": by Sam, whoever tells it. Somebody whom nobody knows is nobody on record. */
const doneBy = ({ kitchen, around }: Work, { slots: { by } }: Act, change: Change): Change => {
  const doer = by === undefined ? null : personNamed(kitchen, by);
  return doer && doer.id !== around.speaker.personId ? { ...change, doerId: doer.id } : change;
};

/** "I used up the lettuce, put it on the list": what was offered has been done. */
const isListed = ({ kitchen }: Work, { kind, act }: Frame): boolean => {
  const name = act.slots.item?.words ?? act.slots.words;
  if (kind !== 'offer' || act.intent !== 'buy-add' || !name) return false;
  // "I threw out the ham, put ham on the list", of the cooked ham.
  const called = name.split(' ').map((_, at, all) => all.slice(at).join(' '));
  return called.some((one) => purchaseOf(kitchen, one) !== null);
};

const justAdded = (work: Work): readonly Item[] =>
  work.state.memory.lastAdded.flatMap((id) => work.kitchen.items.get(id) ?? []);

/** One statement, as the steps it comes to on what is on record by then. */
const carryOut = (work: Work, statements: readonly Statement[], sure: boolean): Work =>
  stepsForAll(turnOf(work), statements).reduce((at, step) => {
    const only = step.do === 'act' && step.items ? { item: step.items.map(({ id }) => id) } : null;
    if (step.do === 'act') return runAct(at, step.act, { picked: only ?? {}, sure });
    return keeping(at, step.items.length > 0 ? step.items : addedSince(work, at), step.statement, {
      amount: step.amount,
      sure,
    });
  }, work);

/** What came in after that; never what came in before it, which a question that waits leaves the last. */
const addedSince = ({ state: { memory: before } }: Work, at: Work): readonly Item[] =>
  at.state.memory.lastAdded === before.lastAdded ? [] : justAdded(at);

const keeping = (
  work: Work,
  items: readonly Item[],
  statement: Statement,
  { amount, sure }: { readonly amount: boolean; readonly sure: boolean },
): Work => {
  const now = items.flatMap(({ id }) => work.kitchen.items.get(id) ?? []);
  if (now.length === 0) return work;
  const act: Act = { intent: 'tell', slots: { statements: [statement] } };
  return absorb(work, act, unsettled, keepFacts(turnOf(work, { picked: {}, sure }), now, statement, amount));
};

/** Nothing was said, changed, asked or looked up. */
const isIdle = (before: Work, after: Work): boolean =>
  after.parts.length === before.parts.length &&
  after.changes.length === before.changes.length &&
  changesSoFar(after) === changesSoFar(before) &&
  after.state.frames.length === before.state.frames.length &&
  after.state.frames.every((frame, at) => frame === before.state.frames[at]) &&
  after.lookUp === null;

/** "The milk stays on the door": where it is already, which is said. */
const sayingWhere = (work: Work, statements: readonly Statement[]): Work =>
  statements.reduce<Work>(
    (at, { deed, thing, place }) =>
      deed === 'stored' && thing?.words && thing.candidates.length > 0 && place
        ? runAct(at, { intent: 'find', slots: { item: thing } })
        : at,
    work,
  );

/** What was told in one breath is taken back in one. */
const inOneGo = (work: Work, from: number): Work => {
  const told = work.changes.slice(from);
  // Of different kinds, each is taken back by its own name.
  if (told.length < 2 || new Set(told.map(({ verb }) => verb)).size > 1) return work;
  const changes = asOne(told);
  const { done } = work.state;
  const joined = { ...work, changes: [...work.changes.slice(0, from), ...changes] };
  return done ? withState(joined, { done: { ...done, changes } }) : joined;
};

/** Runs one act through its handler; what was told, statement by statement, each on what the one before left. */
export const runAct = (work: Work, act: Act, settled: Settled = unsettled): Work => {
  const { statements } = act.slots;
  if (statements && statements.length > 0) {
    const begun: Work = { ...work, by: [...work.by, 'tell/plan.ts'], act };
    const each = together(statements).reduce<Work>((at, some) => {
      const done = carryOut(at, some, settled.sure);
      return isIdle(at, done) ? sayingWhere(done, some) : done;
    }, begun);
    const told = askedInTurn(begun, each);
    // Nothing came of it: that is no "all right".
    return isIdle(work, told) ? saying(told, assent('told-nothing-new')) : inOneGo(told, work.changes.length);
  }
  const by = [...work.by, handlerOf(act.intent)];
  const done = absorb({ ...work, by, act }, act, settled, handlers[act.intent](act, turnOf(work, settled)));
  const { besides } = act.slots;
  return besides
    ? keeping(done, addedSince(work, done), besides, { amount: false, sure: settled.sure })
    : done;
};

/** What the act would come to, changing nothing. */
export const tryAct = (work: Work, act: Act, settled: Settled = unsettled): Reply =>
  handlers[act.intent](act, turnOf(work, settled));

/** Nothing is said twice in one answer: two things on one label rule share its sentence. */
const once = (parts: readonly Say[]): readonly Say[] => {
  const seen = new Set<string>();
  return parts.filter((part) => {
    const key = JSON.stringify(part);
    return !seen.has(key) && seen.add(key);
  });
};

export const answerOf = (work: Work, question: Say | undefined): Answer => {
  const top = work.state.frames.at(-1);
  const choices = top && question ? choicesFor(top) : [];
  return {
    parts: toldTogether(once(work.parts)),
    ...(question ? { question } : {}),
    ...(work.more.length > 0 ? { more: work.more } : {}),
    ...(work.length ? { length: work.length } : {}),
    ...(choices.length > 0 ? { choices } : {}),
  };
};

const numerals = ['the first', 'the second', 'the third', 'the fourth'];

/** For a screen: what may be said to the open question, and what its button says. */
const choicesFor = (frame: Frame): { label: string | Say; say: string }[] => {
  if (frame.expecting === 'yes-no' || frame.expecting === 'outage-state')
    return ['yes', 'no'].map((word) => ({ label: word, say: word }));
  const offered = (frame.choices ?? []).slice(0, numerals.length).map(({ label }) => label);
  return buttonLabels(offered).map((label, at) => ({ label, say: numerals[at]! }));
};
