/** What a turn comes to in a lesson: the task is done, or tried once more; or one kitchen was left for another. */
import type { Heard } from '../api.js';
import { say } from '../handler.js';
import { type Frame, stateOf } from '../state.js';
import { type Work, pushFrame, withState } from '../turn/work.js';
import { lessonsIn } from './files.js';
import { holds } from './judge.js';
import { languageOf } from './language.js';
import { onwards } from './lesson.js';

/** Asked once in a conversation, when a lesson was gone through to its end. */
const withSharing = (work: Work): Work => {
  if (work.state.sharing) return work;
  const frame: Frame = {
    kind: 'sure',
    slot: 'sure',
    question: say('confirm-sharing'),
    expecting: 'yes-no',
    act: { intent: 'share-lessons', slots: {} },
    picked: {},
    asked: 1,
  };
  return pushFrame(withState(work, { sharing: { may: null, at: work.around.clock.now } }), frame);
};

/** After a turn of a lesson: a task that is done is said to be, and the next one is given. */
export const withLesson = (work: Work, { understanding }: Heard): Work => {
  const before = stateOf(work.before).practice?.lesson;
  const { practice } = work.state;
  const now = practice?.lesson;
  if (before?.beganAt !== now?.beganAt || before?.n !== now?.n) {
    const lessons = lessonsIn(languageOf(work.around.kitchen.household.locale));
    const over =
      before && lessons[before.n]
        ? {
            held: {
              ...work.state.held,
              [lessons[before.n]!.key]: { at: before.beganAt, results: before.results },
            },
          }
        : {};
    // What was done, asked and told last was in the other kitchen.
    return withState(work, { ...over, done: null, asked: null });
  }
  if (!practice || !now || now.hints > before!.hints) return work;
  const lesson = lessonsIn(languageOf(work.around.kitchen.household.locale))[now.n];
  if (now.task > before!.task) return lesson && now.task >= lesson.tasks.length ? withSharing(work) : work;
  const task = lesson?.tasks[now.task];
  // What is about the lesson itself is no try at the task.
  const meant: readonly string[] = [
    ...(understanding.readings[0]?.acts ?? []).map(({ intent }) => intent),
    ...(work.act ? [work.act.intent] : []),
  ];
  const ofLesson = meant.every((intent) =>
    ['hint', 'lesson-report', 'share-lessons', 'start-lesson', 'help'].includes(intent),
  );
  if (!lesson || !task || work.state.misses > 0 || ofLesson) return work;
  if (!holds(work, task.done, meant))
    return withState(work, { practice: { ...practice, lesson: { ...now, tries: now.tries + 1 } } });
  const how = now.hints > 0 ? 'hint' : 'alone';
  const next = onwards(practice, now, lesson, how);
  const after = {
    ...withState(work, { practice: next.practice ?? practice }),
    parts: [...work.parts, say('lesson-well', { how, tries: now.tries + 1 }), ...next.parts],
  };
  return now.task + 1 < lesson.tasks.length ? after : withSharing(after);
};
