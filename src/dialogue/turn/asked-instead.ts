/**
 * A question put together from its parts, where the whole-sentence readings are in doubt, or know nothing
 * of what was told before. It changes nothing, so that being wrong costs a sentence.
 */
import {
  CHANGING_INTENTS,
  type Act,
  type AskProposal,
  type Intent,
  type Reading,
  type Understood,
} from '../../understanding/intents.js';
import { askReply } from '../ask/ask.js';
import { attributeOf } from '../ask/record.js';
import type { Reply } from '../handler.js';
import { type Work, absorb, runAct, tryAct, turnOf, unsettled, withState } from './work.js';
import { dropOffers, topFrame } from './frames.js';
import { cutTalkedOf } from '../outages/the-cut.js';

/** A reading of the whole sentence this likely (natural logarithm) stands. */
const sureReading = -2;

/** Readings of a few words that only the talk before them makes sense of. */
const ofTheTalk: ReadonlySet<Intent> = new Set<Intent>(['follow-up', 'choose', 'answer', 'correct']);
/** Readings that take "which of those" for anything at all. */
const ofEverything: ReadonlySet<Intent> = new Set<Intent>([
  'contains',
  'can-eat',
  'use-first',
  'find',
  'no-date',
]);

/** Readings of what is asked of the food here, which a question put together may answer better. */
const ofFood: ReadonlySet<Intent> = new Set<Intent>([
  ...(['find', 'count', 'whats-this', 'tell-about', 'how-old', 'item-date', 'keeps', 'use-first'] as const),
  ...([
    'no-date',
    'what-changed',
    'markers',
    'who-did',
    'contains',
    'can-eat',
    'how-to-reach',
    'place-state',
    'places',
  ] as const),
  ...(['follow-up', 'choose', 'answer', 'correct', 'leave-note', 'amend'] as const),
]);

const isSure = (best: Reading | undefined): boolean =>
  best?.evidence !== undefined && best.evidence.score >= sureReading;
const saysNothing = ({ parts, ask }: Reply): boolean =>
  ask !== undefined ? ask.slot === 'item' : parts.length > 0 && parts[0]!.tells === 'not-found';

/** So many words more may be left over than were used, in a question about something that is here. */
const fewLeft = 2;

/** Where nothing else makes sense of it: about something of this kitchen, or of what was told. */
const isOurs = ({ hers, ownSubject, left, acts }: AskProposal): boolean =>
  hers ||
  // Who may have what is never passed over for a word or two.
  (ownSubject && (acts[0]!.slots.query?.where.some(({ by }) => by === 'suits') ?? false)) ||
  (acts[0]!.slots.edit !== undefined && left.length <= 1) ||
  (!ownSubject && left.length === 0);

/** What would change something is asked about as it was heard. */
const changing: ReadonlySet<Intent> = new Set(CHANGING_INTENTS);
const changes = ({ intent }: Act): boolean =>
  changing.has(intent) && intent !== 'amend' && intent !== 'leave-note' && intent !== 'put-away';

/** What may be done with a food, and what marks mean, is not asked of what is here. */
const asksOthers = ({ slots }: Act): boolean => others.has(slots.asked ?? '');
const others: ReadonlySet<string> = new Set([
  ...['freeze', 'thaw', 'dots', 'suggest', 'alike', 'cares', 'cares of those'],
]);

/** "Of those jars, which has no marker". */
const narrowsTold = ({ slots: { edit } }: Act): boolean =>
  edit?.point === 'told' && edit.query.where.length > 0;

/** "What have we frozen for longer than six months", "which of those are vegan": which they are, told apart by a fact. */
const asksSet = ({ outright, left, acts, fragment }: AskProposal): boolean => {
  const { query, edit } = acts[0]!.slots;
  const { where, ask } = query ?? edit?.query ?? { where: [], ask: [] };
  // "What is past its date", "is anything past its date".
  const whether = ask.length === 0 && (query ?? edit?.query)?.whether === true;
  const which = whether || (ask.length > 0 && ask.every((one) => one === 'what' || one === 'which'));
  const narrows = where.some(({ by }) => tellApart.has(by));
  const firstOf = edit?.point === 'told' && ask.join() === 'use-first';
  return outright && !fragment && left.length === 0 && ((which && narrows) || firstOf);
};
const tellApart: ReadonlySet<string> = new Set([
  ...['maker', 'diet', 'date', 'dated', 'keeping', 'state', 'felt', 'marked', 'low'],
]);
/** What a word on a label means, which markers are spare: asked of no food that is here. */
const ofNoSet = ({ intent, slots }: Act): boolean =>
  (intent === 'markers' && slots.asked === undefined) ||
  (intent === 'guidance' && slots.guidance?.asked === 'label');

