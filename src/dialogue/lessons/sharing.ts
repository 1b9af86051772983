/**
 * Whether a teacher may see how the lessons went: only after a yes said aloud, taken back at any word. What was
 * decided last, in whichever conversation of the household, is what counts.
 */
import type { Instant } from '../../terms/dates.js';
import type { Conversation } from '../api.js';
import { type Handler, say } from '../handler.js';
import { type LessonState, type Sharing, stateOf } from '../state.js';
import { type Lesson, lessonsIn } from './files.js';
import { languageOf } from './language.js';

const decided = (conversations: readonly Conversation[]): Sharing | null =>
  conversations
    .flatMap((one) => stateOf(one).sharing ?? [])
    .filter(({ may }) => may !== null)
    .toSorted((a, b) => Date.parse(b.at) - Date.parse(a.at))[0] ?? null;

/** "My teacher may see how I did", "stop sharing my lessons", "can my teacher see my lessons". */
export const shareLessons: Handler = (act, turn) => {
  const at = turn.clock.now;
  const { asked, negated } = act.slots;
  if (asked === 'whether')
    return {
      parts: [say('sharing-is', { may: turn.state.sharing?.may === true ? 'yes' : 'no' })],
      keepTold: true,
    };
  if (negated) return { parts: [say('sharing-off')], sharing: { may: false, at } };
  if (!turn.sure) return { parts: [], confirm: say('confirm-sharing') };
  return { parts: [say('sharing-on')], sharing: { may: true, at } };
};

export interface TaskHeld {
  readonly say: string;
  readonly how: LessonState['results'][number] | 'open';
}

export interface LessonHeld {
  readonly key: string;
  readonly name: string;
  /** When it was last begun. */
  readonly at: Instant;
  readonly tasks: readonly TaskHeld[];
}

export interface SharedLessons {
  /** What there is to practise, in order. */
  readonly lessons: readonly Lesson[];
  /** Null: nobody was asked yet. */
  readonly may: boolean | null;
  /** Empty unless they may be seen. The latest of each lesson, in the order they were held. */
  readonly held: readonly LessonHeld[];
}

/** What a teacher may see of a household's conversations. */
export const sharedLessons = (conversations: readonly Conversation[], locale: string): SharedLessons => {
  const lessons = lessonsIn(languageOf(locale));
  const may = decided(conversations)?.may ?? null;
  if (may !== true) return { lessons, may, held: [] };
  const latest = new Map<string, { at: Instant; results: LessonState['results'] }>();
  const note = (key: string, at: Instant, results: LessonState['results']): void => {
    const there = latest.get(key);
    if (!there || Date.parse(there.at) <= Date.parse(at)) latest.set(key, { at, results });
  };
  for (const conversation of conversations) {
    const { held = {}, practice } = stateOf(conversation);
    for (const [key, { at, results }] of Object.entries(held)) note(key, at, results);
    const now = practice?.lesson;
    const lesson = now ? lessons[now.n] : undefined;
    if (now && lesson) note(lesson.key, now.beganAt, now.results);
  }
  return {
    lessons,
    may,
    held: [...latest]
      .toSorted(([, a], [, b]) => Date.parse(a.at) - Date.parse(b.at))
      .flatMap(([key, { at, results }]) => {
        const lesson = lessons.find((one) => one.key === key);
        if (!lesson) return [];
        const tasks = lesson.tasks.map(({ say: task }, n) => ({
          say: task,
          how: results[n] ?? ('open' as const),
        }));
        return [{ key, name: lesson.name, at, tasks }];
      }),
  };
};
