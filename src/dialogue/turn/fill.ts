/** What a bare answer puts into the act that waits for it. */
import { foodKey } from '../../kitchen/index.js';
import { emptyMention } from '../../understanding/intents.js';
import type { Act, Intent, Mention, PlaceMention, Slots } from '../../understanding/intents.js';
import type { Frame } from '../state.js';

const wordsOnly = (words: string): Mention => ({ ...emptyMention, words });

const placeWords = (words: string): PlaceMention => ({ words, candidates: [], pointer: null, spot: null });

/** What was said, beside what it comes to. */
interface Said {
  /** All of it, where a name or words of her own were asked for. */
  readonly free: string | null;
  /** "And the pickle": it goes on with something else. */
  readonly goesOn: boolean;
}

type Filler = (said: Slots, as: Said) => Slots | null;

/** For each slot: the parts of an answer that can stand for it, best first. */
const fillers: Readonly<Record<string, Filler>> = {
  item: ({ item, words, items, marker }) =>
    item
      ? { item }
      : items
        ? { items }
        : marker
          ? { item: marker }
          : words
            ? { item: wordsOnly(words) }
            : null,
  place: ({ place, item, words, shares }) =>
    shares
      ? { shares }
      : place
        ? { place }
        : item?.at
          ? { place: item.at }
          : words
            ? { place: placeWords(words) }
            : null,
  within: ({ place, words }) => (place ? { within: place } : words ? { within: placeWords(words) } : null),
  marker: ({ marker, item, container, dots, counted }) =>
    marker
      ? { marker }
      : item?.touch || (item && item.candidates.length > 0)
        ? { marker: item }
        : container
          ? { marker: { ...wordsOnly(''), words: null, touch: container } }
          : dots !== undefined
            ? {
                marker: {
                  ...wordsOnly(''),
                  words: null,
                  touch: { dots, ...(counted === undefined || counted === 'dot' ? {} : { counted }) },
                },
              }
            : null,
  amount: ({ amount, number, share, left }) =>
    amount
      ? { amount }
      : share
        ? { share }
        : left
          ? { left }
          : number !== undefined
            ? { amount: { value: number, unit: 'piece' } }
            : null,
  when: ({ when, dates, time, asked }) => {
    const first = when ?? Object.values(dates ?? {})[0];
    if (!first && asked === 'now') return { asked };
    return first ? { when: first, ...(time ? { time } : {}) } : null;
  },
  person: ({ person, words, maker, item }, { goesOn }) => {
    if (!person && goesOn) return null;
    // A food of hers is nobody's name.
    const name = words ?? maker ?? (item && item.candidates.length === 0 ? item.words : null);
    return person ? { person } : name ? { person: { words: name, candidates: [] } } : null;
  },
  duration: ({ duration }) => (duration === undefined ? null : { duration }),
  time: ({ time, until, duration, when, overnight }) =>
    overnight
      ? { overnight }
      : time
        ? { time, ...(until ? { until } : {}), ...(when && when !== 'unknown' ? { when } : {}) }
        : duration !== undefined
          ? { duration }
          : when && when !== 'unknown'
            ? { when }
            : null,
  method: ({ method, words }) => (method || words ? { method: method ?? words! } : null),
  number: ({ number, amount }) => {
    const value = number ?? amount?.value;
    return value === undefined ? null : { number: value };
  },
  dots: ({ dots, counted, number, marker }) => {
    const value = dots ?? number ?? marker?.touch?.dots;
    const kind = counted ?? marker?.touch?.counted;
    return value === undefined ? null : { dots: value, ...(kind === undefined ? {} : { counted: kind }) };
  },
  allergens: ({ allergens, words }) => (allergens ? { allergens } : words ? { allergens: [words] } : null),
  pounds: ({ pounds, amount, number }) => {
    const value = pounds ?? (amount?.unit === 'pound' ? amount.value : number);
    return value === undefined ? null : { pounds: value };
  },
  doors: ({ doors }) => (doors ? { doors } : null),
  fullness: ({ fullness }) => (fullness ? { fullness } : null),
  code: ({ code }) => (code ? { code } : null),
  device: ({ device, words }, { free }) => {
    const text = device ?? words ?? free;
    return text ? { device: text } : null;
  },
  spelled: ({ spelled }) => (spelled ? { spelled } : null),
  words: ({ words, item, spelled, written }, { free }) => {
    const text = spelled ?? words ?? item?.words ?? free;
    return text ? { words: text, ...(text === words && written ? { written } : {}) } : null;
  },
};

