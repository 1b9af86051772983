/** The open question: answered, asked again in other words, or let go. */
import type { Say } from '../../speech/answer.js';
import { type Act, ASKING_INTENTS, DESTRUCTIVE_INTENTS, type Intent } from '../../understanding/intents.js';
import { foodKey } from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import { placeAt } from '../describe/place.js';
import { dateKindSaid } from '../put-away/date-kind.js';
import { assent, say } from '../handler.js';
import { choose, namedOf } from '../refer/choose.js';
import { askWhich } from '../refer/need.js';
import { allAlike, choicesOf, oldestFirst } from '../refer/tell-apart.js';
import { stateOf, type Frame } from '../state.js';
import { correctedSlots } from './correct.js';
import { filled, mayAnswer } from './fill.js';
import { afterDenial } from './runner-up.js';
import { sureFrame } from './ask-sure.js';
import {
  type Work,
  changesSoFar,
  pushFrame,
  runAct,
  saying,
  tryAct,
  turnOf,
  withMemory,
  withState,
} from './work.js';

export const topFrame = (work: Work): Frame | undefined => work.state.frames.at(-1);

const popped = (work: Work): Work => withState(work, { frames: work.state.frames.slice(0, -1) });

/** How the question is put this time: its own words, other words, then a way out. */
export const questionOf = (frame: Frame): Say => {
  if (frame.asked <= 1) return frame.question;
  if (frame.asked === 2) return frame.again ?? say('ask-once-more', { question: frame.question });
  return say('ask-way-out', { question: frame.again ?? frame.question });
};

const mostAsked = 3;

/** Asks again; after three times lets go of it. */
export const askAgain = (work: Work): Work => {
  const frame = topFrame(work);
  if (!frame) return work;
  if (frame.asked >= mostAsked) return saying(popped(work), say('let-go'));
  const again = { ...frame, asked: frame.asked + 1 };
  return { ...withState(work, { frames: [...work.state.frames.slice(0, -1), again] }), asking: true };
};

const settle = (work: Work, frame: Frame, ids: readonly string[]): Work =>
  runAct(popped(work), frame.act, { picked: { ...frame.picked, [frame.slot]: ids }, sure: false });

const refused = (work: Work, frame: Frame): Work => {
  const without = popped(work);
  if (frame.otherwise) return runAct(without, frame.otherwise);
  const denied = afterDenial(without, frame);
  if (denied) return denied;
  return saying(without, assent(frame.kind === 'offer' ? 'offer-declined' : 'left-as-it-is'));
};

const agreed = (work: Work, frame: Frame): Work => {
  if (frame.kind === 'sure') return runAct(popped(work), frame.act, { picked: frame.picked, sure: true });
  if (frame.kind === 'offer') return runAct(popped(work), frame.act, { picked: {}, sure: true });
  return frame.guess ? settle(work, frame, frame.guess) : askAgain(work);
};

/** "No" to a guess asks what it is then; to a plain question it drops the matter. */
const denied = (work: Work, frame: Frame): Work => {
  if (frame.no) return settle(work, frame, frame.no);
  if (frame.kind !== 'slot' || !frame.guess) return refused(work, frame);
  const { guess: _guess, ...rest } = frame;
  return askAgain(withState(work, { frames: [...work.state.frames.slice(0, -1), { ...rest, asked: 1 }] }));
};

/** No hand could tell them apart, or they are one batch: the oldest goes first. */
const alike = (work: Work, items: readonly Item[]): boolean => {
  const batch = items[0]?.batchId ?? null;
  return allAlike(work.kitchen, items) || (batch !== null && items.every(({ batchId }) => batchId === batch));
};

const picksFrom = (work: Work, frame: Frame, act: Act): Work | null => {
  const choices = frame.choices;
  if (!choices) return null;
  const result = choose(turnOf(work), act, choices);
  if (result.chosen === 'none') return refused(work, frame);
  if (result.chosen === 'unclear') return null;
  if (result.chosen === 'fewer') {
    const items = result.ids.flatMap((id) => work.kitchen.items.get(id) ?? []);
    if (items.length > 0 && alike(work, items)) {
      const [oldest] = oldestFirst(items);
      const settled = saying(work, say('took-oldest', { at: placeAt(work.kitchen, oldest!.placeId) }));
      return settle(settled, frame, [oldest!.id]);
    }
    const ask = askWhich(
      frame.slot,
      items.map(({ name }) => name),
      choicesOf(work.kitchen, items),
    );
    const fewer = { ...frame, ...ask, asked: 1 };
    const left = withState(work, { frames: [...work.state.frames.slice(0, -1), fewer] });
    return { ...withMemory(left, { offered: result.ids }), asking: true };
  }
  // "Two of the ones in the left bin": how many, where the deed had no amount.
  const { amount } = act.slots;
  const counted =
    amount && amount.value > 1 && !frame.act.slots.amount ? { ...frame.act.slots, amount } : frame.act.slots;
  return settle(work, { ...frame, act: { ...frame.act, slots: counted } }, result.chosen);
};

