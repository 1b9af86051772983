/** One turn: what was heard, and the conversation so far, to changes and an answer. Pure. */
import type { Say } from '../speech/answer.js';
import type { Quote } from '../terms/quote.js';
import type {
  Act,
  CHANGING_INTENTS,
  Expectation,
  Intent,
  Reading,
  Slots,
  Understood,
} from '../understanding/intents.js';
import { ASKING_INTENTS, CHANGING_INTENTS as changing, emptyMention } from '../understanding/intents.js';
import type { Conversation, Decide, Heard, Outcome, Surroundings } from './api.js';
import type { Id } from '../kitchen/model.js';
import { placeNoun } from './describe/place.js';
import { about, assent, say } from './handler.js';
import { dueWhileAsked, pastByTelling } from './guidance/past-by-telling.js';
import { findItems } from './refer/items.js';
import { choose, namedOf } from './refer/choose.js';
import { withLesson } from './lessons/after-turn.js';
import { withMessages } from './news/messages.js';
import { withNews, withTold } from './news/news.js';
import { itJustGone } from './refer/none-left.js';
import { touchMarker } from './refer/touched.js';
import { withLater } from './sessions/later.js';
import { sessionAnswer, sessionPrompt } from './sessions/session.js';
import { setupAfterChange, setupExpects } from './sessions/setup.js';
import { type Frame, type State, type Told, setupKey, stateOf } from './state.js';
import { summaryLines } from './summary/lines.js';
import { recallSummary } from './summary/told.js';
import { askTold, withoutOlder } from './tell/ask.js';
import { sureFrame } from './turn/ask-sure.js';
import { bestReading, closeReadings, harmless, onlyOneMeaning, steering } from './turn/doubt.js';
import { askInstead } from './turn/asked-instead.js';
import { answeringTold, sharedOut } from './turn/answer-told.js';
import { brokenOff } from './turn/broken-off.js';
import { correctLast, otherOfName } from './turn/correct.js';
import { awaitsDetail, detailOf, setJustNow } from './turn/detail.js';
import { followUp } from './turn/follow-up.js';
import { howLongOf } from './turn/how-long.js';
import { goesOnWithList, listAgain, ofListInstead } from './turn/list-again.js';
import { ofUndoInstead } from './turn/undo-instead.js';
import { settleFirst } from './turn/settle.js';
import { runnerUpOf } from './turn/runner-up.js';
import {
  answerFrame,
  askAgain,
  dropOffers,
  isSettled,
  pickByWords,
  questionOf,
  topFrame,
} from './turn/frames.js';
import {
  type Work,
  absorb,
  answerOf,
  handlerOf,
  pushFrame,
  runAct,
  saying,
  startWork,
  tryAct,
  turnOf,
  unsettled,
  via,
  withMemory,
  withState,
} from './turn/work.js';
import { cutTalkedOf } from './outages/the-cut.js';

const isChanging = (intent: Intent): intent is (typeof CHANGING_INTENTS)[number] =>
  (changing as readonly Intent[]).includes(intent);

/** Questions do not wait for ever: after this, the talk starts afresh. */
const minutesAQuestionWaits = 15;

/** A marker touched so many turns ago is no longer in the hand. */
const turnsAMarkerIsHeld = 3;

const aged = (work: Work): Work => {
  const { lastAt } = work.before;
  if (!lastAt) return work;
  const minutes = (Date.parse(work.around.clock.now) - Date.parse(lastAt)) / 60_000;
  const { touched } = work.state.memory;
  const held =
    touched !== null &&
    work.state.turns - touched.turn <= turnsAMarkerIsHeld &&
    minutes <= minutesAQuestionWaits;
  const kept = touched && !held ? withMemory(work, { touched: null }) : work;
  const { whisperUntil } = kept.state;
  const awake =
    whisperUntil !== null && whisperUntil <= work.around.clock.now
      ? {
          ...withState(kept, { whisperUntil: null }),
          listener: { ...kept.listener, whisper: false },
        }
      : kept;
  return minutes > minutesAQuestionWaits ? withState(awake, { frames: [] }) : awake;
};

/** "Yes", in a stock-take, to a question that yes is no answer to: it is meant for the stock-take. */
const isForTheCount = (work: Work, { intent }: Act): boolean => {
  const frame = topFrame(work);
  const { session } = work.state;
  if (!frame || session?.kind !== 'count' || session.paused || (intent !== 'yes' && intent !== 'no'))
    return false;
  const yesNo = frame.expecting === 'yes-no' || frame.expecting === 'outage-state';
  return frame.kind === 'slot' && !yesNo && !frame.guess && !frame.no;
};

