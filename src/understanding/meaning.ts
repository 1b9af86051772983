/**
 * What a parse means: the objects that grammar tags build, made into acts with typed slots.
 * Every key that grammar files may set is one line of the table `readers`; a key that is not
 * there is a mistake in a grammar file and throws a `MeaningError` that names it.
 */
import type { SemanticValue } from '../grammar/api.js';
import type { PlainDate } from '../terms/dates.js';
import {
  ASKING_INTENTS,
  INTENTS,
  type Act,
  type Intent,
  type SaidDate,
  type SaidPreparation,
  type Slots,
} from './intents.js';
import {
  asAmount,
  asDate,
  asLines,
  asMention,
  asNamed,
  asNumber,
  asPlace,
  asRaw,
  asShare,
  asText,
  asTexts,
  asTouch,
  isRaw,
  asMaker,
  markerMention,
  MeaningError,
  namedMention,
  pointed,
  wordsMention,
  type Aside,
  type Line,
  type Raw,
} from './meaning-parts.js';

export { MeaningError } from './meaning-parts.js';

type Draft = { -readonly [K in keyof Slots]: Slots[K] };

/** Slots being filled, and what only the whole act can place. */
interface Filling {
  readonly slots: Draft;
  readonly aside: Aside;
  readonly today: PlainDate;
  readonly intent: Intent;
  lines: readonly Line[];
  /** "i bought", "i made": what a date without a kind means. */
  did: 'made' | 'bought' | null;
  preparation: { -readonly [K in keyof SaidPreparation]?: SaidPreparation[K] };
}

type Reader = (value: SemanticValue, filling: Filling) => void;

type DateKind = keyof NonNullable<Slots['dates']>;
const setDate = (filling: Filling, kind: DateKind, said: SaidDate | 'unknown'): void => {
  filling.slots.dates = { ...filling.slots.dates, [kind]: said };
};

const dated =
  (kind: DateKind): Reader =>
  (value, filling) =>
    setDate(filling, kind, asDate(value));

const readAll = (value: SemanticValue, filling: Filling): void => {
  for (const [key, part] of Object.entries(asRaw(value, 'part'))) {
    const reader = readers[key];
    if (!reader) throw new MeaningError(`no slot takes "${key}"`);
    if (part !== undefined) reader(part, filling);
  }
};

const person: Reader = (value, { slots }) => {
  const { words, candidates } = asNamed(value);
  slots.person = { words, candidates };
};
const text =
  (slot: 'words' | 'asked' | 'setting' | 'time' | 'placeKind' | 'deed' | 'device' | 'code'): Reader =>
  (value, { slots }) => {
    slots[slot] = asText(value, slot);
  };
const flag =
  (slot: 'lasting' | 'negated'): Reader =>
  (_value, { slots }) => {
    slots[slot] = true;
  };
const place: Reader = (value, { slots }) => {
  slots.place = asPlace(value);
};
const person0 = (value: SemanticValue, filling: Filling): void => {
  if (isRaw(value) && value.words !== undefined) person(value, filling);
  else readAll(value, filling);
};
const asked =
  (what: string): Reader =>
  (_value, { slots }) => {
    slots.asked = what;
  };
const ignore: Reader = () => undefined;