const bareIntents: ReadonlySet<Intent> = new Set<Intent>(['answer', 'choose', 'correct', 'follow-up']);

/** "Five knots mean for guests", when it was asked what four mean: told anew, and no answer to that. */
const saysOtherwise = ({ slot, act: { intent, slots: waiting } }: Frame, { slots }: Act): boolean =>
  // "Remove the sixth shelf", when it was asked where what is on the counter goes.
  (intent === 'remove-place' && waiting.from !== undefined) ||
  (['dots', 'words'] as const).some(
    (key) =>
      key !== slot && waiting[key] !== undefined && slots[key] !== undefined && waiting[key] !== slots[key],
  );

/** Acts that say, in a whole sentence, what was just asked for: "put it on the door". */
const sameMatter = (frame: Frame, act: Act): boolean => {
  const named = act.slots.item && act.slots.item.candidates.length > 0 && !act.slots.item.pointer;
  // "Can they thaw on the counter" is another question than when to begin.
  const other = act.slots.asked !== undefined && act.slots.asked !== frame.act.slots.asked;
  if (act.intent === frame.act.intent)
    return !other && !saysOtherwise(frame, act) && (!named || frame.slot === 'item');
  return frame.slot === 'place' && (act.intent === 'move' || act.intent === 'put-away') && !named;
};

/** True when the act can only be an answer to the open question. */
export const mayAnswer = (frame: Frame, act: Act): boolean =>
  bareIntents.has(act.intent) ||
  (frame.kind === 'slot' &&
    sameMatter(frame, act) &&
    !(frame.expecting === 'allergen' && ofAnother(frame, act)));

/** "Both, and Tom is allergic": somebody else's allergy is no answer to what hers is. */
export const ofAnother = ({ act: frame }: Frame, { intent, slots }: Act): boolean =>
  intent === 'add-person' &&
  (slots.eaters !== undefined ||
    (slots.person !== undefined &&
      slots.person.points !== 'other' &&
      foodKey(slots.person.words) !== foodKey(frame.slots.person?.words ?? '')));

/** The waiting act with the answer in it; null when the answer does not fit the question. */
export const filled = (frame: Frame, act: Act, said: Said): Act | null => {
  const filler = fillers[frame.slot];
  const bare = act.intent === 'answer';
  const value = filler?.(act.slots, { free: bare ? said.free : null, goesOn: bare && said.goesOn }) ?? null;
  const more = act.intent === frame.act.intent ? act.slots : {};
  if (!value) return null;
  // The day it was bought stands beside the one it is to be used by.
  const days = { ...frame.act.slots.dates, ...act.slots.dates };
  const dates = Object.keys(days).length > 0 ? { dates: days } : {};
  const slots: Slots = { ...more, ...frame.act.slots, ...extras(act.slots), ...dates, ...value };
  return { intent: frame.act.intent, slots };
};

/** Details given along with an answer: "the second shelf, left side, made yesterday". */
const extras = ({ amount, maker, marker, container, allergens, besides }: Slots): Slots => ({
  ...(besides ? { besides } : {}),
  ...(container ? { container } : {}),
  ...(allergens ? { allergens } : {}),
  ...(amount ? { amount } : {}),
  ...(maker ? { maker } : {}),
  ...(marker ? { marker } : {}),
});