/** Put as nothing but a question, of something that is here, with no word left over. */
const isWhole = ({ outright, hers, ownSubject, left, acts }: AskProposal, follows = false): boolean =>
  outright &&
  left.length === 0 &&
  (follows ||
    narrowsTold(acts[0]!) ||
    hers ||
    bearsMarker(acts[0]!) ||
    (ownSubject && (acts[0]!.slots.query?.ask.length ?? 0) > 0));

/** "The one with the rough tape": named by its marker. */
const bearsMarker = ({ slots: { query } }: Act): boolean =>
  query?.where.some(
    ({ by, ...filter }) => by === 'felt' && 'touch' in filter && filter.touch.fastening !== undefined,
  ) ?? false;

/** What is asked of the household stands beside any reading in doubt, and beside one that says less of the same. */
const ofMatter = ({ acts, left }: AskProposal, best: Reading | undefined, lost: boolean): boolean => {
  const [act, reading] = [acts[0]!, best?.acts[0]];
  if (left.length > 1 || asksOthers(act)) return false;
  // Where nothing else makes sense of it, every word must, or it is of another world.
  if (lost && left.length > 0 && act.slots.item === undefined) return false;
  if (!isSure(best)) return true;
  const says = ({ slots }: Act): number => Object.keys(slots).length;
  return reading?.intent === act.intent && says(act) > says(reading);
};

/** Read as told, as an assent or as something else that is asked, right after an answer that it is about. */
const followsUp = ({ acts, fragment }: AskProposal, { intent }: Act, { state }: Work): boolean => {
  const { edit } = acts[0]!.slots;
  if (!edit || (state.asked?.query.ask.length ?? 0) === 0) return false;
  const { point, query } = edit;
  const picks = point === 'other' || point === 'rest' || (typeof point === 'object' && point !== null);
  if (query.ask.includes('sum')) return intent === 'how-many' || intent === 'tell';
  if (intent === 'tell') return picks || edit.only || !fragment;
  // "Who may not eat from these": of what was just told.
  // "And what is in it that folk might react to": of it, and of nobody.
  if (intent === 'who-allergic')
    return (query.ask.includes('people') || query.ask.includes('contents')) && point !== null;
  if (intent === 'no' || intent === 'yes' || intent === 'continue') return picks;
  return intent === 'guidance' && picks && query.ask.length > 0;
};

/** Talk, and what is asked of the whole household: never of one food, of which something is asked. */
const ofNoFood: ReadonlySet<Intent> = new Set<Intent>([
  ...(['goodbye', 'greeting', 'thanks', 'yes', 'no', 'help', 'summary', 'timers', 'reminders'] as const),
  ...(['household', 'people', 'buy-read'] as const),
]);
/** Read as told or ordered, as talk, or as something that leaves out what was named: what was put as a question. */
const isNone = (act: Act, { acts }: AskProposal): boolean => {
  const { query } = acts[0]!.slots;
  const asks = (query?.ask.length ?? 0) > 0;
  const names = query?.where.some(({ by }) => by === 'named') ?? false;
  const { item, items, statements, words } = act.slots;
  // "Tape", of which guidance is asked, was the marker's.
  if (asks && bearsMarker(acts[0]!) && (item?.touch ?? null) === null && !ofFood.has(act.intent)) return true;
  const drops = names && (item ?? items ?? statements ?? words) === undefined && !ofFood.has(act.intent);
  return changing.has(act.intent) || (asks && (drops || ofNoFood.has(act.intent)));
};

/** What it is about was made out, and not what is asked of it: that, as the reading of the whole has it. */
const completed = (act: Act, best: Reading | undefined): Act => {
  const { query } = act.slots;
  const [reading, ...more] = best?.acts ?? [];
  if (!query || query.ask.length > 0 || !reading || more.length > 0) return act;
  const bare = query.where.every(({ by }) => by === 'named' || by === 'each' || by === 'felt');
  const wants = bare ? attributeOf(reading) : null;
  return wants && wants !== 'what'
    ? { ...act, slots: { ...act.slots, query: { ...query, ask: [wants] } } }
    : act;
};

