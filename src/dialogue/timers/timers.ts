/** Timers and reminders by voice. */
import {
  cancelReminder as cancelChange,
  changeReminder as changeReminderChange,
  changeTimer as changeTimerChange,
  foodKey,
  holdTimer,
  nameTimer,
  openReminders,
  resumeTimer,
  setReminder as setReminderChange,
  setTimer as setTimerChange,
} from '../../kitchen/index.js';
import type { Item, Reminder } from '../../kitchen/model.js';
import type { Say, Value } from '../../speech/answer.js';
import { dayOf, plusDays, today, wallTime } from '../../terms/dates.js';
import { itMention, type Slots } from '../../understanding/intents.js';
import { inGroups, andMore } from '../describe/lists.js';
import { withChange } from '../describe/refusals.js';
import type { Procedure } from '../state.js';
import {
  type Handler,
  type Reply,
  type Turn,
  clockTime,
  day,
  list,
  say,
  seconds,
  notFound,
} from '../handler.js';
import { personSaid } from '../people/people.js';
import { findItems } from '../refer/items.js';
import { needItem } from '../refer/need.js';
import { heatLonger, startStepTimer } from '../talk/steps.js';
import { bothHalves, fromNow, instantAt, nextOf, wakingHour } from './wall-time.js';

const left = (turn: Turn, { due, heldLeft }: Reminder): Value =>
  seconds(heldLeft ?? Math.max(0, Math.round((Date.parse(due) - Date.parse(turn.clock.now)) / 1000)));

/** "Move it down on Saturday": on Saturday nobody knows what "it" was. */
const withName = (turn: Turn, { item, words = '', aroundThing }: Slots): string => {
  const meant = item?.pointer && aroundThing ? findItems(turn, item).items : [];
  const [name, ...others] = new Set(meant.map((one) => one.name));
  return name !== undefined && aroundThing && others.length === 0
    ? [aroundThing[0], name, aroundThing[1]].filter((part) => part !== '').join(' ')
    : words;
};

const labelOf = (turn: Turn, slots: Slots): string | null => {
  if (slots.words) return withName(turn, slots);
  if (!slots.item) return null;
  const found = findItems(turn, slots.item).items;
  return slots.item.words ?? found[0]?.name ?? null;
};

const named = ({ label }: Reminder): Record<string, Value> => (label ? { label } : {});

/**
 * "It's going round for two minutes, that's the stew": the step at hand, or the one to come, that takes so long. None
 * where that is another dish's name, or where its timer runs.
 */
const stepTimed = (turn: Turn, procedure: Procedure, duration: number, label: string | null) => {
  const { steps, at, unread, itemId } = procedure;
  const dish = foodKey((itemId ? turn.kitchen.items.get(itemId)?.name : undefined) ?? '').split(' ');
  const ofDish =
    label === null ||
    foodKey(label)
      .split(' ')
      .every((word) => dish.includes(word));
  const timed = [at, ...(unread ? [] : [at + 1])].find((step) => steps[step]?.timer?.seconds === duration);
  return ofDish && timed !== undefined
    ? { procedure: { ...procedure, at: timed }, timer: steps[timed]!.timer }
    : null;
};

/** "A timer that goes off at quarter to seven": so long from now. */
const untilThen = (turn: Turn, { duration, time }: Slots): number | undefined =>
  duration ??
  (time
    ? Math.round((Date.parse(nextOf(bothHalves(time, turn), turn.clock)) - Date.parse(turn.clock.now)) / 1000)
    : undefined);

/** "The same again": as long as the one spoken of was set for. */
const asLong = (turn: Turn): number | undefined => {
  const last = turn.memory.reminderId ? turn.kitchen.reminders.get(turn.memory.reminderId) : undefined;
  const due = last?.heldLeft === undefined ? last?.due : undefined;
  return last?.kind === 'timer' && due
    ? Math.round((Date.parse(due) - Date.parse(last.setAt)) / 1000)
    : undefined;
};