/** "Use by", to which of its dates a day is. */
const picksKind = (work: Work, frame: Frame): Work | null => {
  const kind = frame.slot === 'dateKind' ? dateKindSaid(work) : null;
  return kind ? settle(work, frame, [kind]) : null;
};

/** What was heard, though no reading fits, names one of the things offered. */
export const pickByWords = (work: Work): Work | null => {
  const frame = topFrame(work);
  const kind = frame ? (picksKind(work, frame) ?? takesEither(work, frame)) : null;
  if (kind) return kind;
  const ids = frame?.choices ? namedOf(work.beside, frame.choices) : null;
  return frame && ids ? settle(work, frame, ids) : null;
};

/** "Shall we begin?" — "go on then", with nothing else that could go on. */
const isGoOn = ({ state: { told, procedure, session } }: Work, { intent, slots }: Act): boolean =>
  intent === 'continue' &&
  Object.keys(slots).length === 0 &&
  !told?.rest.length &&
  !told?.cut.length &&
  !procedure &&
  !session;

/** "Put it on the list?" — "Add that as well": the offer, said back. */
const takesUp = ({ act: offered }: Frame, { intent, slots: { item, amount } }: Act): boolean =>
  intent === offered.intent && !amount && item !== undefined && item.words === null && item.pointer !== null;

/** The things a question is about: as settled by questions before, else as named. */
const subjectOf = ({ picked, act: { slots } }: Frame): readonly string[] =>
  picked['item'] ?? (slots.item?.candidates[0] ? [slots.item.candidates[0].id] : []);

/** Parts of a deed that say no more than which deed it is. */
const ofTheDeed: ReadonlySet<string> = new Set(['item', 'how']);

/**
 * "Mark the spinach as used up?" — "yeah chuck it": the deed asked about, said back, of the thing asked about.
 * With another thing, an amount or a place it says more than yes.
 */
const saidBack = (frame: Frame, { intent, slots }: Act): Act | null => {
  const { item, how } = slots;
  if (intent !== frame.act.intent || !Object.keys(slots).every((part) => ofTheDeed.has(part))) return null;
  const best = item?.candidates[0];
  const pointed = !item || (item.words === null && item.touch === null && item.at === null && !best);
  if (!pointed && !(best && subjectOf(frame).includes(best.id))) return null;
  if (item?.pointer && !SUBJECT.has(item.pointer)) return null;
  return how ? { intent, slots: { ...frame.act.slots, how } } : frame.act;
};
/** "The other one" and "all of them" are not what was asked about. */
const SUBJECT: ReadonlySet<string> = new Set(['it', 'this', 'that', 'them']);

/** What was asked about is gone already, whichever way it went. */
export const isSettled = (work: Work, frame: Frame): boolean => {
  // What was told and is so by now has nothing left to be done.
  if (frame.kind === 'sure' && frame.act.intent === 'tell')
    return changesSoFar(runAct(work, frame.act)) === changesSoFar(work);
  const subject = subjectOf(frame).flatMap((id) => work.kitchen.items.get(id) ?? []);
  return frame.kind === 'sure' && subject.length > 0 && subject.every(({ gone }) => gone !== null);
};

/**
 * "Either one": of places, the first for something that goes there, and each in turn for what is only asked; of tubs of
 * one food, the oldest. Of different foods it is still to be said which.
 */
const takesEither = (work: Work, frame: Frame): Work | null => {
  const { choices = [], kind } = frame;
  if (kind !== 'slot' || !work.qualifiers.has('either') || choices.length < 2) return null;
  const ids = choices.flatMap((choice) => choice.ids);
  const items = ids.flatMap((id) => work.kitchen.items.get(id) ?? []);
  if (items.length === ids.length) {
    if (new Set(items.map(({ name }) => foodKey(name))).size > 1) return null;
    const [oldest] = oldestFirst(items);
    const said = saying(work, say('took-oldest', { at: placeAt(work.kitchen, oldest!.placeId) }));
    return settle(said, frame, [oldest!.id]);
  }
  if (!ids.every((id) => work.kitchen.places.has(id))) return null;
  const asks = (ASKING_INTENTS as readonly Intent[]).includes(frame.act.intent);
  const meant = asks ? choices : choices.slice(0, 1);
  return meant.reduce(
    (at, choice) =>
      runAct(at, frame.act, { picked: { ...frame.picked, [frame.slot]: choice.ids }, sure: false }),
    popped(work),
  );
};