const ofMarkers: ReadonlySet<Intent> = new Set<Intent>(['markers', 'marker-care']);
/** A request known by a word or two, where the whole asks more of the same, or there is no such clock. */
const besideFrame = (work: Work, question: AskProposal, best: Reading): boolean => {
  if (best.whole) return false;
  const [act, ...more] = best.acts;
  const query = question.acts[0]!.slots.query;
  // Of a dish's own steps, by their words: no other reader knows them.
  if (act?.intent === 'ask-step' || (act?.intent === 'reheat' && act.slots.asked !== undefined)) return false;
  // "Which dots mean very soft", known by its dots alone: what they are to mean says more.
  // "What was it on before", of a marker just told of, is asked of no food.
  if (act && ofMarkers.has(act.intent) && question.acts[0]!.slots.edit) return false;
  if (act && more.length === 0 && !query) return question.outright && ofMatter(question, best, false);
  if (!act || !query || more.length > 0 || !question.outright) return false;
  if (!question.hers && !question.ownSubject) return false;
  // "I left the ham out, where does it go": that it was out is never dropped.
  if (changing.has(act.intent) || act.intent === 'left-out') return false;
  return question.left.length === 0 && query.ask.length > 0 && saysNothing(tryAct(work, act));
};

/** "Jar in my hand, cloth patch on the lid, one dot": something felt, and nothing else said of it. */
const isHeld = ({ acts, left }: AskProposal): boolean => {
  const where = acts[0]!.slots.query?.where ?? [];
  return left.length <= 1 && where.length > 0 && where.every(({ by }) => by === 'felt');
};
/** Told of nothing that was named. */
const namesNothing = ({ slots, intent }: Act): boolean =>
  intent === 'tell' && (slots.statements ?? []).every(({ thing }) => (thing?.words ?? null) === null);

