/**
 * What others did that matters to this talk, told once, after the answer: "Dele finished the rice ten
 * minutes ago". Only of what is being spoken of; never in quiet hours, nor while something is asked.
 */
import type { JournalEntry, Verb } from '../../kitchen/model.js';
import type { Intent } from '../../understanding/intents.js';
import { say } from '../handler.js';
import { entryWords } from '../history/history.js';
import { stateOf } from '../state.js';
import { type Work, saying, turnOf } from '../turn/work.js';
import { isQuietNow } from './quiet.js';

/** Deeds after which food is not where, or not as, one thought. */
const MATTER: ReadonlySet<Verb> = new Set<Verb>([
  'finished',
  'threw out',
  'gave away',
  'took',
  'moved',
  'froze',
  'thawed',
  'took out',
  'reheated',
]);
/** Talk that tells of deeds itself, or of nothing in the kitchen. */
const TELLS_ITSELF: ReadonlySet<Intent> = new Set<Intent>([
  'what-changed',
  'who-did',
  'undo',
  'redo',
  'repeat',
  'stop',
  'goodbye',
]);
/** Older deeds are history: "what changed" tells them. */
const HOURS_NEWS = 12;
/** An answer about more things than these is a list, and news of one of them would be chatter. */
const FEW = 3;

const byOthers = (work: Work, entry: JournalEntry): boolean => {
  const { personId, deviceId } = work.around.speaker;
  return entry.personId === null || personId === null
    ? entry.deviceId !== deviceId
    : entry.personId !== personId;
};

/** Adds what another did since this conversation last spoke to what it speaks of. */
export const withNews = (work: Work): Work => {
  const { lastAt } = work.before;
  const { procedure, memory, practice } = work.state;
  const act = work.act?.intent;
  if (lastAt === null || practice || work.quiet || work.asking || (act && TELLS_ITSELF.has(act))) return work;
  // The answer says already that it is gone, and by whom.
  if (work.parts.some(({ phrase }) => phrase.startsWith('none-left-gone'))) return work;
  if (isQuietNow(work)) return work;
  const before = stateOf(work.before).memory.items;
  const spokenOf = new Set([memory.items, before].flatMap((ids) => (ids.length <= FEW ? ids : [])));
  if (procedure?.itemId) spokenOf.add(procedure.itemId);
  const oldest = Date.parse(work.around.clock.now) - HOURS_NEWS * 3_600_000;
  const undone = new Set(work.around.journal.flatMap(({ undoes }) => undoes ?? []));
  const news = work.around.journal.find(
    (entry) =>
      entry.at > lastAt &&
      Date.parse(entry.at) >= oldest &&
      MATTER.has(entry.verb) &&
      !undone.has(entry.id) &&
      byOthers(work, entry) &&
      entry.ops.some(({ kind, id }) => kind === 'item' && spokenOf.has(id)),
  );
  return news ? saying(work, say('entry', { entry: entryWords(turnOf(work), news) })) : work;
};