const readers: Readonly<Record<string, Reader>> = {
  intent: ignore,
  // --- which thing
  about: readAll,
  item: (value, { slots, aside }) => {
    slots.item = asMention(value, aside);
  },
  named: (value, { slots }) => {
    slots.item = namedMention(value);
  },
  pointer: (value, { slots }) => {
    slots.item = pointed(value);
  },
  things: (value, filling) => {
    filling.lines = asLines(value, filling.aside);
  },
  lines: (value, filling) => {
    filling.lines = asLines(value, filling.aside);
  },
  except: (value, filling) => {
    filling.lines = asLines(value, filling.aside);
    filling.slots.negated = true;
  },
  // What could not be had: it stays on the list.
  still: (value, filling) => {
    filling.lines = asLines(value, filling.aside);
    filling.slots.asked = 'still';
  },
  marker: (value, { slots }) => {
    slots.marker = markerMention(value);
  },
  touch: (value, { slots }) => {
    slots.item = {
      ...(slots.item ?? wordsMention('')),
      words: slots.item?.words ?? null,
      touch: asTouch(value),
    };
  },
  container: (value, { slots }) => {
    slots.container = asTouch(value);
  },
  with: (value, { slots }) => {
    slots.items = [...(slots.items ?? []), asMention(value)];
  },
  // What it was not: tells which "the other one" is.
  not: (value, { slots, aside }) => {
    slots.not = asMention(value, aside);
  },
  notname: ignore,
  is: (value, { slots }) => {
    slots.words = asMention(value).words ?? '';
    if (!slots.marker) slots.item = pointed('that');
  },
  name: (value, { slots }) => {
    slots.words = isRaw(value) ? asNamed(value).words : asText(value, 'name');
  },
  // --- where
  place,
  at: place,
  from: (value, { slots }) => {
    if (typeof value === 'string') slots.time = value;
    else {
      const raw = asRaw(value, 'from');
      slots.from = asPlace(raw.place ?? raw);
    }
  },
  beside: (value, { slots }) => {
    const beside = asMention(value).words ?? '';
    slots.place = { words: null, candidates: [], pointer: null, spot: `next to the ${beside}` };
  },
  shares: (value, filling) => {
    const raw = asRaw(value, 'shares');
    const parts = ['a', 'b', 'c'].filter((letter) => raw[letter] !== undefined).map((l) => asRaw(raw[l], l));
    if (parts.length === 1 && parts[0]!.amount === undefined) {
      filling.slots.place = asPlace(parts[0]!.place);
      return;
    }
    const total = filling.lines[0]?.amount ?? null;
    let given = 0;
    filling.slots.shares = parts.map((part) => {
      const said = part.amount === undefined ? null : asAmount(part.amount);
      const value = said ? said.value : Math.max(0, (total?.value ?? 0) - given);
      given += value;
      const unit = said && said.unit !== 'piece' ? said.unit : (total?.unit ?? 'piece');
      return { amount: { value, unit }, place: asPlace(part.place) };
    });
  },
  rest: (value, filling) => {
    if (typeof value === 'string') {
      filling.slots.words = value;
      return;
    }
    for (const part of Object.values(asRaw(value, 'rest'))) if (isRaw(part)) readAll(part, filling);
  },
  kind: text('placeKind'),
  kind2: ignore,
  kind3: ignore,
  number2: ignore,
  number3: ignore,
  appliance: (value, { slots }) => {
    if (typeof value === 'string') slots.placeKind = value;
    else slots.asked = 'appliance';
  },
  // --- how much
  amount: (value, { slots }) => {
    slots.amount = asAmount(value);
  },
  amount2: (value, { slots }) => {
    slots.amount = asAmount(value);
  },
  share: (value, { slots }) => {
    slots.share = asShare(value);
  },
  some: (value, filling) => {
    const raw = asRaw(value, 'some');
    if (raw.one !== undefined) filling.slots.amount = { value: 1, unit: 'piece' };
    readAll(value, filling);
  },
  one: ignore,
  bit: (_value, { slots }) => {
    slots.share = { fraction: 0.1, rough: true };
  },
  left: (value, { slots }) => {
    const raw = asRaw(value, 'left');
    if (raw.share !== undefined) slots.left = asShare(raw.share);
    else slots.left = asAmount(raw.amount ?? raw);
  },
  half: (_value, { slots }) => {
    slots.left = { fraction: 0.5, rough: true };
  },
  gone: (_value, { slots }) => {
    if (slots.left && 'fraction' in slots.left)
      slots.left = { ...slots.left, fraction: 1 - slots.left.fraction };
  },
  number: (value, { slots }) => {
    slots.number = asNumber(value, 'number');
  },
  portions: (value, { slots }) => {
    slots.amount = { value: asNumber(value, 'portions'), unit: 'portion' };
  },
  watts: (value, filling) => {
    filling.slots.number = asNumber(value, 'watts');
    filling.preparation.watts = asNumber(value, 'watts');
  },
  dots: (value, { slots }) => {
    slots.dots = asNumber(value, 'dots');
  },
  counted: (value, { slots }) => {
    slots.counted = asText(value, 'counted');
  },
  ordinal: (value, { slots }) => {
    slots.ordinal = asNumber(value, 'ordinal');
  },
  // --- when
  when: (value, filling) => {
    if (typeof value === 'string') return; // "later": said, but no day
    const raw = asRaw(value, 'when');
    if (raw.day !== undefined) filling.slots.when = asDate(raw);
    else readAll(raw, filling);
  },
  date: (value, { slots }) => {
    slots.when = asDate(value);
  },
  before: (value, { slots }) => {
    slots.when = asDate(value);
    slots.asked = 'before';
  },
  after: (value, { slots }) => {
    slots.when = asDate(value);
    slots.asked = 'since';
  },
  older: (value, { slots }) => {
    slots.duration = asNumber(value, 'older');
    slots.asked = 'older';
  },
  window: (value, filling) => readAll(value, filling),
  deed: text('deed'),
  past: (value, filling) => setDate(filling, filling.did ?? 'made', asDate(value)),
  printed: (value, filling) => {
    filling.slots.when = asDate(value);
  },
  unknown: (_value, { slots }) => {
    slots.when = 'unknown';
  },
  within: (value, { slots }) => {
    slots.duration = asNumber(value, 'within');
  },
  since: (value, filling) => {
    if (!isRaw(value)) return; // "last time"
    if (value.day !== undefined) filling.slots.when = asDate(value);
    else readAll(value, filling);
  },
  for: (value, filling) => readAll(value, filling),
  long: (value, filling) => readAll(value, filling),
  night: (_value, { slots }) => {
    slots.overnight = true;
  },
  meal: (value, { slots }) => {
    slots.words ??= asText(value, 'meal').replace(/^(at|for) /, '');
  },
  time: text('time'),
  duration: (value, { slots }) => {
    slots.duration = asNumber(value, 'duration');
  },
  to: (value, { slots }) => {
    if (typeof value === 'string') slots.words = value;
    else {
      slots.duration = asNumber(value, 'to');
      slots.asked = 'to';
    }
  },
  made: dated('made'),
  bought: dated('bought'),
  opened: dated('opened'),
  frozen: dated('frozen'),
  bestBefore: dated('bestBefore'),
  useBy: dated('useBy'),
  did: (value, filling) => {
    filling.did = value === 'bought' ? 'bought' : 'made';
    setDate(filling, filling.did, { day: filling.today });
  },
  extras: (value, filling) => {
    for (const extra of value as readonly SemanticValue[]) readAll(extra, filling);
  },
  // --- who
  person: person0,
  who: (value, filling) => {
    const raw = asRaw(value, 'who');
    if (raw.words !== undefined) person(value, filling);
    else if (raw.name !== undefined) filling.slots.words = asText(raw.name, 'name');
    else readAll(raw, filling);
  },
  whom: person,
  owner: person,
  maker: (value, { slots, aside }) => {
    slots.maker = asMaker(value, aside.asking === true);
  },
  me: (_value, { slots }) => {
    slots.person = { words: 'me', candidates: [] };
  },
  // --- what kind
  diet: (value, { slots }) => {
    slots.diet = asText(value, 'diet');
  },
  allergens: (value, { slots }) => {
    slots.allergens = asTexts(value);
  },
  contains: (value, { slots }) => {
    slots.allergens = asTexts(value);
  },
  free: (value, { slots }) => {
    slots.free = true;
    if (isRaw(value)) slots.allergens = asTexts(value);
  },
  caution: (value, { slots }) => {
    slots.caution = asText(value, 'caution');
  },
  // --- how
  method: (value, filling) => {
    const method = isRaw(value) ? asText(value.method, 'method') : asText(value, 'method');
    filling.slots.method = method;
    filling.preparation.method = method;
  },
  state: (value, { slots }) => {
    slots.from_state = asText(value, 'state') as NonNullable<Slots['from_state']>;
  },
  manners: (value, filling) => {
    for (const manner of value as readonly SemanticValue[]) readAll(manner, filling);
  },
  stand: (value, filling) => {
    filling.preparation.standMinutes = asNumber(value, 'stand') / 60;
  },
  how: (value, { slots }) => {
    slots.how = asText(value, 'how') as NonNullable<Slots['how']>;
  },
  why: (value, { slots }) => {
    slots.reason = asText(value, 'why') as NonNullable<Slots['reason']>;
  },
  fullness: (value, { slots }) => {
    slots.fullness = asText(value, 'fullness') as NonNullable<Slots['fullness']>;
  },
  /** "Forty-five", by a thermometer: which scale, the household knows. */
  degrees: (value, { slots }) => {
    const raw = asRaw(value, 'degrees');
    if (raw.plain !== undefined) slots.degrees = { value: asNumber(raw.plain, 'degrees'), scale: null };
    else {
      const { value: degrees, scale } = asRaw(raw.exact, 'temperature');
      const known = scale === 'fahrenheit' || scale === 'celsius' ? scale : null;
      slots.degrees = { value: asNumber(degrees, 'degrees'), scale: known };
    }
  },
  doors: (value, { slots }) => {
    slots.doors = asText(value, 'doors') as NonNullable<Slots['doors']>;
  },
  // --- words and settings
  words: text('words'),
  note: text('words'),
  device: text('device'),
  code: text('code'),
  ingredient: (value, { slots }) => {
    slots.words = asText(asRaw(value, 'ingredient').words, 'ingredient');
    slots.asked = 'ingredient';
  },
  /** "Can she eat it": whoever was spoken of. */
  same: (_value, { slots }) => {
    slots.person = { words: 'she', candidates: [] };
  },
  section: (value, { slots }) => {
    slots.words = asText(value, 'section');
    slots.asked ??= 'section';
  },
  spelled: (value, { slots }) => {
    slots.spelled = asText(value, 'spelled');
  },
  asked: text('asked'),
  verb: text('asked'),
  seen: text('asked'),
  pick: text('asked'),
  spare: asked('spare'),
  weekly: asked('weekly'),
  all: asked('all'),
  none: (_value, { slots }) => {
    slots.negated = true;
  },
  minus: flag('negated'),
  off: flag('negated'),
  lasting: flag('lasting'),
  setting: text('setting'),
  region: text('words'),
  // --- timers and reminders
  timer: (value, filling) => {
    if (isRaw(value)) readAll(value, filling);
  },
  label: (value, { slots }) => {
    const raw = asRaw(value, 'label');
    if (raw.named !== undefined) {
      slots.item = namedMention(raw.named);
      slots.words = slots.item.words ?? '';
    } else if (raw.words !== undefined) slots.words = asText(raw.words, 'label');
  },
  what: (value, { slots, aside }) => {
    const raw = asRaw(value, 'what');
    slots.words = asText(raw.text, 'what.text');
    slots.item = asMention(raw.item, aside);
  },
  text: ignore,
};