/** "No, the second shelf", after something else was done while a question waited: that is put right. */
const isOfWhatWasDone = (
  { state: { done, turns } }: Work,
  { intent, slots }: Act,
  frame: Frame | undefined,
): boolean =>
  intent === 'correct' &&
  frame?.kind === 'slot' &&
  (frame.offeredAgain ?? 0) > 0 &&
  done?.turn === turns - 1 &&
  Object.keys(slots).length > 0;

/** "We'd better get two more, then", to whether it is used up: so it is. */
const goneAsAsked = (work: Work, { intent, slots }: Act): Work | null => {
  const frame = topFrame(work);
  const again = intent === 'buy-add' && slots.item?.words === null && slots.asked === undefined;
  if (!again || frame?.kind !== 'sure' || frame.act.intent !== 'finish') return null;
  return answerFrame(work, { intent: 'yes', slots: {} });
};

/** One act that was understood well enough. */
const perform = (before: Work, said: Act): Work => {
  // "…, which one was it again?": what this very turn came to is being said, and nothing of an earlier one.
  const answers = before.act !== null && !isTalk(before.act.intent);
  if (said.intent === 'repeat' && (before.asking || (answers && before.parts.length > 0))) return before;
  const at = via(before, 'decide.ts goneAsAsked', (work) => goneAsAsked(work, said)) ?? before;
  const meant = sharedOut(topFrame(at), said);
  const act = ofUndoInstead(at, heldInstead(at, lostToPower(at, howLongOf(at, ofListInstead(at, meant)))));
  const aside = isForTheCount(at, act) || isOfWhatWasDone(at, act, topFrame(at));
  const work = aside ? withState(at, { frames: at.state.frames.slice(0, -1) }) : at;
  const ofOutage = via(work, 'decide.ts outageTalk', (at) => outageTalk(at, act));
  if (ofOutage) return ofOutage;
  const answered = via(work, 'turn/frames.ts', (at) => answerFrame(at, answeringTold(topFrame(at), act)));
  if (answered) return answered;
  const reply = sessionAnswer(act, turnOf(work));
  if (reply) return via(work, 'sessions/session.ts', (at) => absorb(dropOffers(at), act, unsettled, reply));
  const open = isTalk(act.intent) ? work : dropOffers(work);
  const settled =
    act.intent === 'tell' ? withState(open, { frames: withoutOlder(open.state.frames, act) }) : open;
  const felt = via(settled, 'decide.ts feltAmongTold', (at) => feltAmongTold(at, act));
  if (felt) return felt;
  if (act.intent === 'answer' || act.intent === 'choose')
    return (
      via(settled, 'turn/detail.ts', (at) => detailOf(at, act)) ??
      via(settled, 'turn/correct.ts', (at) => otherOfName(at, act)) ??
      via(settled, 'decide.ts chooseAmongTold', (at) => chooseAmongTold(at, act)) ??
      via(settled, 'decide.ts sameOfAnother', (at) => sameOfAnother(at, act)) ??
      runAct(settled, act)
    );
  if (act.intent === 'tell')
    return via(settled, 'turn/detail.ts', (at) => detailOf(at, act)) ?? runAct(settled, act);
  if (act.intent === 'follow-up')
    return (
      via(settled, 'turn/list-again.ts', (at) => listAgain(at, act)) ??
      via(settled, 'turn/follow-up.ts', (at) => followUp(at, act, confirmed))
    );
  if (act.intent === 'correct')
    return (
      via(settled, 'decide.ts otherThan', (at) => otherThan(at, act)) ??
      via(settled, 'turn/correct.ts', (at) => correctLast(at, act)) ??
      saying(settled, assent('nothing-to-correct'))
    );
  return runAct(settled, act);
};

const ofPower = (act: Act | null | undefined): boolean =>
  act?.intent === 'power-cut' || act?.intent === 'power-back';

