/**
 * Whether a sentence is a question of guidance: one sum over what speaks for it and against it. Where it comes out
 * above nothing, the question stands in place of the other reading. The weights are few and stand here alone;
 * they were set against the questions of `tests/accuracy/guidance` and the talks, not sentence by sentence.
 */
import type { Asking, Evidence, Fact, Of, Rival } from './evidence.js';

const asking: Readonly<Record<Asking, number>> = { outright: 2, within: 2, 'by-words': 2, not: 0 };

/** The record answers for what is on it; for any other food guidance alone does. */
const of: Readonly<Record<Of, number>> = { hers: 1, food: 2, pointed: -1, nothing: 0 };

/** A fact that the other reading has no place for. */
const facts: Readonly<Record<Fact, number>> = {
  supposed: 6,
  infant: 4,
  probe: 3,
  'slow-cooker': 4,
  code: 4,
  age: 2.5,
  air: 2,
  ice: 2,
  thawed: 2,
  reheated: 2,
  risk: 2,
  printed: 1.5,
  where: 1.5,
  'which-place': 6,
  opened: 1,
  'other-date': 1,
  weight: 1.5,
  boiling: 1,
  state: 1,
  end: 0.5,
};
/** Told of any food that is put away: where nothing is asked, these ask nothing. */
const ofAnyFood: ReadonlySet<Fact> = new Set<Fact>(['printed', 'where', 'state']);

/** What the other reading is worth. */
const rivals: Readonly<Record<Rival, number>> = {
  guess: 1,
  'keeps-of-none': 1,
  'change-of-none': 1,
  'told-before': 1.5,
  none: 2,
  'part-told': 3,
  keeps: 3,
  change: 3,
  same: 4,
  'whole-question': 3.5,
  question: 4,
  talk: 4,
  elsewhere: 6,
  told: 6.5,
  power: 8,
};
/** Readings that ask for guidance themselves: by them, too, something is asked. */
const asksToo: ReadonlySet<Rival> = new Set<Rival>(['keeps-of-none', 'keeps', 'same']);

const inCut = 10;
const soFar = -3;
const ageing = 0.5;
const keptThere = 2;
const unsure = 1;
const only = 4;
const foreign = -8;
const standsForPower = -12;
const orders = -4;

/** So many words of content are passed over in any question; each more says that it was about something else. */
const fewLeft = 2;
const eachLeft = 0.4;

/** Above nothing: it is a question of guidance. */
export const weighed = (evidence: Evidence, left: number): number => {
  const how = evidence.asking === 'not' && asksToo.has(evidence.rival) ? 'by-words' : evidence.asking;
  const told = evidence.beyond.filter((fact) => how !== 'not' || !ofAnyFood.has(fact));
  return (
    asking[how] +
    of[evidence.of] +
    told.reduce((sum, fact) => sum + facts[fact], 0) +
    (evidence.ageing && how !== 'not' ? ageing : 0) +
    (evidence.keptThere ? keptThere : 0) +
    (evidence.inCut ? inCut : 0) +
    (evidence.soFar ? soFar : 0) +
    (evidence.unsure ? unsure : 0) +
    (evidence.only ? only : 0) +
    (evidence.foreign ? foreign : 0) +
    (evidence.standsForPower ? standsForPower : 0) +
    (evidence.orders ? orders : 0) -
    rivals[evidence.rival] -
    Math.max(0, left - fewLeft) * eachLeft
  );
};