const onlyAsks: ReadonlySet<Intent> = new Set(ASKING_INTENTS);
const intents: ReadonlySet<string> = new Set(INTENTS);
const asIntent = (value: SemanticValue | undefined): Intent => {
  if (typeof value === 'string' && intents.has(value)) return value as Intent;
  throw new MeaningError(`no such intent: ${JSON.stringify(value)}`);
};

/** Intents whose things are told apart by amount: each line is an act of its own. */
const severalActs: ReadonlySet<Intent> = new Set<Intent>(['put-away', 'buy-add', 'buy-remove']);

const finish = (filling: Filling): readonly Act[] => {
  const { slots, aside, intent, lines, did } = filling;
  if (intent === 'choose' && slots.item?.ordinal !== null && slots.item?.ordinal !== undefined)
    slots.ordinal = slots.item.ordinal;
  if (aside.from) {
    if (intent === 'put-away' || intent === 'amend') setDate(filling, did ?? 'made', aside.from);
    else slots.when ??= aside.from;
  }
  const { preparation } = filling;
  if (intent === 'amend' && (slots.method !== undefined || preparation.standMinutes !== undefined)) {
    slots.preparation = {
      method: slots.method ?? null,
      minutes: slots.duration === undefined ? null : slots.duration / 60,
      watts: preparation.watts ?? null,
      standMinutes: preparation.standMinutes ?? null,
      degrees: null,
      scale: null,
      words: null,
    };
  }
  if (intent === 'move' && lines.length === 1 && lines[0]!.mention.at && !slots.from) {
    // "shift the onions from the counter to the pantry": where it stood, not which onions.
    slots.from = lines[0]!.mention.at;
  }
  if (lines.length === 0) return [{ intent, slots }];
  if (lines.length > 1 && severalActs.has(intent) && lines.some(({ amount }) => amount !== null)) {
    return lines.map(({ mention, amount }) => ({
      intent,
      slots: { ...slots, item: mention, ...(amount ? { amount } : {}) },
    }));
  }
  if (lines.length === 1) {
    const { mention, amount } = lines[0]!;
    return [{ intent, slots: { ...slots, item: mention, ...(amount ? { amount } : {}) } }];
  }
  return [{ intent, slots: { ...slots, items: lines.map(({ mention }) => mention) } }];
};

