/** Lessons by voice: begun, helped along, gone on with, ended, and how they went. */
import type { Say } from '../../speech/answer.js';
import { type Handler, type Reply, type Turn, list, say } from '../handler.js';
import type { LessonState, Memory, Practice } from '../state.js';
import { type Lesson, lessonsIn } from './files.js';
import { languageOf } from './language.js';

const allOf = ({ kitchen }: Pick<Turn, 'kitchen'>): readonly Lesson[] =>
  lessonsIn(languageOf(kitchen.household.locale));

/** Nothing of one kitchen is spoken of in the other. */
const forgotten: Partial<Memory> = {
  items: [],
  before: [],
  offered: [],
  them: [],
  placeId: null,
  markerId: null,
  personId: null,
  reminderId: null,
  lastAdded: [],
  touched: null,
};

const taskSay = ({ tasks }: Lesson, task: number): Say => say('lesson-task', { task: tasks[task]!.say });

const beginning = (turn: Turn, n: number): Reply => {
  const lesson = allOf(turn)[n]!;
  const state: LessonState = { n, beganAt: turn.clock.now, task: 0, hints: 0, tries: 0, results: [] };
  const { session } = turn.state;
  return {
    parts: [
      say('lesson-begins', { number: n + 1, name: lesson.name, purpose: lesson.purpose }),
      ...(turn.state.practice ? [] : [say('lesson-apart')]),
      ...lesson.cautions.map((caution) => say('lesson-caution', { caution })),
      taskSay(lesson, 0),
    ],
    practice: { changes: [], lesson: state },
    memory: forgotten,
    dropFrames: true,
    procedure: null,
    ...(session && session.kind !== 'shop' ? { session: { ...session, paused: true } } : {}),
  };
};

/** The lesson named by its number or by a word of its name; the first not held yet; null for a number too high. */
const chosen = (turn: Turn, lessons: readonly Lesson[], act: Parameters<Handler>[0]): number | null => {
  const { number, ordinal, words, asked } = act.slots;
  const said = number ?? ordinal;
  if (said !== undefined) return said >= 1 && said <= lessons.length ? said - 1 : null;
  const now = turn.state.practice?.lesson?.n;
  if (asked === 'next' && now !== undefined) return now + 1 < lessons.length ? now + 1 : null;
  if (asked === 'again' && now !== undefined) return now;
  const byName = words
    ? lessons.findIndex(({ name, key }) =>
        words.split(' ').some((word) => word.length > 3 && `${name} ${key}`.includes(word)),
      )
    : -1;
  if (byName >= 0) return byName;
  const held = turn.state.held ?? {};
  const open = lessons.findIndex(({ key }) => !(key in held));
  return open < 0 ? 0 : open;
};

/** "Start a lesson", "lesson two", "the next lesson". */
export const startLesson: Handler = (act, turn) => {
  const lessons = allOf(turn);
  if (lessons.length === 0) return { parts: [say('no-lessons')] };
  if (act.slots.asked === 'list')
    return {
      parts: [say('lessons-are', { count: lessons.length, lessons: list(lessons.map(({ name }) => name)) })],
      count: lessons.length,
      keepTold: true,
    };
  const n = chosen(turn, lessons, act);
  return n === null ? { parts: [say('no-such-lesson', { count: lessons.length })] } : beginning(turn, n);
};

/** "Hint", "what was I to do". Each hint says a little more. */
export const hint: Handler = (act, turn) => {
  const { practice } = turn.state;
  const now = practice?.lesson;
  const lesson = now ? allOf(turn)[now.n] : undefined;
  const task = now ? lesson?.tasks[now.task] : undefined;
  // With no lesson going on, what may be said is the hint there is.
  if (!practice?.lesson && !act.slots.asked) return { parts: [], next: { intent: 'help', slots: {} } };
  if (!practice || !now || !lesson || !task) return { parts: [say('no-lesson-now')] };
  if (act.slots.asked === 'task') return { parts: [taskSay(lesson, now.task)], keepTold: true };
  if (act.slots.asked === 'skip') return onwards(practice, now, lesson, 'passed');
  const told = task.hints[Math.min(now.hints, task.hints.length - 1)]!;
  return {
    parts: [say('lesson-hint', { hint: told })],
    practice: { ...practice, lesson: { ...now, hints: now.hints + 1 } },
    keepTold: true,
  };
};

const counts = (results: LessonState['results'], what: LessonState['results'][number]): number =>
  results.filter((one) => one === what).length;

const reportOf = (lesson: Lesson, results: LessonState['results']): Say =>
  say('lesson-report', {
    name: lesson.name,
    count: lesson.tasks.length,
    alone: counts(results, 'alone'),
    hinted: counts(results, 'hint'),
  });

/** "How did we do": this lesson, and those held before in this talk. */
export const lessonReport: Handler = (_act, turn) => {
  const lessons = allOf(turn);
  const now = turn.state.practice?.lesson;
  const held = {
    ...turn.state.held,
    ...(now && lessons[now.n] ? { [lessons[now.n]!.key]: { at: now.beganAt, results: now.results } } : {}),
  };
  const parts = lessons.flatMap((lesson) =>
    lesson.key in held ? [reportOf(lesson, held[lesson.key]!.results)] : [],
  );
  return { parts: parts.length > 0 ? parts : [say('no-lesson-yet')], keepTold: true };
};

/** The next task, or that it was the last. */
export const onwards = (
  practice: Practice,
  now: LessonState,
  lesson: Lesson,
  how: LessonState['results'][number],
): Reply => {
  const results = [...now.results, how];
  const task = now.task + 1;
  const next = { ...now, results, task, hints: 0, tries: 0 };
  return {
    parts:
      task < lesson.tasks.length
        ? [taskSay(lesson, task)]
        : [say('lesson-over'), reportOf(lesson, results), say('lesson-after')],
    practice: { ...practice, lesson: next },
  };
};

export const endLesson = (turn: Turn, practice: Practice, now: LessonState): Reply => {
  const lesson = allOf(turn)[now.n]!;
  return {
    parts: [reportOf(lesson, now.results), say('lesson-left')],
    practice: null,
    memory: forgotten,
    dropFrames: true,
    procedure: null,
    session: null,
    quiet: true,
  };
};