/** "No, it went off at noon", "no wait, it was two", of the cut that was just told of: it began then. */
const beginningPutRight = (work: Work, { intent, slots }: Act): Work | null => {
  if (intent !== 'correct' && intent !== 'answer') return null;
  const { frames, told } = work.state;
  const open = frames.at(-1);
  // Since when was asked: that is its answer, and of a new cut.
  if (open?.slot === 'time' || (!ofPower(open?.act) && !ofPower(told?.act))) return null;
  const { amount, time, duration } = slots;
  const hour =
    intent === 'correct' && amount?.unit === 'piece' && amount.value >= 1 && amount.value <= 12
      ? `${String(Math.floor(amount.value)).padStart(2, '0')}:00`
      : undefined;
  const since = time ?? hour;
  if (!since && duration === undefined) return null;
  const { amount: _hour, ...rest } = slots;
  const asking = frames.filter(({ act }) => !ofPower(act));
  return runAct(withState(dropOffers(work), { frames: asking }), {
    intent: 'power-cut',
    slots: { ...rest, ...(since ? { time: since } : {}), asked: 'put-right' },
  });
};

/** "It's half full", "is the freezer okay", while a power cut is talked of, whether or not that was asked. */
const outageTalk = (work: Work, act: Act): Work | null => {
  const outage = cutTalkedOf(work);
  const { frames } = work.state;
  const { doors, fullness, degrees, asked, placeKind } = act.slots;
  const begun = outage ? beginningPutRight(work, act) : null;
  if (begun) return begun;
  const question = asked !== undefined && ['holds', 'todo', 'lost'].includes(asked);
  if (!outage || act.intent !== 'answer') return null;
  if (!(doors ?? fullness ?? degrees) && !question) return null;
  const asking = frames.filter(({ act: { intent } }) => intent !== 'power-cut' && intent !== 'power-back');
  const without = withState(dropOffers(work), { frames: asking });
  const intent = outage.backAt ? 'power-back' : 'power-cut';
  const slots = {
    ...(doors ? { doors } : {}),
    ...(fullness ? { fullness } : {}),
    ...(degrees ? { degrees } : {}),
    ...(asked ? { asked } : {}),
    ...(placeKind ? { placeKind } : {}),
  };
  return runAct(without, { intent, slots });
};

/** "What do I have to throw away?", after the power was out: what it cost, not what is old. */
const lostToPower = (work: Work, act: Act): Act =>
  act.intent === 'use-first' && cutTalkedOf(work)?.backAt && work.qualifiers.has('throw')
    ? { intent: 'power-back', slots: {} }
    : act;

/** "The egusi", when two soups were just told apart, though no reading fits: the same is asked of it. */
const amongTold = (work: Work): Work | null => {
  const { told, memory, turns } = work.state;
  const frame = topFrame(work);
  // A question put again after other talk does not stand in the way of what was just told.
  if ((frame && !frame.offeredAgain) || told?.turn !== turns - 1) return null;
  const ids = memory.offered.length > 1 ? memory.offered : [];
  const choices = ids.map((id) => ({ ids: [id], label: say('apart-other') }));
  const [id] = namedOf(work.beside, choices) ?? [];
  if (!id) return null;
  const item = { ...emptyMention, candidates: [{ id, fit: 1 }] };
  return followUp(withState(work, { misses: 0 }), { intent: 'follow-up', slots: { item } }, confirmed);
};

/** "Just in the freezer": part of what was told. */
const fewer = ({ qualifiers }: Work): Slots => (qualifiers.has('just') ? { asked: 'only' } : {});

/** What was done last, a turn ago, put something away. */
const wasPut = ({ state: { done, turns } }: Work): boolean =>
  done?.turn === turns - 1 && done.changes.some(({ verb }) => verb === 'put away');

/** "The butter", or "in the freezer", with nothing asked: what was asked or done last, again, of that. */
const sameOfAnother = (work: Work, act: Act): Work | null => {
  const { item } = act.slots;
  if (!item || item.pointer !== null || item.ordinal !== null) return null;
  // "And sugar in the larder", after something was put away: so is that.
  const { at } = item;
  if (item.words !== null && item.candidates.length === 0 && at && wasPut(work))
    return runAct(work, { intent: 'put-away', slots: { item: { ...item, at: null }, place: at } });
  if (item.candidates.length === 0 && item.at)
    return followUp(work, { ...act, slots: { place: item.at, ...fewer(work) } }, confirmed);
  return item.words === null ? null : (listAgain(work, act) ?? followUp(work, act, confirmed));
};