const wanted = (work: Work, { question, verdict }: Understood, best: Reading | undefined): boolean => {
  if (best && question && asksSet(question) && best.acts.every(ofNoSet)) return true;
  if (question?.holdsMore && !best?.acts.some(ofRisk) && !best?.acts.some(asksOthers)) return true;
  if (best?.framed && !(question && besideFrame(work, question, best))) return false;
  if (!question || question.left.length > Math.max(fewLeft, question.used.size / 2)) return false;
  if (best?.acts.some(ofRisk) && asksForStranger(question)) return false;
  if (asksWhoMayHave(question) && best?.acts.every(judgesByDays)) return true;
  // Several requests, surely heard, are no single question.
  if (best && best.acts.length > 1 && isSure(best)) return byDiet(question) && question.left.length === 0;
  const frame = topFrame(work);
  const waiting = frame !== undefined && frame.kind !== 'offer';
  const { session, procedure, turns } = work.state;
  const busy =
    waiting ||
    cutTalkedOf(work) !== null ||
    (session !== null && session.kind !== 'shop') ||
    (procedure !== null && !procedure.paused);
  const lost = verdict === 'out-of-scope' || verdict === 'ask-again' || best === undefined;
  const { ownSubject, fragment } = question;
  // "Is there anything in there I can't have", while it is asked which part to read.
  const narrowsAsked = (question.acts[0]!.slots.query?.where.length ?? 0) > 1 && question.left.length === 0;
  // "Is that from frozen", while its steps are read: of what is spoken of.
  const ofIt =
    question.acts[0]!.slots.edit?.point === 'it' && question.outright && question.left.length === 0;
  const ofTold = asksSet(question) && narrowsTold(question.acts[0]!);
  if (busy && (procedure === null || procedure.paused) && ofTold && !isSure(best)) return true;
  if (busy) return lost && (ownSubject || narrowsAsked || ofIt || ofTold) && !fragment;
  if (
    asksSet(question) &&
    !best?.acts.some(asksOthers) &&
    !isSure(best) &&
    !(best?.acts.some(changes) ?? false)
  )
    return true;
  if (isHeld(question) && best?.acts.every(namesNothing)) return true;
  if (isWhole(question) && !isSure(best) && best?.acts.every((act) => isNone(act, question))) return true;
  if (question.acts[0]!.intent !== 'ask') return ofMatter(question, best, lost);
  if (lost) return isOurs(question);
  const [act, ...more] = best.acts;
  if (act?.intent === 'ask') return true;
  // "Is it okay for me", "could Theo have a bit": of what was just told it is asked for somebody, whatever else it sounds like.
  if (act && asksOfItFor(question) && work.state.memory.items.length > 0 && !changes(act))
    return act.intent === 'can-eat' ? !act.slots.item : !judgesForHer.has(act.intent);
  // "Four are in the top basket": not put as a question, it puts right what was done.
  if (act?.intent === 'correct' && !question.outright && question.acts[0]!.slots.query) return false;
  if (act && more.length > 0 && question.left.length === 0 && byDiet(question)) return true;
  if (!act || more.length > 0 || asksOthers(act)) return false;
  const edit = question.acts[0]!.slots.edit;
  const told = turns - (work.state.asked?.turn ?? -9) === 1 && work.state.done?.turn !== turns - 1;
  const cued = best.evidence === undefined && (act.intent === 'no' || act.intent === 'yes');
  if (edit && told && (ofTheTalk.has(act.intent) || cued)) return true;
  // "Keep to what is in the freezers": part of what was told, and no new question.
  const keeps = edit?.only === true && !ownSubject && question.left.length === 0;
  if (keeps && told && ofEverything.has(act.intent)) return true;
  if (edit && told && question.left.length === 0 && followsUp(question, act, work)) return true;
  // "When did they go in and are they still within guidance": of what was told, and not of the household.
  if (
    edit &&
    told &&
    isWhole(question, true) &&
    edit.query.ask.length > 1 &&
    ofNoFood.has(act.intent) &&
    !isSure(best)
  )
    return true;
  const narrows = edit !== undefined && (edit.query.where.length > 0 || edit.query.order !== null);
  if (
    narrows &&
    (edit.point === 'told' || (edit.point === 'it' && (act.slots.item?.pointer ?? null) === null)) &&
    told &&
    ofEverything.has(act.intent)
  )
    return question.left.length === 0;
  if (fragment) return false;
  // A day that the answer is to be reckoned to is no part of any other reading.
  if (question.acts[0]!.slots.query?.by && act.intent === 'keeps') return question.left.length === 0;
  // "If I put the pie before Sam, will he be all right": what she must not have comes before how long it keeps.
  if (isSure(best) && act.intent === 'guidance')
    return (
      question.left.length <= fewLeft &&
      question.ownSubject &&
      (narrowsSuits(question) || asksOfOne(question, act))
    );
  if (isSure(best))
    return (
      question.left.length === 0 &&
      // "How long have I got on the turkey": of no timer, where none runs by that name.
      (ofFood.has(act.intent) || act.intent === 'timers') &&
      (dropsPlace(question, act) || saysNothing(tryAct(work, act)))
    );
  const { query } = question.acts[0]!.slots;
  const held = query?.where.some((filter) => filter.by === 'felt' && filter.touch.container !== undefined);
  return (
    ofFood.has(act.intent) ||
    ((act.intent === 'who-allergic' || act.intent === 'guidance') && narrowsSuits(question)) ||
    (verdict === 'confirm' && ownSubject && question.left.length === 0 && !changes(act)) ||
    (act.intent === 'markers' && held === true)
  );
};

/** Readings that judge a food by its days, or list who avoids what: no answer to who may have this one. */
const judgesFood: ReadonlySet<Intent> = new Set<Intent>([
  ...(['keeps', 'guidance', 'who-allergic', 'use-first', 'how-old', 'find', 'item-date'] as const),
]);
/** Readings that answer for whom it is themselves. */
const judgesForHer: ReadonlySet<Intent> = new Set<Intent>(['contains', 'guidance', 'danger']);
const asksOfItFor = ({ acts, left }: AskProposal): boolean => {
  const { edit } = acts[0]!.slots;
  const suits = edit?.query.where.every(({ by }) => by === 'suits') ?? false;
  return (
    suits && edit?.point === 'it' && edit.query.whether && edit.query.where.length > 0 && left.length === 0
  );
};
/** What guidance says of a baby or of somebody at risk stands. */
const ofRisk = ({ slots: { guidance } }: Act): boolean =>
  guidance !== undefined && (guidance.infant || guidance.risks.length > 0);
const judgesByDays = (act: Act): boolean => judgesFood.has(act.intent) && !ofRisk(act);
/** "The baby", of whom the household knows nothing: only guidance has an answer. */
const asksForStranger = ({ acts }: AskProposal): boolean =>
  acts[0]!.slots.query?.where.some(
    (filter) =>
      filter.by === 'suits' && filter.who.who === 'named' && filter.who.person.candidates.length === 0,
  ) ?? false;
