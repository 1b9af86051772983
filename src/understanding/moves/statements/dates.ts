/** Days: of the kind a word said, of the deed, or just when it was. */
import type { ChunkOf } from '../api.js';
import { isPurpose, takePurposeDay } from './purpose.js';
import { type DateKind, type Telling, dateOfDeed, implied, lastOf, printed, use } from './telling.js';

export const takeDay = (t: Telling, chunk: ChunkOf<'day'>): void => {
  if (isPurpose(t, chunk)) {
    takePurposeDay(t, chunk);
    return;
  }
  use(t, chunk);
  t.inRun = false;
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