/** "The other one", after an answer that told several apart: the same is asked of that one. */
const chooseAmongTold = (work: Work, act: Act): Work | null => {
  const asked = work.state.told?.act;
  const { offered, items } = work.state.memory;
  const ids = offered.length > 1 ? offered : items;
  if (!asked || isChanging(asked.intent) || ids.length < 2) return null;
  const result = choose(
    turnOf(work),
    act,
    ids.map((id) => ({ ids: [id], label: say('apart-other') })),
  );
  const chosenIds = result.chosen === 'fewer' ? result.ids : result.chosen;
  if (typeof chosenIds === 'string') return null;
  const talk = ASKING_INTENTS as readonly Intent[];
  // "And the milk", of a power cut, asks what became of it.
  const ofPower = asked.intent === 'power-cut' || asked.intent === 'power-back';
  const again: Act = ofPower
    ? { intent: 'keeps', slots: {} }
    : talk.includes(asked.intent)
      ? asked
      : { intent: 'find', slots: {} };
  return runAct(work, again, { picked: { item: chosenIds }, sure: false });
};

/** "Not the sorghum, the other one", of two that were told. */
const otherThan = (work: Work, { slots: { not, item } }: Act): Work | null => {
  const { offered, items } = work.state.memory;
  const told = offered.length > 1 ? offered : items;
  if (!not || item?.pointer !== 'other' || told.length < 2) return null;
  const denied = findItems(turnOf(work), not).items.map(({ id }) => id);
  const left = told.filter((id) => !denied.includes(id));
  const asked = work.state.told?.act;
  if (left.length === 0 || left.length === told.length || !asked || isChanging(asked.intent)) return null;
  return runAct(work, asked, { picked: { item: left }, sure: false });
};

/** "I've got a small jar with a sticker on it": something in the hand, and no new marker. */
const heldInstead = ({ qualifiers }: Work, act: Act): Act =>
  act.intent === 'add-marker' && act.slots.marker?.touch?.container && !qualifiers.has('new')
    ? { intent: 'whats-this', slots: { marker: act.slots.marker } }
    : act;

/** "It's got a sticker on", of several that were told: which of them it is, and no marker is put on any. */
const feltAmongTold = (work: Work, act: Act): Work | null => {
  const { told, memory, turns } = work.state;
  const marker = act.slots.marker ?? null;
  const pointed = act.slots.item?.pointer && act.slots.item.words === null;
  if (act.intent !== 'mark' || !pointed || !marker || told?.turn !== turns - 1) return null;
  return memory.offered.length > 1 && memory.items.length > 1
    ? chooseAmongTold(work, { intent: 'choose', slots: { marker } })
    : null;
};

/** Talk about the talk leaves an offer standing: "say that again" does not decline it. */
const isTalk = (intent: Intent): boolean =>
  [
    'repeat',
    'slower',
    'faster',
    'louder',
    'quieter',
    'whisper',
    'shorter',
    'longer',
    'spell',
    'why',
    'details',
  ].includes(intent);

/** Heard, but not surely: what changes nothing is answered, what changes something is asked first. */
const confirmed = (work: Work, said: Act): Work => {
  const act = heldInstead(work, sharedOut(topFrame(work), said));
  const answer = answeringTold(topFrame(work), act);
  const answered =
    topFrame(work) && !isChanging(answer.intent)
      ? via(work, 'turn/frames.ts', (at) => answerFrame(at, answer))
      : null;
  if (answered) return answered;
  // What is taken back can be had again: of what was done in this talk it is done, and not asked.
  const back = (act.intent === 'undo' || act.intent === 'redo') && work.state.done !== null;
  if (!isChanging(act.intent) || back || ofUndoInstead(work, act) !== act) return perform(work, act);
  const felt = via(work, 'decide.ts feltAmongTold', (at) => feltAmongTold(at, act));
  if (felt) return felt;
  // The set-up asked for it, and reads back what it makes of it.
  const { session } = work.state;
  const told =
    session?.kind === 'setup' && !session.paused && !topFrame(work) ? sessionAnswer(act, turnOf(work)) : null;
  if (told) return via(work, 'sessions/session.ts', (at) => absorb(dropOffers(at), act, unsettled, told));
  if (act.intent === 'tell') return via(work, 'tell/ask.ts', (at) => askTold(dropOffers(at), act));
  const reply = tryAct(work, act);
  const changes = [...(reply.changes ?? []), ...(reply.effects ?? [])].length > 0;
  if (!changes && !reply.confirm)
    return via(work, handlerOf(act.intent), (at) => absorb(dropOffers(at), act, unsettled, reply));
  // What the question is about is what "it" means in the answer.
  return via(work, `turn/ask-sure.ts ${handlerOf(act.intent)}`, (at) =>
    pushFrame(withMemory(dropOffers(at), reply.memory ?? {}), sureFrame(at, act, reply)),
  );
};