export const setTimer: Handler = (act, turn) => {
  const duration = act.slots.asked === 'again' ? asLong(turn) : untilThen(turn, act.slots);
  const label = labelOf(turn, act.slots);
  const { procedure } = turn.state;
  const step = procedure?.unread ? undefined : procedure?.steps[procedure.at];
  // "Start the timer", while a step that takes its time is being done.
  if (duration === undefined && !label && procedure && step?.timer)
    return startStepTimer(turn, procedure, step.timer);
  // "It's in the bowl, set a timer for that": of the heating that comes next.
  const next = procedure && !procedure.unread ? procedure.steps[procedure.at + 1] : undefined;
  if (duration === undefined && !label && procedure && next?.timer)
    return startStepTimer(turn, { ...procedure, at: procedure.at + 1 }, next.timer);
  const own = procedure && duration !== undefined ? stepTimed(turn, procedure, duration, label) : null;
  if (own?.timer) return startStepTimer(turn, own.procedure, own.timer);
  if (duration === undefined) {
    return {
      parts: [],
      ask: {
        slot: 'duration',
        question: say('ask-how-long', label ? { label } : {}),
        again: say('ask-how-long-again'),
        expecting: 'time',
      },
    };
  }
  return withChange(turn, setTimerChange(turn, { seconds: duration, label }), (change) => ({
    parts: [say('timer-set', { time: seconds(duration), ...(label ? { label } : {}) })],
    changes: [change],
    doubt: say('confirm-timer', { time: seconds(duration) }),
    memory: { reminderId: change.ops[0]!.id },
  }));
};

/** The timers a name, a pointer or nothing at all means. */
const timersMeant = (turn: Turn, slots: Slots, kind: Reminder['kind']): readonly Reminder[] => {
  const settled = (turn.picked.timer ?? []).flatMap((id) => turn.kitchen.reminders.get(id) ?? []);
  if (settled.length > 0) return settled;
  const open = openReminders(turn.kitchen, kind);
  const last = open.find(({ id }) => id === turn.memory.reminderId);
  if (slots.item?.pointer === 'all') {
    const kept = foodKey(slots.not?.words ?? '');
    return kept === '' ? open : open.filter((one) => !foodKey(one.label ?? '').includes(kept));
  }
  if (slots.item?.pointer && last && !slots.words) return [last];
  const label = labelOf(turn, slots);
  if (label) {
    const words = foodKey(label);
    const fits = open.filter(
      (one) =>
        one.label !== null && (foodKey(one.label).includes(words) || words.includes(foodKey(one.label))),
    );
    // One that nobody named may be called anything; another's name is not its own.
    if (fits.length > 0 || slots.words || open.some((one) => one.label !== null)) return fits;
  }
  const at = slots.ordinal ?? slots.item?.ordinal;
  if (at) return open.slice(at - 1, at);
  return open;
};

const oneTimer = (
  turn: Turn,
  slots: Slots,
  kind: Reminder['kind'],
  among: readonly Reminder[] = [],
): { got: Reminder } | { reply: Reply } => {
  const meant = among.length > 0 ? among : timersMeant(turn, slots, kind);
  if (meant.length === 1) return { got: meant[0]! };
  if (meant.length === 0) {
    const label = labelOf(turn, slots);
    return {
      reply: {
        parts: [label ? notFound('no-such-timer', { label, kind }) : say('no-timers', { kind })],
        count: 0,
      },
    };
  }
  const choices = meant.map((one) => ({ ids: [one.id], label: timerWords(turn, one) }));
  const question = say('which-timer', {
    choices: list(
      choices.slice(0, 4).map((choice) => choice.label),
      true,
    ),
  });
  return { reply: { parts: [], ask: { slot: 'timer', question, expecting: 'choice', choices } } };
};

const timerWords = (turn: Turn, one: Reminder): Say =>
  say(one.heldLeft === undefined ? 'timer-with' : 'timer-held-with', {
    left: left(turn, one),
    ...named(one),
  });

/** "Pause the stew timer", "carry on with it". */
const holdOrResume = (turn: Turn, slots: Slots, resume: boolean): Reply => {
  const meant = timersMeant(turn, slots, 'timer');
  const fitting = meant.filter(({ heldLeft }) => (heldLeft !== undefined) === resume);
  const found = fitting.length === 1 ? { got: fitting[0]! } : oneTimer(turn, slots, 'timer', fitting);
  if ('reply' in found) return found.reply;
  const { got } = found;
  if (resume && got.heldLeft === undefined)
    return { parts: [say('timer-left', { left: left(turn, got), ...named(got) })], count: 1 };
  return withChange(turn, resume ? resumeTimer(turn, got.id) : holdTimer(turn, got.id), (change) => ({
    parts: [say(resume ? 'timer-resumed' : 'timer-held', { left: left(turn, got), ...named(got) })],
    changes: [change],
    memory: { reminderId: got.id },
  }));
};

