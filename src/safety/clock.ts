/**
 * An item's clock as a state machine. Freezing pauses it and thawing lets it run on:
 * "freezing stops the clock" does not set it back. What happened is told as events; each
 * moves the state one step.
 */
import type { Item } from '../kitchen/model.js';
import type { Instant, PlainDate } from '../terms/dates.js';
import type { ClockEvent, ClockState, Where } from './api.js';
import { dayNumber } from './days.js';

const NOT_STARTED: ClockState = {
  phase: 'unknown',
  startedOn: null,
  since: null,
  usedBefore: null,
  openedOn: null,
  frozenOn: null,
  thawedOn: null,
  freezings: [],
  outSince: null,
  timesReheated: 0,
};

const between = (from: PlainDate, to: PlainDate): number => dayNumber(to) - dayNumber(from);

/** The state after one more event. Events come in the order they happened. */
export const advance = (state: ClockState, event: ClockEvent): ClockState => {
  const { kind, day } = event;
  switch (kind) {
    case 'made':
    case 'bought':
      // The earliest date counts: food made by someone else on Friday and brought on Sunday is Friday's.
      if (state.startedOn !== null) return state;
      return { ...state, phase: 'fridge', startedOn: day, since: day, usedBefore: 0 };
    case 'opened':
      return state.startedOn === null
        ? { ...state, phase: 'opened', startedOn: day, since: day, usedBefore: 0, openedOn: day }
        : {
            ...state,
            // Opened after it thawed, it has thawed all the same.
            phase: state.phase === 'frozen' || state.phase === 'thawed' ? state.phase : 'opened',
            since: state.phase === 'frozen' ? state.since : day,
            usedBefore:
              state.phase === 'frozen' || state.since === null || state.usedBefore === null
                ? state.usedBefore
                : state.usedBefore + between(state.since, day),
            openedOn: day,
          };
    case 'frozen':
      return {
        ...state,
        phase: 'frozen',
        since: day,
        usedBefore:
          state.since === null || state.usedBefore === null
            ? null
            : state.usedBefore + between(state.since, day),
        frozenOn: day,
      };
    case 'thawed':
      return { ...state, phase: 'thawed', since: day, thawedOn: day };
  }
};

const ORDER: readonly ClockEvent['kind'][] = ['made', 'bought', 'opened', 'frozen', 'thawed'];

/** What happened, from the record's dates, in order; on one day in the order of a food's life. */
export const eventsOf = (dates: Item['dates']): readonly ClockEvent[] => {
  const events: ClockEvent[] = [];
  for (const kind of ORDER) {
    const day = dates[kind];
    if (day !== undefined) events.push({ kind, day });
  }
  return events.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
};

/**
 * The clock of something with these dates, kept where it is now. The place can know better than the
 * dates: what stands in the freezer is frozen, dated or not.
 */
export const clockOf = (
  dates: Item['dates'],
  where: Where | null,
  more: { readonly outSince: Instant | null; readonly timesReheated: number } & Pick<
    Item,
    'frozenBefore' | 'thawedBefore'
  >,
): ClockState => {
  let state = NOT_STARTED;
  for (const event of eventsOf(dates)) state = advance(state, event);
  let { phase } = state;
  if (more.outSince !== null) phase = 'out';
  else if (where === 'freezer') phase = 'frozen';
  else if (where === 'pantry' || where === 'counter') phase = 'room';
  // Frozen, and now in the fridge without a word of when it was taken out.
  else if (where === 'fridge' && phase === 'frozen') phase = 'thawed';
  else if (phase === 'unknown') phase = 'fridge';
  return {
    ...state,
    phase,
    since: phase === 'thawed' && state.phase === 'frozen' ? null : state.since,
    freezings: freezingsOf(dates, more),
    outSince: more.outSince,
    timesReheated: more.timesReheated,
  };
};

/** Earlier freezings that are over; null where one is known of and when it thawed is not. */
const freezingsOf = (
  { frozen, thawed }: Item['dates'],
  { frozenBefore = [], thawedBefore = [] }: Pick<Item, 'frozenBefore' | 'thawedBefore'>,
): ClockState['freezings'] => {
  const thaws = [...thawedBefore, ...(thawed === undefined ? [] : [thawed])];
  // Thawed before it was frozen, and nobody wrote down when it was frozen the first time.
  const over = thaws.length - (frozen !== undefined && thawed !== undefined && frozen <= thawed ? 1 : 0);
  if (frozen !== undefined && over > frozenBefore.length) return null;
  const spans = frozenBefore.map((from, at) => ({ from, to: thaws[at] }));
  return spans.every((span): span is { from: PlainDate; to: PlainDate } => span.to !== undefined)
    ? spans
    : null;
};

/** Days it lay frozen in earlier freezings, from that day number on; null where that is not known. */
export const frozenEarlier = ({ freezings }: ClockState, start: number): number | null =>
  freezings?.reduce(
    (sum, { from, to }) => sum + Math.max(0, dayNumber(to) - Math.max(dayNumber(from), start)),
    0,
  ) ?? null;

/**
 * The day number a limit counts from, moved on by the days spent frozen after it; `null` when the
 * anchor is not known, or when how long it was frozen is not.
 */
export const countsFrom = (state: ClockState, anchor: PlainDate | null): number | null => {
  if (anchor === null) return null;
  const start = dayNumber(anchor);
  if (state.thawedOn === null) return start;
  if (state.frozenOn === null) return null;
  const [frozen, thawed] = [dayNumber(state.frozenOn), dayNumber(state.thawedOn)];
  // Frozen again after thawing: how long the first time lasted is no longer on record.
  if (frozen > thawed) return null;
  const earlier = frozenEarlier(state, start);
  return earlier === null ? null : start + earlier + Math.max(0, thawed - Math.max(frozen, start));
};

/** Days used in the fridge by day number `today`; null when not known. */
export const daysUsed = (state: ClockState, today: number): number | null => {
  if (state.startedOn === null) return null;
  if (state.phase === 'frozen') {
    if (state.frozenOn === null) return null;
    return state.usedBefore;
  }
  const from = countsFrom(state, state.startedOn);
  return from === null ? null : today - from;
};