const misheard = (work: Work): Work => {
  const misses = work.state.misses + 1;
  const next = withState(work, { misses });
  if (topFrame(work)) return askAgain(saying(next, say('missed-with-question', { times: misses })));
  return saying(next, say('missed', { times: Math.min(misses, 3), heard: work.beside?.quote ?? '' }));
};

/** "Right, the salmon then", with nothing it could answer: what was asked last, of that, or what is known of it. */
const bareName = (work: Work, { readings }: Understood): Work | null => {
  const [act, ...more] = readings[0]?.acts ?? [];
  const item = act?.intent === 'choose' && more.length === 0 && !topFrame(work) ? act.slots.item : null;
  const [best] = item?.candidates ?? [];
  if (!item || item.words === null || !best || best.fit < halfName) return null;
  return sameOfAnother(withState(work, { misses: 0 }), { intent: 'choose', slots: { item } });
};
/** The last word of a name is enough, of a thing that is called by nothing else. */
const halfName = 0.65;

/** A place and nothing else: what is there can be told. */
const offerToTell = (work: Work, id: Id, words: string): Frame => ({
  kind: 'offer',
  slot: 'offer',
  question: say('offer-tell-place', { place: placeNoun(work.kitchen, id) }),
  expecting: 'yes-no',
  act: {
    intent: 'find',
    slots: { place: { words, candidates: [{ id, fit: 1 }], pointer: null, spot: null } },
  },
  picked: {},
  asked: 1,
});

/** Words of this kitchen with nothing to be made of them: what was caught is said, and what could be asked of it. */
const caught = (work: Work, { caught: words = [] }: Understood): Work => {
  const item = words.find(({ kind }) => kind === 'item');
  const place = words.find(({ kind }) => kind === 'place');
  const record = item?.id ? work.kitchen.items.get(item.id) : undefined;
  if (topFrame(work) || (!item && !place)) return misheard(work);
  const next = withState(dropOffers(work), { misses: work.state.misses + 1 });
  // "The left basket", after all that is in the freezer was told.
  const told = work.state.told?.act;
  if (!item && place?.id && told?.intent === 'find' && told.slots.place && work.qualifiers.has('few-words')) {
    const candidates = [{ id: place.id, fit: 1 }];
    const there = { words: place.words, candidates, pointer: null, spot: null };
    return runAct(withState(work, { misses: 0 }), { intent: 'find', slots: { place: there } });
  }
  if (!item) {
    if (!place?.id) return saying(next, say('caught-place', { place: place!.words }));
    return pushFrame(withState(next, { misses: 0 }), offerToTell(work, place.id, place.words));
  }
  // What was made out is what "it" means next.
  const it = record && !record.gone ? withMemory(next, about(turnOf(next), [record])) : next;
  return saying(it, say('caught-item', { name: record?.name ?? item.words }));
};

/** "Anything spicy": what the dots mean in this household, or a diet its food is marked with. */
const marked = (work: Work): Work | null => {
  if (!work.qualifiers.has('set-asked')) return null;
  const [diet] = work.beside?.meanings ?? [];
  return diet ? runAct(withState(work, { misses: 0 }), { intent: 'find', slots: { diet } }) : null;
};

const nothingHeard = (work: Work, touched: boolean): Work => {
  if (touched) return runAct(work, { intent: 'whats-this', slots: {} });
  const misses = work.state.misses + 1;
  const next = withState(work, { misses });
  if (topFrame(work)) return askAgain(next);
  return saying(next, say('nothing-heard', { times: Math.min(misses, 3) }));
};

const beyond = (work: Work): Work => {
  const misses = work.state.misses + 1;
  const { session } = work.state;
  // What is no answer to a check changes nothing, and she may well have had enough of it.
  if (session?.kind === 'count' && !session.paused && !topFrame(work))
    return saying(withState(work, { misses }), say('count-no-answer'));
  return saying(withState(dropOffers(work), { misses }), say('out-of-scope', { times: Math.min(misses, 3) }));
};

/** "The small one" may have been read in several ways: the one that settles the open question is meant. */
const chosen = (work: Work, understanding: Understood): Work | null => {
  const frame = topFrame(work);
  if (!frame?.choices) return null;
  for (const { acts } of closeReadings(understanding)) {
    const [act, ...rest] = acts;
    if (!act || rest.length > 0 || (act.intent !== 'choose' && act.intent !== 'answer')) continue;
    const answered = answerFrame(work, act);
    const still = answered ? topFrame(answered) : frame;
    if (answered && !(still && still.act === frame.act && still.asked > frame.asked)) return answered;
  }
  return null;
};

