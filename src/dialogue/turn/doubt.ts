/** Whether a doubtful hearing leaves any doubt about what to do. */
import type { Act, Intent, Reading, Mention, Slots, Understood } from '../../understanding/intents.js';
import type { Touch } from '../../terms/touch.js';
import { BARE_INTENTS, DESTRUCTIVE_INTENTS } from '../../understanding/intents.js';
import { losesDoubtful, thresholds } from '../../understanding/thresholds.js';

/** What a slot comes to in words: which record it was matched with is no other meaning. */
const plain = (value: unknown): unknown => {
  if (typeof value !== 'object' || value === null) return value;
  if ('candidates' in value) {
    const { words, pointer, ordinal } = value as Mention;
    return words ?? pointer ?? ordinal ?? null;
  }
  if ('fraction' in value) return (value as { fraction: number }).fraction;
  return JSON.stringify(value);
};

/** No slot says otherwise; one may leave out what the other has. */
const agree = (a: Slots, b: Slots): boolean =>
  (Object.keys(a) as (keyof Slots)[]).every((key) => {
    const [one, other] = [plain(a[key]), plain(b[key])];
    return other === undefined || one === null || other === null || one === other;
  });

const sameActs = (a: readonly Act[], b: readonly Act[]): boolean =>
  a.length === b.length &&
  a.every((act, at) => act.intent === b[at]!.intent && agree(act.slots, b[at]!.slots));

/** Readings nearly as likely as the best. */
export const closeReadings = ({ readings }: Understood): readonly Reading[] => {
  const best = readings[0];
  return best ? readings.filter(({ confidence }) => confidence >= best.confidence - thresholds.margin) : [];
};

const weight = (value: unknown): number =>
  value === null || value === undefined
    ? 0
    : typeof value !== 'object'
      ? 1
      : Object.values(value).reduce((sum: number, part) => sum + weight(part), 0);

/** How much of what was said a reading accounts for. */
const said = ({ acts }: Reading): number => weight(acts.map(({ slots }) => slots));

const intentsOf = ({ acts }: Reading): string => acts.map(({ intent }) => intent).join(' ');

/** "Chicken and barley stew" is one dish of hers: no reading that makes two of it says more. */
const cutsName = ({ acts: [whole] }: Reading, { acts: [other] }: Reading): boolean => {
  const { item } = whole?.slots ?? {};
  const surely = (item?.candidates[0]?.fit ?? 0) >= wordForWord;
  const parts = other?.slots.items ?? [];
  return (
    surely && parts.length > 1 && parts.every(({ words }) => words !== null && item!.words!.includes(words))
  );
};
const wordForWord = 0.99;

/** Nearer than this, two readings are as good as each other. */
const tie = 0.12;

/**
 * Of readings about as likely, the one that fits what is going on, and of those with the same
 * intents the one that accounts for most of the words.
 */
export const bestReading = (
  understanding: Understood,
  fits: (reading: Reading) => boolean,
): Reading | undefined => {
  const best = understanding.readings[0];
  if (!best) return undefined;
  const near = understanding.readings.filter(({ confidence }) => confidence >= best.confidence - tie);
  const meant = near.find(fits) ?? best;
  return near
    .filter((reading) => intentsOf(reading) === intentsOf(meant) && (fits(reading) || !fits(meant)))
    .reduce((a, b) => (said(b) > said(a) && !cutsName(a, b) ? b : a), meant);
};

const steers: ReadonlySet<Intent> = new Set<Intent>([
  'wait',
  'next',
  'back',
  'repeat',
  'done',
  'continue',
  'stop',
  'steps-left',
]);

/** "Peas" or "pause", while steps are read: of a recogniser's guesses, the one that steers them. */
export const steering = ({ readings }: Understood): Reading | undefined => {
  const [best] = readings;
  const one = ({ acts }: Reading, of: ReadonlySet<Intent>): boolean =>
    acts.length === 1 && of.has(acts[0]!.intent);
  return best && one(best, BARE_INTENTS)
    ? readings.find((reading) => reading.guess !== best.guess && one(reading, steers))
    : undefined;
};

/** Facts that hurt nobody when they are wrong, are read back and can be taken back. */
const plainFacts: ReadonlySet<keyof Slots> = new Set<keyof Slots>([
  'item',
  'dates',
  'when',
  'maker',
  'person',
  'caution',
  'preparation',
  'method',
  'duration',
]);

/** "A bag of spinach in the drawer, use by Saturday": so much was said that nothing else can be meant. */
const tellsAll = ({ item, place, shares }: Slots): boolean => {
  const places = shares ? shares.map((share) => share.place) : [place];
  return item !== undefined && places.every((one) => (one?.candidates[0]?.fit ?? 0) >= 0.9);
};

/** Enough was said of how it feels to know it again. */
const isMarker = (felt: Touch): boolean => 'fastening' in felt || 'shape' in felt;

/** Nothing is lost by them, they are read back, and "undo" takes them away: a new marker, another name for a place. */
const easilyUndone = ({ intent, slots }: Act): boolean => {
  const { place, words, marker, item } = slots;
  const felt = marker?.touch ?? {};
  switch (intent) {
    case 'rename-place':
      return words !== undefined && (place?.candidates[0]?.fit ?? 0) >= 0.9;
    case 'add-marker':
      return isMarker(felt);
    case 'mark':
      return (item?.candidates[0]?.fit ?? 0) >= 0.99 && isMarker(felt);
    case 'build-place':
      return slots.placeKind !== undefined;
    case 'define-dots':
      return slots.dots !== undefined;
    default:
      return false;
  }
};

/** A food and a place of this kitchen's own speak for themselves: the read-back is check enough. */
const placedConfidence = 0.6;

/** From here on it is done and read back. A new name has words nobody could foresee, which cost much. */
const floor = ({ intent }: Act): number =>
  intent === 'rename-place'
    ? thresholds.act
    : intent === 'put-away' || intent === 'mark'
      ? placedConfidence
      : thresholds.change;

/** "I made it yesterday": heard clearly, of a thing that is surely known. Recorded and read back, not asked. */
export const harmless = ({ acts, confidence, evidence }: Reading): boolean =>
  confidence >= Math.max(...acts.map(floor)) &&
  evidence?.mended !== true &&
  acts.every(({ intent, slots }) => {
    const { item } = slots;
    if (intent === 'put-away' && tellsAll(slots)) return true;
    if (easilyUndone({ intent, slots })) return true;
    const known = !item || item.words === null || (item.candidates[0]?.fit ?? 0) >= 0.99;
    return (
      intent === 'amend' &&
      known &&
      (Object.keys(slots) as (keyof Slots)[]).every((key) => plainFacts.has(key))
    );
  });

/**
 * True when the hearing was sure enough and every near reading asks for the same: then it is
 * carried out, though the margin between two ways of putting it was small.
 */
export const onlyOneMeaning = (understanding: Understood): boolean => {
  const close = closeReadings(understanding);
  const [best] = close;
  if (!best) return false;
  const destroys = best.acts.some(({ intent }) => DESTRUCTIVE_INTENTS.has(intent));
  if (destroys && (understanding.hedged || understanding.disputed || losesDoubtful(best.acts))) return false;
  const enough = destroys ? thresholds.destroy : thresholds.change;
  return best.confidence >= enough && close.every(({ acts }) => sameActs(best.acts, acts));
};
