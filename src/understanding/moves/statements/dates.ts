/** Days: of the kind a word said, of the deed, or just when it was. */
import type { PlaceMention } from '../../intents.js';
import type { ChunkOf } from '../api.js';
import { placeLike } from '../chunks.js';
import { isPurpose, takePurposeDay } from './purpose.js';
import { type DateKind, type Telling, dateOfDeed, implied, lastOf, printed, use } from './telling.js';

/** Where an ordinal stands in words, and how many of them it is; null for none. */
const ordinalIn = ({ rules }: Telling, words: readonly string[]): { at: number; length: number } | null => {
  for (let at = 0; at < words.length; at += 1) {
    const [match] = rules.get('builtin:grammar/ordinal')?.matchesAt(words, at) ?? [];
    if (match) return { at, length: match.length };
  }
  return null;
};

/**
 * "On the third shelf, no, the fourth", "the rice is on the first shelf and the dal on the second": the place beside
 * the one that was named, and no day of the month, where nothing of a day was said and nothing else is told of it.
 */
const placeBeside = (t: Telling, chunk: ChunkOf<'day'>): PlaceMention | null => {
  const before = t.drafts.findLast(({ place }) => place?.words)?.place?.words ?? t.place?.words;
  const words = t.tokens.slice(chunk.from, chunk.to);
  const said = ordinalIn(t, words);
  const was = before ? ordinalIn(t, before.split(' ')) : null;
  const deed = t.drafts.at(-1)?.deed ?? null;
  if (!before || !said || !was || t.dateKind !== null) return null;
  if (said.at + said.length !== words.length || words.length - said.length > 2) return null;
  if (!t.repaired && deed !== null && deed !== 'stored' && deed !== 'moved') return null;
  const beside = before
    .split(' ')
    .toSpliced(was.at, was.length, ...words.slice(said.at, said.at + said.length));
  return placeLike(beside, t.rules);
};

export const takeDay = (t: Telling, chunk: ChunkOf<'day'>): void => {
  if (isPurpose(t, chunk)) {
    takePurposeDay(t, chunk);
    return;
  }
  use(t, chunk);
  t.inRun = false;
  const beside = t.drafts.length > 0 ? placeBeside(t, chunk) : null;
  if (beside) {
    lastOf(t).place = beside;
    t.repaired = false;
    return;
  }
  const kind = t.dateKind;
  t.dateKind = null;
  const said = (of: DateKind) => (printed.has(of) ? chunk.printed : chunk.past);
  if (kind) {
    for (const draft of implied(t)) draft.dates[kind] = said(kind);
    return;
  }
  if (t.drafts.length === 0) {
    t.early = chunk.past;
    return;
  }
  if (t.repaired) {
    t.repaired = false;
    const [told] = Object.keys(lastOf(t).dates) as DateKind[];
    if (told) {
      for (const draft of implied(t)) draft.dates[told] = said(told);
      return;
    }
  }
  for (const draft of t.group.length > 0 ? t.group : t.drafts.slice(-1)) {
    const ofDeed = draft.deed ? dateOfDeed[draft.deed] : undefined;
    // "The tofu is opened since last Wednesday": the day that was not told yet.
    const [open] = (Object.keys(draft.dates) as DateKind[]).filter((of) => draft.dates[of] === 'unknown');
    if (open) draft.dates[open] = chunk.past;
    else if (ofDeed && !draft.dates[ofDeed]) draft.dates[ofDeed] = chunk.past;
    else draft.when = chunk.past;
  }
};