/** One of the things offered was named, in words that were half heard as another request: the question comes first. */
const answeredByWords = (work: Work, acts: readonly Act[]): Work | null => {
  const frame = topFrame(work);
  const others = acts.every(
    ({ intent }) => intent !== 'tell' && isChanging(intent) && intent !== frame?.act.intent,
  );
  return frame?.kind === 'slot' && others ? pickByWords(work) : null;
};

/** What is likelier meant just now than its bare likelihood says. */
const wantedNow = (work: Work) => {
  const { session, frames, done } = work.state;
  const frame = frames.at(-1);
  const listTalk = goesOnWithList(work);
  const likely = (intent: Intent): boolean => {
    if (session && intent === 'end-session') return true;
    if (listTalk && (intent === 'follow-up' || intent.startsWith('buy-'))) return true;
    if (session?.kind === 'count' && !session.paused && intent === 'answer') return true;
    return (!frame || frame.kind === 'offer') && done !== null && intent === 'correct';
  };
  return (reading: Reading): boolean =>
    reading.acts.some(({ intent }) => likely(intent)) || reading.tellsLength === true;
};

/** "No, the twenty-first", right after a date was told: a day rather than the twenty-first thing. */
const anotherDay = ({ state: { done, turns } }: Work) => {
  const { dates, when } = done?.act.slots ?? {};
  const dated = done?.turn === turns - 1 && (dates ?? when) !== undefined;
  return ({ acts }: Reading): boolean =>
    dated && acts.length === 1 && acts[0]!.intent === 'correct' && acts[0]!.slots.when !== undefined;
};

/** "Put it back", of what was thrown out a moment ago: however it was read, it comes back. */
const bringsBack = (work: Work, acts: readonly Act[]): boolean =>
  acts.length === 1 &&
  acts.every(({ intent }) => intent === 'put-back' || intent === 'undo') &&
  itJustGone(turnOf(work), acts[0]?.slots.item) !== null;

/** What may still be made of words that were not understood, in this order. */
const byOtherMeans = {
  'turn/frames.ts pickByWords': (work: Work) => pickByWords(work),
  'decide.ts plainAnswer': (work: Work) => plainAnswer(work),
  'decide.ts amongTold': (work: Work) => amongTold(work),
  'decide.ts marked': (work: Work) => marked(work),
} as const;

const made = (work: Work, means: Readonly<Record<string, (work: Work) => Work | null>>): Work | null => {
  for (const [by, resolve] of Object.entries(means)) {
    const found = via(work, by, resolve);
    if (found) return found;
  }
  return null;
};

const heardWork = (at: Work, heard: Heard): Work => {
  const { understanding } = heard;
  if (understanding.tooLong) return saying(at, say('too-long'));
  const work = understanding.leaves ? withState(at, { frames: [] }) : at;
  const { procedure } = work.state;
  const steered = procedure && !procedure.paused ? steering(understanding) : undefined;
  const day = anotherDay(work);
  const wanted = understanding.readings.some(day) ? day : wantedNow(work);
  const best = steered ?? bestReading(understanding, wanted);
  const acts = best?.acts ?? [];
  const settled = via(work, 'turn/settle.ts', (at) =>
    settleFirst(at, understanding, best, (next, rest) => heardWork(next, { ...heard, understanding: rest })),
  );
  if (settled) return settled;
  const asked = via(work, 'turn/asked-instead.ts', (at) => askInstead(at, understanding, best));
  if (asked) return asked;
  switch (understanding.verdict) {
    case 'nothing-heard':
      return nothingHeard(work, heard.touched !== null);
    case 'out-of-scope':
      return made(work, byOtherMeans) ?? via(work, 'decide.ts beyond', beyond);
    case 'ask-again':
      return (
        made(work, byOtherMeans) ??
        via(work, 'decide.ts bareName', (at) => bareName(at, understanding)) ??
        via(work, 'decide.ts caught', (at) => caught(at, understanding))
      );
    case 'confirm':
    case 'act': {
      if (acts.length === 0) return misheard(work);
      const sure =
        understanding.verdict === 'act' ||
        onlyOneMeaning(understanding) ||
        (best && harmless(best)) ||
        bringsBack(work, acts);
      const clear = { ...withState(work, { misses: 0 }), runnerUp: runnerUpOf(understanding, acts) };
      // What was said first is asked first.
      const inTurn = sure || !acts.every(({ intent }) => isChanging(intent)) ? acts : acts.toReversed();
      const one =
        via(clear, 'decide.ts chosen', (at) => chosen(at, understanding)) ??
        (sure ? null : via(clear, 'turn/frames.ts pickByWords', (at) => answeredByWords(at, acts)));
      return one ?? inTurn.reduce(sure ? perform : confirmed, clear);
    }
  }
};

