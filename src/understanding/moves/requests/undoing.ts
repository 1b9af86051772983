/** Taking back, one deed or several, and taking back the taking back. */
import type { Intent, LastDone } from '../../intents.js';
import { classed, figureOf, is, ofKind, some, wordsIn, type Bit, type Frame, type Made } from './bits.js';
import { asks, isAnyPart, isKnown, isNamed, values } from './last.js';

export const undoingFrame: Frame = ({ bits, tokens, pauses }) => {
  if (some(bits, 'wh', 'if', 'timer', 'remind')) return null;
  // "Undo that. Undo the last thing": said twice, and no taking back of the taking back.
  const apart = ({ from, to }: Bit): boolean => [...pauses].some((at) => from < at && at < to);
  const again = classed(bits, 'redo').filter((bit) => !apart(bit));
  if (again.length === 0 && classed(bits, 'redo').length > 0)
    return { acts: [{ intent: 'undo', slots: {} }], used: wordsIn(classed(bits, 'redo', 'take-back')) };
  if (again.length > 0) return { acts: [{ intent: 'redo', slots: {} }], used: wordsIn(again) };
  const back = [...classed(bits, 'take-back'), ...bothBack(bits)];
  const figures = bits.filter((bit) => figureOf(bit) !== null);
  const both = classed(bits, 'both');
  const number = both.length > 0 ? 2 : figureOf(figures[0]);
  // "Undo that, undo the last thing" says it twice; "I did none of that, take them back" and two joined do not.
  const [one, next] = back;
  const joined = one !== undefined && next !== undefined && tokens[one.from] !== tokens[next.from];
  if (back.length === 0 || (number === null && !joined)) return null;
  return {
    acts: [{ intent: 'undo', slots: { number: number ?? 2 } }],
    used: wordsIn([...back, ...both, ...figures, ...classed(bits, 'not')]),
  };
};

/** "Take both of those back", in any words for the two. */
const bothBack = (bits: readonly Bit[]): readonly Bit[] => {
  const [both] = classed(bits, 'both');
  const lead = classed(bits, 'bring-lead').find(({ to }) => to === both?.from);
  const end = classed(bits, 'back-end').find(({ from }) => from === both?.to);
  return lead && end && ofKind(bits, 'place').length === 0 ? [lead, end] : [];
};

/** "All that gone business": what went, right after the word that takes back. */
const goneAfter = (head: Bit, bits: readonly Bit[], pauses: ReadonlySet<number>): Bit | undefined =>
  bits.find(
    (bit) =>
      is(bit, 'undo-gone') &&
      bit.from >= head.to &&
      bit.from - head.to <= mostBetween &&
      ![...pauses].some((at) => at >= head.to && at <= bit.from),
  );
const mostBetween = 3;

const isPart = (bit: Bit): boolean =>
  is(bit, 'fill', 'aside', 'and', 'opener', 'repair', 'please') || bit.kind === 'thing';

/**
 * "Undo the celery", "put the chilli and the rice back where they were", "undo all that gone business": of what
 * went off the record, by name or all of it. Said with a place, it is a move.
 */
export const bringingBackFrame: Frame = ({ bits: all, pauses }) => {
  // "Undo the chickpeas but leave the feta where it is": what is to stay is told with it, and nothing is done to it.
  const kept = all.find(
    (bit, at) => at > 0 && is(bit, 'keep') && all.slice(0, at).some((one) => is(one, 'undo', 'take-back')),
  );
  const bits = kept ? all.filter(({ from }) => from < kept.from) : all;
  const made = broughtBack(bits, pauses);
  return made && kept
    ? { ...made, used: new Set([...made.used, ...wordsIn(all.filter(({ from }) => from >= kept.from))]) }
    : made;
};

const broughtBack = (bits: readonly Bit[], pauses: ReadonlySet<number>): Made | null => {
  if (some(bits, 'wh', 'if', 'timer', 'remind', 'not') || ofKind(bits, 'place').length > 0) return null;
  const all = classed(bits, 'bring-all');
  if (all.length > 0) return { acts: [{ intent: 'undo', slots: { asked: 'all' } }], used: wordsIn(all) };
  const undo = classed(bits, 'undo', 'take-back').filter((bit) => !is(bit, 'back-end'));
  const [lead] = classed(bits, 'bring-lead');
  const end = classed(bits, 'back-end').find(({ from }) => lead !== undefined && from > lead.from);
  const heads = [...undo, ...(lead && end ? [lead, end] : [])];
  const [first] = heads;
  if (!first) return null;
  const gone = goneAfter(first, bits, pauses);
  if (gone) return { acts: [{ intent: 'undo', slots: { asked: 'gone' } }], used: wordsIn([...heads, gone]) };
  const things = ofKind(bits, 'thing').filter(
    ({ from, mention }) => from > first.from && mention.words !== null && mention.pointer === null,
  );
  const inside = bits.filter(
    ({ from, to }) => from >= first.to && to <= (end?.from ?? things.at(-1)?.to ?? 0),
  );
  if (things.length === 0 || !inside.every(isPart)) return null;
  // Put back may be what stood out; undone is what was done.
  const intent: Intent = undo.length > 0 ? 'undo' : 'put-back';
  return {
    acts: things.map(({ mention }) => ({ intent, slots: { item: mention } })),
    used: wordsIn([...heads, ...inside]),
  };
};

