/**
 * Picking steps up again: hours later, or where another device of the household began them. Nothing is
 * stored for it: each conversation keeps its own procedure, and one that asks to go on looks into the
 * others. The copy moved in last counts, unless it was ended anywhere since.
 */
import type { Reading } from '../../understanding/intents.js';
import { type Reply, type Turn, ago, say } from '../handler.js';
import { findItems } from '../refer/items.js';
import { type Procedure, procedureKey, stateOf } from '../state.js';
import { currentStep } from './step-words.js';

/** Steps left longer than this are not gone on with: the food has stood. Our own choice. */
const HOURS_KEPT = 12;

/** A set-up is kept longer: nothing of it spoils. Our own choice. */
const DAYS_SETUP_KEPT = 30;

/**
 * How many hours back what was heard may go on with something begun in another conversation;
 * null when it does not.
 */
export const picksUp = (readings: readonly Reading[]): number | null => {
  const intents = new Set(readings.flatMap(({ acts }) => acts.map(({ intent }) => intent)));
  if (intents.has('start-setup')) return DAYS_SETUP_KEPT * 24;
  // Steps older than they keep are left out by their own hour; a set-up may be gone on with days later.
  return intents.has('continue') ? DAYS_SETUP_KEPT * 24 : null;
};

const millis = (at: string | undefined): number => (at === undefined ? 0 : Date.parse(at));

/** Everything begun and not ended, each once as it stands now, last moved in first. */
const openProcedures = (turn: Turn): readonly Procedure[] => {
  const states = [turn.state, ...turn.elsewhere.map(stateOf)];
  const overs = states.flatMap(({ over }) => over ?? []);
  const since = Date.parse(turn.clock.now) - HOURS_KEPT * 3_600_000;
  const open = states
    .flatMap(({ procedure, practice }) =>
      procedure && (!practice || turn.state.practice) ? [procedure] : [],
    )
    .filter((one) => millis(one.touchedAt) >= since)
    .filter(
      (one) => !overs.some(({ key, at }) => key === procedureKey(one) && millis(at) >= millis(one.touchedAt)),
    )
    .sort((a, b) => millis(b.touchedAt) - millis(a.touchedAt));
  return [...new Map(open.toReversed().map((one) => [procedureKey(one), one])).values()].toReversed();
};

/** Another person's steps are only gone on with when they are named. */
const mayBeMeant = (turn: Turn, { by }: Procedure): boolean =>
  by === undefined || by === null || turn.speaker.personId === null || by === turn.speaker.personId;

const goingOn = (turn: Turn, procedure: Procedure): Reply => {
  const { procedure: own } = turn.state;
  const going = { ...procedure, at: Math.max(0, procedure.at), paused: false, held: false, unread: false };
  const here = own !== null && procedureKey(own) === procedureKey(procedure) && own.at === procedure.at;
  const minutes = (Date.parse(turn.clock.now) - millis(procedure.touchedAt)) / 60_000;
  const item = procedure.steps[going.at]?.items ?? (procedure.itemId ? [procedure.itemId] : []);
  // Where one stands is said when it was elsewhere, or long enough ago to be forgotten.
  const where =
    here && minutes < 10
      ? []
      : [
          say('picked-up', {
            title: procedure.title,
            step: { kind: 'ordinal', n: going.at + 1 },
            when: ago(procedure.touchedAt ?? turn.clock.now),
          }),
        ];
  return { parts: [...where, ...currentStep(going)], procedure: going, memory: { items: item } };
};

/** "Carry on with the stew": the steps of that dish, wherever they were begun. */
export const goOnWith = (turn: Turn, item: Parameters<typeof findItems>[1]): Reply => {
  const ids = new Set([
    ...findItems(turn, item).items.map(({ id }) => id),
    ...(item?.candidates.map(({ id }) => id) ?? []),
  ]);
  const found = openProcedures(turn).find(({ itemId }) => itemId !== null && ids.has(itemId));
  return found
    ? goingOn(turn, found)
    : { parts: [say('no-steps-for', { name: item?.words ?? '' })], keepTold: true };
};

/** "Pick up where I was": this conversation's steps as they stand, else those begun elsewhere. Null: none. */
export const goOnAnywhere = (turn: Turn): Reply | null => {
  const open = openProcedures(turn);
  const { procedure: own } = turn.state;
  const same = own && open.find((one) => procedureKey(one) === procedureKey(own));
  const meant = same ?? open.find((one) => mayBeMeant(turn, one));
  return meant ? goingOn(turn, meant) : null;
};