/** Runs the act as an answer to the open question; null when it is about something else. */
export const answerFrame = (work: Work, act: Act): Work | null => {
  const frame = topFrame(work);
  if (!frame) return null;
  if (frame.passing && (act.intent === 'continue' || act.intent === 'yes' || meansAll(act)))
    return runAct(popped(work), { intent: 'continue', slots: {} });
  if (act.intent === 'yes') return agreed(work, frame);
  // "Hello? I've never used one of these": no answer to what was offered in the same breath.
  const begins = frame.kind === 'offer' && frame.act.intent === 'start-setup';
  if (act.intent === 'no' && begins && !stateOf(work.before).frames.includes(frame)) return null;
  if (act.intent === 'no') return denied(work, frame);
  const either = act.intent === 'maybe' || act.intent === 'choose' ? takesEither(work, frame) : null;
  if (either) return either;
  if (act.intent === 'maybe' && frame.unsure) return settle(work, frame, frame.unsure);
  if (act.intent === 'maybe') return frame.kind === 'offer' ? refused(work, frame) : askAgain(work);
  if (frame.kind === 'offer' && act.intent === 'cancel') return refused(work, frame);
  if (frame.kind === 'offer' && (takesUp(frame, act) || isGoOn(work, act))) return agreed(work, frame);
  const deed = frame.kind === 'sure' ? saidBack(frame, act) : null;
  if (deed) return agreed(work, { ...frame, act: deed });
  if (frame.kind !== 'slot') {
    if (frame.kind === 'sure' && act.intent === 'correct') return corrected(work, frame, act);
    if (frame.kind === 'sure' && (act.intent === 'choose' || act.intent === 'answer'))
      return askAgain(saying(work, say('only-yes-no')));
    return null;
  }
  const kind = bareOrDate(act) ? picksKind(work, frame) : null;
  if (kind) return kind;
  const detailed = withDetail(frame, act);
  if (detailed) return runAct(popped(work), detailed, { picked: frame.picked, sure: false });
  if (!mayAnswer(frame, act)) return null;
  const picked = picksFrom(work, frame, act);
  if (picked) return picked;
  if (frame.choices && act.intent === 'choose' && !act.slots.item?.words)
    return pickByWords(work) ?? askAgain(work);
  const whole = filled(frame, act, {
    free: work.beside?.free ?? null,
    goesOn: work.qualifiers.has('goes-on'),
  });
  if (!whole && act.intent === 'correct' && Object.keys(act.slots).length > 0)
    return corrected(work, frame, act);
  if (!whole) return bareMiss(work, frame, act);
  return runAct(popped(work), whole, { picked: frame.picked, sure: false });
};

const meansAll = ({ intent, slots: { item } }: Act): boolean =>
  intent === 'choose' && (item?.pointer === 'all' || item?.pointer === 'both');

const bareOrDate = ({ intent }: Act): boolean =>
  intent === 'answer' || intent === 'choose' || intent === 'amend' || intent === 'correct';

/** "It's from Amara", while the place is still wanted: a detail of what is being put away. */
const withDetail = (frame: Frame, act: Act): Act | null => {
  const { item, ...rest } = act.slots;
  const it = !item || (item.pointer !== null && item.candidates.length === 0);
  if (frame.act.intent !== 'put-away' || act.intent !== 'amend' || !it) return null;
  return { intent: 'put-away', slots: { ...frame.act.slots, ...rest } };
};

/** "Just the cans", to which part shall be read, is of what was told. */
const bareMiss = (work: Work, frame: Frame, act: Act): Work | null =>
  act.intent === frame.act.intent || act.intent === 'follow-up' ? null : askAgain(work);

/** "Finish the rice?" — "No, the beans." */
const corrected = (work: Work, frame: Frame, act: Act): Work => {
  const { slots, redo } = correctedSlots(work.kitchen, frame.act.slots, act.slots, undefined);
  const picked = Object.fromEntries(
    Object.entries(frame.picked).filter(([slot]) => !(redo as string[]).includes(slot)),
  );
  const put: Act = { intent: frame.act.intent, slots };
  const without = popped(work);
  if (frame.kind === 'sure' && DESTRUCTIVE_INTENTS.has(put.intent)) {
    const reply = tryAct(without, put, { picked, sure: false });
    const asked = sureFrame(work, put, reply);
    // "No, on the counter" makes it no other bread: that was a no.
    if (JSON.stringify(asked.question) === JSON.stringify(frame.question)) return refused(work, frame);
    if (reply.changes?.length) return pushFrame(without, { ...asked, picked });
  }
  return runAct(without, put, { picked, sure: false });
};

/** Offers nobody took up are not made again. */
export const dropOffers = (work: Work): Work =>
  withState(work, { frames: work.state.frames.filter(({ kind }) => kind !== 'offer') });