/** What was done is denied by the words of these deeds. */
export const wordsOfDeed: Readonly<Partial<Record<Intent, readonly string[]>>> = {
  take: ['deed:took', 'deed:finished', 'state:finished'],
  finish: ['deed:finished', 'deed:threw', 'deed:gave', 'deed:took', 'state:finished', 'state:threw'],
  move: ['deed:moved', 'deed:stored'],
  'put-away': ['deed:stored', 'deed:bought', 'deed:made'],
  open: ['deed:opened', 'state:opened'],
  freeze: ['deed:froze', 'state:froze'],
  thaw: ['deed:thawing', 'state:thawing'],
  reheated: ['deed:reheated'],
  'buy-add': ['deed:listed', 'state:listed'],
  'buy-remove': ['deed:unlisted'],
};

/** Its reverse, said of nothing by name: "put them back", "take em off again". */
const reverses: Readonly<Partial<Record<Intent, readonly string[]>>> = {
  take: ['undo-put-back', 'deed:put-back'],
  finish: ['undo-put-back', 'deed:put-back', 'still-some'],
  move: ['undo-put-back', 'deed:put-back', 'never-left'],
  open: ['still-shut'],
  'buy-add': ['undo-off', 'deed:unlisted'],
  'buy-remove': ['undo-on', 'deed:listed'],
};

/** "I never touched them", "nobody has eaten any yet": the deed itself, denied. */
const denies = (bits: readonly Bit[], { intent }: LastDone): readonly Bit[] => {
  const at = bits.findIndex((bit) => is(bit, 'not', 'undone'));
  const deeds = wordsOfDeed[intent] ?? [];
  // "Nobody but me eats it" denies nothing: only who did it and whether stand between.
  const deed =
    at < 0 ? undefined : bits.slice(at + 1).find((bit) => !is(bit, 'fill', 'has', 'is', 'i', 'they'));
  return is(deed, ...deeds, 'did') ? [bits[at]!, deed!] : [];
};

/** In any wording, right after something was done: why may follow, and another value may not. */
export const takingBackFrame: Frame = ({ after: bits, last, pauses }) => {
  if (!last || asks(bits) || some(bits, 'if', 'timer', 'remind')) return null;
  const plain = classed(bits, 'undo');
  if (some(bits, 'bring-all') || (plain[0] && goneAfter(plain[0], bits, pauses))) return null;
  const others = values(bits).filter((bit) => !isNamed(bit, last) && !isAnyPart(bit));
  const reversed = classed(bits, ...(reverses[last.intent] ?? []));
  // "Eggs off the list", after eggs and flour went on: that is the eggs alone, and no taking back of both.
  const named = values(bits).filter((bit) => isNamed(bit, last));
  // "The last one, leave that off": one of them, whichever it is.
  const oneOf = ofKind(bits, 'pointer').some(({ mention }) => mention.pointer === 'last-added');
  if (oneOf && last.names.length > 1) return null;
  const ofSome = named.length > 0 && named.length < last.names.length;
  // "Undo the celery", after something else was done, or more than that: of what is named, and of that alone.
  if (plain.length > 0 && (ofSome || others.some((bit) => isKnown(bit) && bit.from > plain[0]!.from)))
    return null;
  const alone = ofSome ? [] : [...classed(bits, 'undo-alone'), ...reversed];
  const heads = [...plain, ...(others.length > 0 || ofSome ? [] : [...alone, ...denies(bits, last)])];
  const [first] = heads;
  if (!first) return null;
  // "Put them back on the top shelf", "the milk, and undo that": of more than was done.
  if (others.some((bit) => bit.from < first.from || bit.kind === 'place' || bit.kind === 'marker'))
    return null;
  return {
    acts: [{ intent: 'undo', slots: {} }],
    used: wordsIn([...heads, ...ofKind(bits, 'pointer')]),
    reason: true,
  };
};