/** In the set-up any words may be an answer, also those no grammar knows. */
const plainAnswer = (work: Work): Work | null => {
  const { session } = work.state;
  if (session?.kind !== 'setup' || session.paused || topFrame(work) || !work.beside) return null;
  const act: Act = { intent: 'answer', slots: {} };
  const reply = sessionAnswer(act, turnOf(work));
  return reply ? absorb(work, act, unsettled, reply) : null;
};

/** Turns an open question waits while the talk is about other things; who moves on does not want a yes or no. */
const turnsItWaits = { slot: 3, sure: 2 } as const;

/** Put again once; after that it waits without a word, and then it is let go. */
const waiting = (work: Work, frame: Frame, framesBefore: readonly Frame[]): Closing => {
  if (isSettled(work, frame)) return { work: withState(work, { frames: [] }), question: undefined };
  const waited = frame.offeredAgain ?? 0;
  if (waited + 1 >= turnsItWaits[frame.kind === 'sure' ? 'sure' : 'slot'])
    return { work: withState(work, { frames: [] }), question: undefined };
  const again = { ...frame, offeredAgain: waited + 1 };
  // One of two questions was settled: now the other, whole.
  const beneath = framesBefore.at(-1)?.act !== frame.act;
  const question = beneath ? frame.question : say('back-to', { question: frame.brief ?? frame.question });
  return {
    work: withState(work, { frames: [...work.state.frames.slice(0, -1), again] }),
    question: waited === 0 ? question : undefined,
  };
};

interface Closing {
  readonly work: Work;
  readonly question: Say | undefined;
}

/** The question at the end: the one just asked, else the one still open, else the session's next. */
const closing = (work: Work, framesBefore: readonly Frame[]): Closing => {
  if (work.quiet) return { work, question: undefined };
  const frame = topFrame(work);
  if (frame) {
    const movedOn = !isChanging(frame.act.intent) && !work.keepTold;
    // Talk about what was just told leaves a question in passing open, and does not put it again.
    if (!work.asking && frame.passing && work.keepTold) return { work, question: undefined };
    if (!work.asking && (movedOn || frame.passing))
      return closing(withState(work, { frames: [] }), framesBefore);
    if (!work.asking && frame.kind !== 'offer') return waiting(work, frame, framesBefore);
    return { work, question: work.asking ? questionOf(frame) : undefined };
  }
  return { work, question: sessionPrompt(turnOf(work)) ?? undefined };
};

const expectationOf = (work: Work): Expectation => {
  const frame = topFrame(work);
  if (frame) return frame.expecting;
  const { session, procedure, practice } = work.state;
  // Nothing is there yet: what keeps food is told before anything else, asked or not.
  if (!session && !practice && !procedure && work.kitchen.places.size === 0) return 'wholes';
  if (session?.kind === 'count' && !session.paused) return 'count-answer';
  if (session?.kind === 'shop' && (session.queue ?? session.survey)) return 'detail';
  if (session?.kind === 'setup' && !session.paused) return setupExpects(session);
  // A thing put away between two steps may still be told a place or a date.
  if (work.act?.intent === 'put-away' && awaitsDetail(work)) return 'detail';
  if (procedure && !procedure.paused) return 'step';
  if (cutTalkedOf(work)) return 'outage';
  if (setJustNow(work)) return work.state.done?.act.intent === 'set-timer' ? 'length' : 'day-or-hour';
  return awaitsDetail(work) ? 'detail' : 'anything';
};

/** "Read the second again", after one of the summary was frozen. */
const linesBefore = ({ state, before }: Work): readonly (readonly Say[])[] => {
  const { told, memory } = stateOf(before);
  if (!told || JSON.stringify(memory.offered) !== JSON.stringify(state.memory.offered)) return [];
  const lines = summaryLines([...told.answer.parts, ...told.rest]);
  return lines.length > 0 ? lines : (told.lines ?? []);
};

