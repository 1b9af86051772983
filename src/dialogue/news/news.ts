/**
 * What others did that matters to this talk, told once, after the answer: "Dele finished the rice ten
 * minutes ago". Only of what is being spoken of; never in quiet hours, nor while something is asked.
 */
import type { Id } from '../../kitchen/model.js';
import type { Instant } from '../../terms/dates.js';
import type { Intent } from '../../understanding/intents.js';
import { say } from '../handler.js';
import { entryWords } from '../history/history.js';
import { stateOf } from '../state.js';
import { type Work, saying, turnOf, withState } from '../turn/work.js';
import { byOthers, matters } from './deeds.js';
import { isQuietNow } from './quiet.js';

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

/** How many deeds told unasked are remembered: more than happen between two turns. */
const REMEMBERED = 20;

/** Notes what was told unasked, so that it is not told again. */
export const withTold = (work: Work, told: readonly Id[]): Work =>
  told.length === 0
    ? work
    : withState(work, {
        toldUnasked: [...new Set([...work.state.toldUnasked, ...told])].slice(-REMEMBERED),
      });

/** Nothing is told now, but may be at the next turn. */
const later = (work: Work, since: Instant): Work => withState(work, { newsSince: since });

/** Adds what another did since this conversation last spoke to what it speaks of. */
export const withNews = (work: Work): Work => {
  const { lastAt } = work.before;
  const { procedure, memory, practice, toldUnasked, newsSince } = work.state;
  const act = work.act?.intent;
  const since = newsSince ?? lastAt;
  if (since === null || practice) return work;
  if (work.quiet || work.asking) return later(work, since);
  const considered = withState(work, { newsSince: null });
  if (act && TELLS_ITSELF.has(act)) return considered;
  // The answer says already that it is gone, and by whom.
  if (work.parts.some(({ phrase }) => phrase.startsWith('none-left-gone'))) return considered;
  if (isQuietNow(work)) return considered;
  const before = stateOf(work.before).memory.items;
  const spokenOf = new Set([memory.items, before].flatMap((ids) => (ids.length <= FEW ? ids : [])));
  if (procedure?.itemId) spokenOf.add(procedure.itemId);
  const oldest = Date.parse(work.around.clock.now) - HOURS_NEWS * 3_600_000;
  const undone = new Set(work.around.journal.flatMap(({ undoes }) => undoes ?? []));
  const news = work.around.journal.find(
    (entry) =>
      entry.at > since &&
      Date.parse(entry.at) >= oldest &&
      matters(entry) &&
      !undone.has(entry.id) &&
      !toldUnasked.includes(entry.id) &&
      byOthers(work.around.speaker, entry) &&
      entry.ops.some(({ kind, id }) => kind === 'item' && spokenOf.has(id)),
  );
  return news ? saying(considered, say('entry', { entry: entryWords(turnOf(work), news) })) : considered;
};