/** "That one's for the eggs": what it is called. */
const calledNow = (turn: Turn, slots: Slots): Reply => {
  const { item: _item, words: _words, ...rest } = slots;
  const found = oneTimer(turn, { ...rest, item: itMention }, 'timer');
  const label = labelOf(turn, slots);
  if ('reply' in found || !label) return 'reply' in found ? found.reply : { parts: [say('ask-by-how-much')] };
  return withChange(turn, nameTimer(turn, found.got.id, label), (change) => ({
    parts: [say('timer-left', { left: left(turn, found.got), label })],
    changes: [change],
    memory: { reminderId: found.got.id },
  }));
};

export const changeTimer: Handler = (act, turn) => {
  const { duration, negated, asked } = act.slots;
  const { procedure } = turn.state;
  if (asked === 'longer' && procedure && duration !== undefined) return heatLonger(turn, procedure, duration);
  if (asked === 'pause' || asked === 'resume') return holdOrResume(turn, act.slots, asked === 'resume');
  if (asked === 'name') return calledNow(turn, act.slots);
  const found = oneTimer(turn, act.slots, 'timer');
  if ('reply' in found) return found.reply;
  if (duration === undefined)
    return { parts: [], ask: { slot: 'duration', question: say('ask-by-how-much'), expecting: 'time' } };
  const by = asked === 'to' ? { seconds: duration } : { addSeconds: negated ? -duration : duration };
  return withChange(turn, changeTimerChange(turn, found.got.id, by), (change) => {
    const op = change.ops[0]!;
    const after = op.kind === 'reminder' && op.after ? op.after : found.got;
    return {
      parts: [say('timer-now', { left: left(turn, after), ...named(after) })],
      changes: [change],
      memory: { reminderId: found.got.id },
    };
  });
};

/** "Cancel them all but the rice": one change, each said back. */
const cancelAll = (turn: Turn, kind: Reminder['kind'], many: readonly Reminder[]): Reply => {
  const changes = many.flatMap(({ id }) => {
    const change = cancelChange(turn, id);
    return 'refused' in change ? [] : [change];
  });
  return {
    parts: many.map((one) => say('timer-cancelled', { kind, ...named(one) })),
    changes,
    doubt: say('confirm-cancel-timer', { kind }),
  };
};

const cancelOf =
  (kind: Reminder['kind']): Handler =>
  (act, turn) => {
    const many = act.slots.item?.pointer === 'all' ? timersMeant(turn, act.slots, kind) : [];
    if (many.length > 1) return cancelAll(turn, kind, many);
    const found = oneTimer(turn, act.slots, kind);
    if ('reply' in found) return found.reply;
    return withChange(turn, cancelChange(turn, found.got.id), (change) => ({
      parts: [say('timer-cancelled', { kind, ...named(found.got) })],
      changes: [change],
      doubt: say('confirm-cancel-timer', { kind, ...named(found.got) }),
    }));
  };
export const cancelTimer: Handler = cancelOf('timer');
export const cancelReminder: Handler = cancelOf('reminder');

/** How long each has left: one by itself, several in groups. */
const running = (turn: Turn, meant: readonly Reminder[]): Reply => {
  const [only] = meant;
  if (!only) return { parts: [say('no-timers', { kind: 'timer' })], count: 0 };
  if (meant.length === 1)
    return {
      parts: [
        say(only.heldLeft === undefined ? 'timer-left' : 'timer-held', {
          left: left(turn, only),
          ...named(only),
        }),
      ],
      count: 1,
      memory: { reminderId: only.id },
    };
  const { first, more, left: over } = inGroups(meant.map((one) => timerWords(turn, one)));
  return {
    parts: [say('timers-running', { count: meant.length, timers: list(first) }), ...andMore(over)],
    more,
    count: meant.length,
  };
};

/** One asked for by a name that none has: that it does not run, and which do, so that nobody waits for it. */
const noneCalled = (turn: Turn, label: string): Reply => {
  const open = openReminders(turn.kitchen, 'timer');
  const rest = open.length > 0 ? running(turn, open) : null;
  return {
    ...rest,
    parts: [notFound('no-such-timer', { label, kind: 'timer' }), ...(rest?.parts ?? [])],
    count: 0,
  };
};