const toldOf = (work: Work, question: Say | undefined): Told | null => {
  const { told } = work.state;
  if (work.keepTold && told) {
    const doneNow = work.state.done?.turn === work.state.turns;
    return {
      ...told,
      rest: work.rest ?? told.rest,
      cut: work.cut ?? told.cut,
      aside: work.aside,
      ...(doneNow ? { turn: work.state.turns } : {}),
    };
  }
  return {
    // What was not understood does not put what was asked before out of reach.
    act: work.act ?? (work.state.misses > 0 ? (told?.act ?? null) : null),
    turn: work.state.turns,
    answer: answerOf(work, question),
    rest: work.rest ?? work.more,
    details: work.details,
    sources: work.sources,
    names: work.names,
    count: work.count,
    quote: work.beside?.quote ?? null,
    cut: work.cut ?? [],
    lines: linesBefore(work),
    earlier: brokenOff(stateOf(work.before), work.cutAt, work.before.lastSentences),
  };
};

/** In the set-up, what was recorded moves the talk on. */
const onwards = (work: Work): Work => {
  const { session } = work.state;
  const before = stateOf(work.before).session;
  const same = session?.kind === 'setup' && before?.kind === 'setup' && session.step === before.step;
  if (!same || session.paused || work.changes.length === 0) return work;
  const next = setupAfterChange(session);
  const moved = withState(work, { session: next });
  return next ? moved : saying(moved, say(session.alone ? 'setup-part-over' : 'setup-over'));
};

/** When the set-up was moved in, or that it is over: another device may go on with it. */
const setupStamped = ({ state, before, around }: Work): Partial<State> => {
  const { now } = around.clock;
  const was = stateOf(before).session;
  const { session } = state;
  if (session?.kind === 'setup' && session !== was) return { session: { ...session, touchedAt: now } };
  return session === null && was?.kind === 'setup' ? { over: { key: setupKey, at: now } } : {};
};

/** What was noted this turn and makes food past guidance is said so. */
const judged = (work: Work): Work => {
  const past = pastByTelling(work.act?.intent, work.kitchen, work.changes, work.around.clock);
  const before = new Set(stateOf(work.before).frames);
  const raised = work.state.frames.filter((frame) => !before.has(frame));
  const waiting = dueWhileAsked(raised, work.kitchen, work.around.clock);
  // Whoever noted it may have judged it already.
  const said = work.parts.some(({ phrase }) => phrase.startsWith('verdict-'));
  const parts = [...past.parts, ...waiting.parts];
  return parts.length === 0 || said
    ? work
    : {
        ...work,
        parts: [...work.parts, ...parts],
        details: [...past.details, ...work.details],
        sources: [...past.sources, ...waiting.sources, ...work.sources],
      };
};

const finish = (work: Work, framesBefore: readonly Frame[]): Outcome => {
  const { work: closed, question } = closing(judged(onwards(work)), framesBefore);
  const answer = answerOf(closed, question);
  const silent = answer.parts.length === 0 && !question && !closed.quiet;
  const spoken = silent ? { ...answer, parts: [assent('nothing-to-say')] } : answer;
  const state = {
    ...closed.state,
    ...setupStamped(closed),
    told: toldOf(closed, question),
    turns: closed.state.turns + 1,
  };
  const conversation: Conversation = {
    ...closed.before,
    listener: closed.listener,
    expecting: expectationOf(closed),
    lastAt: closed.around.clock.now,
    state,
  };
  const { changes, effects, by, lookUp } = closed;
  return { conversation, changes, effects, answer: spoken, by, ...(lookUp ? { lookUp } : {}) };
};

const leftIn = ({ settles, left }: Understood): Quote | null =>
  settles ? leftIn(settles.rest) : (left ?? null);

/** What was told besides, and stands nowhere in what was done or answered, is said not to have been got. */
const withLeft = (work: Work, { understanding }: Heard): Work => {
  const said = leftIn(understanding);
  const missed = work.state.misses > stateOf(work.before).misses;
  return said === null || missed || work.quiet ? work : saying(work, say('rest-not-heard', { said }));
};

export const decide: Decide = (conversation: Conversation, heard: Heard, around: Surroundings): Outcome => {
  const begun = withTold(aged(startWork(conversation, heard, around)), heard.told ?? []);
  const started = withState(begun, recallSummary(begun.state, conversation.lastAt, around));
  const touched = heard.touched === null ? started : touchMarker(started, heard.touched);
  return finish(
    withLesson(withLater(withMessages(withNews(withLeft(heardWork(touched, heard), heard)))), heard),
    started.state.frames,
  );
};
