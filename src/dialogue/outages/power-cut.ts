/** A power cut: what to do while it lasts, and what became of the food when it is back. */
import { powerCut as powerCutReport } from '../../safety/index.js';
import type { PowerCutReport, PowerItem } from '../../safety/api.js';
import type { Say } from '../../speech/answer.js';
import type { Slots } from '../../understanding/intents.js';
import { sourcesOf } from '../describe/guidance.js';
import { guidedStep } from '../describe/steps.js';
import { andMore, inGroups } from '../describe/lists.js';
import { type Handler, type Reply, type Turn, clockTime, list, say } from '../handler.js';
import { sinceSaid } from './left-out.js';

const reportFor = (turn: Turn, slots: Slots, since: string, backAt: string | null): PowerCutReport =>
  powerCutReport(
    turn.kitchen,
    {
      since,
      backAt,
      doors: slots.doors ?? null,
      fullness: slots.fullness ?? null,
      ...(slots.degrees?.scale
        ? { fridgeReads: { degrees: slots.degrees.value, scale: slots.degrees.scale } }
        : {}),
    },
    turn.clock,
  );

const holding = (which: 'fridge' | 'freezer', { state, until }: PowerCutReport['fridge']): Say =>
  say('power-holds', { which, state, ...(until ? { until: clockTime(until) } : {}) });

const askSince: Reply = {
  parts: [],
  ask: {
    slot: 'time',
    question: say('ask-power-since'),
    again: say('ask-out-since-again'),
    expecting: 'time',
  },
};

export const powerCut: Handler = (act, turn) => {
  const since = sinceSaid(turn, act.slots) ?? (act.slots.asked === 'now' ? turn.clock.now : null);
  if (!since) return askSince;
  const report = reportFor(turn, act.slots, since, null);
  const steps = report.steps.map((step) => guidedStep(step, ''));
  return {
    parts: [
      say('power-first'),
      holding('fridge', report.fridge),
      holding('freezer', report.freezer),
      say('power-tell-back'),
    ],
    sources: sourcesOf([report.fridge, report.freezer]),
    procedure: { kind: 'power-cut', title: say('power-title'), itemId: null, steps, at: 0, paused: true },
    details: steps.map(({ text }) => text),
    outageSince: since,
  };
};

const verdictNames: readonly (readonly [PowerItem['verdict'], string])[] = [
  ['discard', 'power-discard'],
  ['discard-in-doubt', 'power-doubt'],
  ['check', 'power-check'],
  ['use-now', 'power-use-now'],
  ['refreeze', 'power-refreeze'],
  ['refreeze-with-loss', 'power-refreeze'],
  ['keep', 'power-keep'],
];

/** Each kind of verdict once, worst first, names of like things together. */
const byVerdict = (report: PowerCutReport): Say[] => {
  const phrases = [...new Set(verdictNames.map(([, phrase]) => phrase))];
  return phrases.flatMap((phrase) => {
    const verdicts = verdictNames.filter(([, name]) => name === phrase).map(([verdict]) => verdict);
    const names = [
      ...new Set(report.items.filter(({ verdict }) => verdicts.includes(verdict)).map(({ name }) => name)),
    ];
    if (names.length === 0) return [];
    const { first, more, left } = inGroups(names);
    const head = say(phrase, { count: names.length, items: list(first), left });
    // What may be kept need not be named one by one.
    return phrase === 'power-keep' ? [head] : [head, ...more];
  });
};

export const powerBack: Handler = (act, turn) => {
  const { slots } = act;
  // The cut itself was told of earlier in the talk, or is asked for now.
  const since = sinceSaid(turn, slots) ?? turn.state.outageSince;
  if (!since) return askSince;
  const report = reportFor(turn, slots, since, turn.clock.now);
  const said = byVerdict(report);
  const [head, ...rest] = said;
  return {
    parts: [
      say('power-back', {
        hours: {
          kind: 'duration',
          seconds: Math.round((Date.parse(turn.clock.now) - Date.parse(since)) / 1000),
        },
      }),
      ...(head ? [head] : [say('power-nothing')]),
      ...andMore(rest.length),
    ],
    more: rest,
    details: [say('step-never-taste'), say('step-when-in-doubt')],
    sources: sourcesOf(report.items.slice(0, 3)),
    procedure: null,
    outageSince: null,
  };
};