/** "What time will that be": of the one spoken of, else of each. */
const whenUp = (turn: Turn, slots: Slots): Reply => {
  const last = turn.kitchen.reminders.get(turn.memory.reminderId ?? '');
  const spoken =
    !slots.item && !slots.words && last?.kind === 'timer' && last.deliveredAt === null ? [last] : [];
  const meant = spoken.length > 0 ? spoken : timersMeant(turn, slots, 'timer');
  const due = meant.filter(({ heldLeft }) => heldLeft === undefined);
  if (due.length === 0) return running(turn, meant);
  return {
    parts: due.map((one) => say('timer-rings', { time: clockTime(one.due), ...named(one) })),
    count: due.length,
    ...(due.length === 1 ? { memory: { reminderId: due[0]!.id } } : {}),
  };
};

export const timers: Handler = (act, turn) => {
  const { slots } = act;
  // "Don't you cancel anything": they run on.
  if (slots.negated) {
    const told = running(turn, openReminders(turn.kitchen, 'timer'));
    return { ...told, parts: [say('nothing-cancelled'), ...told.parts] };
  }
  // "Which one's up first?"
  if (slots.asked === 'first')
    return running(
      turn,
      openReminders(turn.kitchen, 'timer')
        .filter(({ heldLeft }) => heldLeft === undefined)
        .slice(0, 1),
    );
  if (slots.asked === 'when') return whenUp(turn, slots);
  const meant = timersMeant(turn, slots, 'timer');
  const label = meant.every((one) => one.label === null) ? labelOf(turn, slots) : null;
  return label ? noneCalled(turn, label) : running(turn, meant);
};

/** When nobody says a time of day: in the evening, when meals are thought of. Our own choice. */
const usualTime = '17:00';
/** "Saturday morning", in wording that no rule covers: the hours are those of `timers.gram`. Our own choice. */
const partsOfDay = [
  ['morning', '09:00'],
  ['afternoon', '14:00'],
  ['evening', '18:00'],
  ['night', '20:00'],
] as const;
const timeMeant = ({ qualifiers }: Turn): string =>
  partsOfDay.find(([part]) => qualifiers.has(part))?.[1] ?? usualTime;

const dueOf = (turn: Turn, { when, time, duration }: Slots): string | null => {
  if (duration !== undefined) return fromNow(turn.clock, duration);
  if (when && when !== 'unknown') {
    const at = instantAt(when.day, time ? wakingHour(time, turn) : timeMeant(turn), turn.clock.timeZone);
    return at > turn.clock.now
      ? at
      : when.day === today(turn.clock) && !time
        ? fromNow(turn.clock, 3600)
        : at;
  }
  return time ? nextOf(bothHalves(time, turn), turn.clock) : null;
};

/** "The day before the goat cheese is up": by the date on it. */
const dayBefore = (turn: Turn, slots: Slots): { slots: Slots; item: Item } | { reply: Reply } | null => {
  if (slots.asked !== 'day-before' || !slots.item) return null;
  const found = needItem(turn, slots.item, { question: say('ask-remind-what'), fitting: isDated });
  if ('reply' in found) return found;
  const { got } = found;
  const on = got.dates.useBy ?? got.dates.bestBefore;
  if (!on) return { reply: { parts: [say('no-date-to-remind', { name: got.name })] } };
  const { asked: _asked, item: _item, ...rest } = slots;
  return { slots: { ...rest, when: { day: plusDays(on, -1) } }, item: got };
};
const isDated = ({ dates }: Item): boolean => (dates.useBy ?? dates.bestBefore) !== undefined;