/** "Milk on the door, eggs in the drawer": an act for each. */
const pairsOf = (raw: Raw, today: PlainDate, intent: Intent): readonly Act[] =>
  (['pair1', 'pair2', 'pair3', 'pair4'] as const).flatMap((key) => {
    if (raw[key] === undefined) return [];
    const { thing, place } = asRaw(raw[key], key);
    return actsOf({ things: thing!, place: place! }, today, intent);
  });

const actsOf = (raw: Raw, today: PlainDate, intent: Intent): readonly Act[] => {
  if (raw.pair1 !== undefined) return pairsOf(raw, today, intent);
  const filling: Filling = {
    slots: {},
    aside: { asking: onlyAsks.has(intent) },
    today,
    intent,
    lines: [],
    did: null,
    preparation: {},
  };
  // Things first: shares need the amount, dates need to know what was done.
  for (const key of ['things', 'did']) if (raw[key] !== undefined) readers[key]!(raw[key], filling);
  const { things: _things, did: _did, ...others } = raw;
  readAll(others, filling);
  const also = (['2', '3'] as const).flatMap((n) =>
    raw[`kind${n}`] === undefined
      ? []
      : [
          {
            kind: asText(raw[`kind${n}`], 'kind'),
            count: raw[`number${n}`] === undefined ? 1 : asNumber(raw[`number${n}`], 'number'),
          },
        ],
  );
  if (also.length > 0) filling.slots.alsoParts = also;
  return finish(filling);
};

const listAct = (value: SemanticValue | undefined, today: PlainDate): readonly Act[] => {
  const raw = asRaw(value, 'list change');
  return [
    ...(raw.add === undefined ? [] : actsOf({ lines: raw.add }, today, 'buy-add')),
    ...(raw.remove === undefined ? [] : actsOf({ lines: raw.remove }, today, 'buy-remove')),
  ];
};

/**
 * The acts a parse stands for, in order.
 * `intent` is given for a bare answer, whose rule names none. `today` is the household's day.
 * Throws `MeaningError` when a grammar file gives something that no slot holds.
 */
export const readActs = (value: SemanticValue, today: PlainDate, intent?: Intent): readonly Act[] => {
  const raw = asRaw(value, 'meaning');
  if (raw.both === true) {
    if (raw.first === undefined) return listAct(raw, today);
    return [...listAct(raw.first, today), ...listAct(raw.second, today)];
  }
  return actsOf(raw, today, intent ?? asIntent(raw.intent));
};