/** Of some food it is asked who may have it: that is never answered with how long it keeps. */
const asksWhoMayHave = ({ acts, left }: AskProposal): boolean => {
  const query = acts[0]!.slots.query ?? acts[0]!.slots.edit?.query;
  const suits = query?.where.find((filter) => filter.by === 'suits');
  if (!query || suits?.by !== 'suits' || left.length > 1 || query.ask.includes('people')) return false;
  const { who } = suits.who;
  return who === 'everybody' || who === 'unnamed' || (who !== 'me' && query.where.length > 1);
};

/** Who may have which of the food that is told apart by more than that: no question of who avoids what. */
const narrowsSuits = ({ acts }: AskProposal): boolean => {
  const where = acts[0]!.slots.query?.where ?? acts[0]!.slots.edit?.query.where ?? [];
  const asksWho = acts[0]!.slots.query?.ask.includes('people') ?? false;
  return !asksWho && where.length > 1 && where.some(({ by }) => by === 'suits' || by === 'free');
};

/** "The eggs, where are they and how long have they got": several things asked of what is here, and only how long it keeps of all such food. */
const asksOfOne = ({ acts, hers }: AskProposal, { slots }: Act): boolean =>
  hers && (acts[0]!.slots.query?.ask.length ?? 0) > 1 && slots.guidance?.asked === 'keep';

/** "Got a vegan coming, what is there for her": how somebody eats is told of no food. */
const byDiet = ({ acts }: AskProposal): boolean =>
  acts[0]!.slots.query?.where.some(({ by }) => by === 'diet') ?? false;

/** "What in the fridge has milk in it", read as asked of everything: a place that was said is left out. */
const dropsPlace = ({ acts }: AskProposal, { intent, slots }: Act): boolean => {
  const where = acts[0]!.slots.query?.where ?? [];
  const said = where.some(
    (filter) =>
      filter.by === 'listed' || (filter.by === 'place' && (filter.places[0]?.candidates.length ?? 0) > 0),
  );
  const kept = slots.place !== undefined || (slots.item?.at ?? null) !== null;
  return said && !kept && (intent === 'contains' || intent === 'can-eat') && where.length > 1;
};

/** Nothing was found that it could be about: whoever else has a reading has it. */
const foundNothing = ({ parts, ask }: Reply): boolean =>
  (parts.length === 0 && ask !== undefined) || parts.some(({ tells }) => tells === 'not-found');

/** By what a mark means: of none that the household knows, it was no question of ours. */
const byMeaning = ({ slots }: Act): boolean => slots.query?.where.some(({ by }) => by === 'means') ?? false;

/** "Go on, what's the rest", of a list that is not read to its end: what is still to come of that, and nothing asked anew. */
const readsOn = ({ state: { told, turns } }: Work, { acts, left }: AskProposal): boolean => {
  const { edit } = acts[0]!.slots;
  const { where = [], ask = [] } = edit?.query ?? {};
  const unread = told?.turn === turns - 1 && told.rest.length > 0;
  const bare = where.length === 0 && ask.every((one) => one === 'what' || one === 'which');
  return unread && edit?.point === 'rest' && bare && left.length === 0;
};

/** The answer to it, or null where the other readings have it. */
export const askInstead = (work: Work, understanding: Understood, best: Reading | undefined): Work | null => {
  const { question } = understanding;
  if (question && readsOn(work, question) && !best?.acts.some(changes))
    return runAct(work, { intent: 'continue', slots: {} });
  if (!question || !wanted(work, understanding, best)) return null;
  const act = completed(question.acts[0]!, best);
  const base = withState(dropOffers(work), { misses: 0 });
  if (act.intent !== 'ask') return foundNothing(tryAct(base, act)) ? null : runAct(base, act);
  const reply = askReply(act, turnOf(base));
  const narrows = act.slots.edit?.only === true;
  if (
    reply &&
    !narrows &&
    ((best && best.acts[0]?.intent !== 'ask') || question.fragment || byMeaning(act)) &&
    foundNothing(reply)
  )
    return null;
  if (!reply) return null;
  // "And how do I do it from frozen": of the same, after it.
  return question.acts
    .slice(1)
    .reduce((at, more) => runAct(at, more), absorb({ ...base, act }, act, unsettled, reply));
};