export const setReminder: Handler = (act, turn) => {
  const before = dayBefore(turn, act.slots);
  if (before && 'reply' in before) return before.reply;
  const slots = before ? { ...before.slots, words: `use the ${before.item.name}` } : act.slots;
  const { person } = personSaid(turn, slots);
  const other = person && person.id !== turn.speaker.personId ? person : null;
  // "Remind me tomorrow" is about what was just spoken of.
  const spoken = findItems(turn, itMention).items;
  const spokenOf = spoken.length === 1 ? spoken[0] : undefined;
  const label = labelOf(turn, slots) ?? (spokenOf ? `use the ${spokenOf.name}` : null);
  if (!label)
    return { parts: [], ask: { slot: 'words', question: say('ask-remind-what'), expecting: 'words' } };
  const due = dueOf(turn, slots);
  if (!due)
    return {
      parts: [],
      ask: { slot: 'time', question: say('ask-remind-when', { label }), expecting: 'time' },
    };
  const items = before
    ? [before.item]
    : slots.item
      ? findItems(turn, slots.item).items
      : slots.words || !spokenOf
        ? []
        : [spokenOf];
  const itemId = items.length === 1 ? items[0]!.id : null;
  const forPersonId = other?.id ?? null;
  return withChange(turn, setReminderChange(turn, { due, label, itemId, forPersonId }), (change) => ({
    parts: [
      other
        ? say('reminder-set-for', { name: other.name, label, ...whenWords(turn, due) })
        : say('reminder-set', { label, ...whenWords(turn, due) }),
    ],
    changes: [change],
    doubt: say('confirm-reminder', { label, ...whenWords(turn, due) }),
    // "Remind me to take the thighs out, and how do I thaw them": what it is about was spoken of.
    memory: { reminderId: change.ops[0]!.id, ...(itemId ? { items: [itemId] } : {}) },
  }));
};

/** "Push the dentist back to half ten": the day stays unless another is said. */
export const changeReminder: Handler = (act, turn) => {
  const found = oneTimer(turn, act.slots, 'reminder');
  if ('reply' in found) return found.reply;
  const { got } = found;
  const { slots } = act;
  const on = { day: dayOf(got.due, turn.clock.timeZone) };
  // "Make it half eight", of one in the evening: the half of the day it was in.
  const near = slots.time
    ? bothHalves(slots.time, turn)
        .map((time) => instantAt(on.day, time, turn.clock.timeZone))
        .sort(
          (a, b) =>
            Math.abs(Date.parse(a) - Date.parse(got.due)) - Math.abs(Date.parse(b) - Date.parse(got.due)),
        )
        .find((at) => at > turn.clock.now)
    : undefined;
  const due = slots.when || !near ? dueOf(turn, slots) : near;
  if (!due)
    return {
      parts: [],
      ask: { slot: 'time', question: say('ask-remind-when', { label: got.label ?? '' }), expecting: 'time' },
    };
  return withChange(turn, changeReminderChange(turn, got.id, due), (change) => ({
    parts: [say('reminder-set', { label: got.label ?? '', ...whenWords(turn, due) })],
    changes: [change],
    doubt: say('confirm-reminder', { label: got.label ?? '', ...whenWords(turn, due) }),
    memory: { reminderId: got.id },
  }));
};

const whenWords = (turn: Turn, due: string): { date?: Value; time: Value } => {
  const on = dayOf(due, turn.clock.timeZone);
  return on === today(turn.clock) ? { time: clockTime(due) } : { date: day(on), time: clockTime(due) };
};

/** Hours of the parts of a day, for what is due in them. */
const hoursOf: Readonly<Record<string, readonly [string, string]>> = {
  morning: ['00:00', '12:00'],
  afternoon: ['12:00', '18:00'],
  evening: ['17:00', '24:00'],
  night: ['17:00', '24:00'],
};

/** "What's due tonight": those of that day, and of that part of it. */
const dueThen = (turn: Turn, { when, asked = '' }: Slots): readonly Reminder[] => {
  const part = hoursOf[asked];
  const on = when && when !== 'unknown' ? when.day : part ? today(turn.clock) : null;
  return openReminders(turn.kitchen, 'reminder').filter(({ due }) => {
    const time = wallTime({ ...turn.clock, now: due });
    return (
      (on === null || dayOf(due, turn.clock.timeZone) === on) &&
      (!part || (time >= part[0] && time < part[1]))
    );
  });
};

export const reminders: Handler = ({ slots }, turn) => {
  const open = dueThen(turn, slots);
  if (open.length === 0 && openReminders(turn.kitchen, 'reminder').length > 0)
    return { parts: [say('none-due-then')], count: 0 };
  if (open.length === 0) return { parts: [say('no-timers', { kind: 'reminder' })], count: 0 };
  const words = open.map((one) =>
    say('reminder-words', { label: one.label ?? '', ...whenWords(turn, one.due) }),
  );
  const { first, more, left: over } = inGroups(words);
  return {
    parts: [say('reminders-open', { count: open.length, reminders: list(first) }), ...andMore(over)],
    more,
    count: open.length,
    memory: { reminderId: open[0]!.id },
  };
};
