/**
 * A power cut, told in any wording and in pieces: that it began and since when, how each door was, how long it was in
 * all, that it is over, what food is asked about in it. What was not said now stands as it was told before.
 */
import type { Act, HearingContext, Mention, Slots } from '../intents.js';
import { asNumber } from '../meaning-parts.js';
import { clockTimesIn } from './clock-times.js';
import { spansIn } from './figures.js';
import {
  asks,
  asksAnywhere,
  foodsIn,
  has,
  mentionOf,
  isWord,
  moodOf,
  spotsOf,
  type Sentence,
} from './sentence.js';
import type { Match, Spot } from './spots.js';

type Door = 'shut' | 'open';
type Appliance = 'fridge' | 'freezer';

/** "The lights have just gone off": so many words at most between what went and that it went. */
const apart = 4;

/** Power and what became of it, near each other. */
const near = (sentence: Sentence, state: string): boolean =>
  spotsOf(sentence, 'cutnoun').some(({ to }) =>
    spotsOf(sentence, state).some(({ from }) => from >= to && from - to <= apart),
  );

const isBack = (sentence: Sentence, known: boolean): boolean =>
  near(sentence, 'cutback') || (known && has(sentence, 'cutcame'));

const tellsCut = (sentence: Sentence): boolean =>
  has(sentence, 'cutevent') ||
  near(sentence, 'cutstate') ||
  spotsOf(sentence, 'ask').some(({ value }) => value === 'power');

/** Clauses by "but", "so" and "though": what is said of a door is of the appliance in its own clause. */
const clauseOf = (sentence: Sentence, at: number): number =>
  sentence.tokens.slice(0, at).filter((word) => isWord(sentence, 'clausebreak', word)).length;

const appliances = (sentence: Sentence): readonly (Spot & { readonly of: readonly Appliance[] })[] => [
  ...spotsOf(sentence, 'fridgename').map((spot) => ({ ...spot, of: ['fridge'] as const })),
  ...spotsOf(sentence, 'freezername').map((spot) => ({ ...spot, of: ['freezer'] as const })),
  ...(spotsOf(sentence, 'freezername').length + spotsOf(sentence, 'fridgename').length > 0
    ? []
    : spotsOf(sentence, 'bothnames').map((spot) => ({ ...spot, of: ['fridge', 'freezer'] as const }))),
];

/** A denial stands so few words before what it denies. */
const denies = 3;
const isDenied = (sentence: Sentence, { from }: Spot): boolean =>
  sentence.tokens.slice(Math.max(0, from - denies), from).some((word) => isWord(sentence, 'denier', word));

const between = ({ from }: Spot, one: Spot, other: Spot): boolean =>
  from >= Math.min(one.to, other.to) && from < Math.max(one.from, other.from);

/** How the door was of where a food stood; of nowhere in particular, opened once is opened. */
export const doorOf = (sentence: Sentence, where: string | null): Door | null => {
  const { fridge, freezer } = doorsIn(sentence);
  const one = where === 'freezer' ? freezer : where === 'fridge' ? fridge : undefined;
  return one ?? (fridge === 'open' || freezer === 'open' ? 'open' : (fridge ?? freezer ?? null));
};

/** How each door was, by what is said nearest to it. */
const doorsIn = (sentence: Sentence): Partial<Record<Appliance, Door>> => {
  const denied = spotsOf(sentence, 'notshut');
  const inside = (one: Spot, others: readonly Spot[]): boolean =>
    others.some(({ from, to }) => from <= one.from && one.to <= to);
  const shut = spotsOf(sentence, 'doorshut').filter((one) => !inside(one, denied));
  const open = [...spotsOf(sentence, 'dooropen'), ...denied].filter((one) => !inside(one, shut));
  const told = [
    ...shut.map((spot) => ({ spot, door: 'shut' as const })),
    // "Nobody has opened it".
    ...open.map((spot) => ({ spot, door: isDenied(sentence, spot) ? ('shut' as const) : ('open' as const) })),
  ].sort((a, b) => a.spot.from - b.spot.from);
  const named = appliances(sentence);
  const found: Partial<Record<Appliance, Door>> = {};
  for (const { spot, door } of told) {
    const clause = clauseOf(sentence, spot.from);
    const within = named.filter(({ from }) => clauseOf(sentence, from) === clause);
    const distance = (one: Spot): number =>
      one.to <= spot.from ? spot.from - one.to : one.from >= spot.to ? (one.from - spot.to) * 1.5 : 0;
    const [nearest] = [...within].sort((a, b) => distance(a) - distance(b));
    // "The fridge and the freezer stayed shut": two that are joined are both meant.
    const joined = nearest
      ? within.filter(
          (one) =>
            (Math.abs(one.from - nearest.to) <= 2 || Math.abs(nearest.from - one.to) <= 2) &&
            // "The fridge closed, the freezer opened": each has its own.
            !told.some((door) => between(door.spot, one, nearest)),
        )
      : [];
    const of = nearest ? [nearest, ...joined].flatMap((one) => one.of) : (['fridge', 'freezer'] as const);
    // Opened once is opened, however often it was shut again.
    for (const one of of) if (found[one] !== 'open') found[one] = door;
  }
  return found;
};

/** How long ago it went, and not how long ago a door was opened. */
const sinceIn = (sentence: Sentence): Pick<Slots, 'duration' | 'time'> => {
  const opened = spotsOf(sentence, 'dooropen');
  const ofDoor = ({ from }: Match): boolean =>
    opened.some((one) => one.to <= from && clauseOf(sentence, one.from) === clauseOf(sentence, from));
  const [span] = spansIn(sentence).filter((one) => !ofDoor(one));
  if (span) return { duration: asNumber(span.value, 'duration') };
  const { since } = clockTimesIn(sentence);
  return since ? { time: since } : {};
};

const ofSomebody: ReadonlySet<Act['intent']> = new Set<Act['intent']>([
  ...([
    'can-eat',
    'contains',
    'who-allergic',
    'find',
    'count',
    'add-person',
    'buy-add',
    'set-timer',
  ] as const),
]);

/** What is asked of food in it: every food that is named. */
const foodsAsked = (sentence: Sentence, base: Act | undefined): readonly Mention[] => {
  // Who may have it and what is in it is asked of somebody, whatever the power does.
  if (base && ofSomebody.has(base.intent)) return [];
  const judged = spotsOf(sentence, 'ask').some(({ value }) => value === 'still') || has(sentence, 'discards');
  if (!asksAnywhere(sentence) && !judged && !has(sentence, 'asksof')) return [];
  return foodsIn(sentence).map(mentionOf);
};

const fullnessIn = (sentence: Sentence): Slots['fullness'] => {
  const said = spotsOf(sentence, 'full').map(({ value }) => value);
  return said.includes('half') ? 'half' : said.includes('full') ? 'full' : undefined;
};

const kindAsked = (sentence: Sentence): Appliance | null => {
  const fridge = has(sentence, 'fridgename');
  const freezer = has(sentence, 'freezername');
  return fridge === freezer ? null : fridge ? 'fridge' : 'freezer';
};

/** "Is everything in there all right", "what in the fridge is lost": of all that it holds, by no name. */
const asksOfAll = (sentence: Sentence, base: Act | undefined): boolean => {
  // "Is all the food in it safe" asks of no allergen, and "what food is lost" looks for none.
  const loose = base?.intent === 'find' || (base?.intent === 'contains' && !base.slots.allergens);
  if ((base && ofSomebody.has(base.intent) && !loose) || foodsIn(sentence).length > 0) return false;
  const judged =
    spotsOf(sentence, 'ask').some(({ value }) => value === 'still') ||
    (has(sentence, 'done') && asksAnywhere(sentence));
  const lost = has(sentence, 'discards') || has(sentence, 'lostask');
  const whole = has(sentence, 'allfood') || has(sentence, 'fridgename') || has(sentence, 'freezername');
  return (judged && whole) || (lost && asksAnywhere(sentence));
};

/** What is said of a power cut; null where nothing is. `known`: one is talked of. */
export const outageAct = (
  sentence: Sentence,
  expecting: HearingContext['expecting'],
  base: Act | undefined,
): Act | null => {
  if (sentence.language !== 'en') return null;
  const known = expecting === 'outage' || expecting === 'outage-state';
  const begins = tellsCut(sentence);
  if (!begins && !known) return null;
  if (moodOf(sentence) === 'supposed' && has(sentence, 'cutsuppose')) return null;
  const back = isBack(sentence, known);
  const doors = doorsIn(sentence);
  const told = doors.fridge !== undefined || doors.freezer !== undefined;
  const inAll = has(sentence, 'inall') && spansIn(sentence).length > 0;
  const foods = foodsAsked(sentence, base);
  const all = asksOfAll(sentence, base);
  // Of a cut that nobody told of before, food is asked with all that was told: that is a question of guidance.
  if (!known && foodsIn(sentence).length > 0 && (foods.length > 0 || !has(sentence, 'cutjust'))) return null;
  const holds =
    (has(sentence, 'holdask') || (has(sentence, 'staycold') && asksAnywhere(sentence))) &&
    (begins || has(sentence, 'freezername') || has(sentence, 'fridgename') || has(sentence, 'holdup'));
  const todo = has(sentence, 'todoask');
  const lapse = (known || begins) && has(sentence, 'lapseask');
  const own = base?.intent === 'power-cut' || base?.intent === 'power-back' || base?.intent === 'answer';
  const piece = told || lapse || back || inAll || holds || todo || all || foods.length > 0;
  // What the frame of requests holds whole is its own: doors alike, an hour, an end.
  // "It went off about two minutes ago", "just now": an hour that the frame did not hear.
  const unheard =
    begins &&
    base?.slots.time === undefined &&
    base?.slots.duration === undefined &&
    base?.slots.until === undefined &&
    (has(sentence, 'cutjust') || Object.keys(sinceIn(sentence)).length > 0);
  const beyond =
    unheard ||
    lapse ||
    doors.fridge !== doors.freezer ||
    inAll ||
    foods.length > 0 ||
    // What in it is lost while it lasts; told that it is back, the frame goes through it all.
    (all && !back) ||
    (holds && base?.slots.asked === undefined);
  if (own ? !beyond : !piece && !begins) return null;
  if (!begins && !back && !inAll && !told && foods.length === 0 && !holds && !lapse && !all) return null;
  const said = begins || inAll ? sinceIn(sentence) : {};
  // "The lights have just gone off": now.
  const just = begins && Object.keys(said).length === 0 && has(sentence, 'cutjust');
  // What the frame heard of the hour stands, unless a door's hour was told with it.
  const framed = base?.slots.time !== undefined || base?.slots.duration !== undefined;
  const since = just ? { duration: 0 } : framed && own && !has(sentence, 'dooropen') ? {} : said;
  const fullness = fullnessIn(sentence);
  const kind = foods.length > 0 ? null : kindAsked(sentence);
  const before = own && base.intent !== 'answer' ? base.slots : {};
  const { doors: _doors, asked: _asked, placeKind: _kind, ...kept } = before;
  return {
    intent: back ? 'power-back' : 'power-cut',
    slots: {
      ...kept,
      ...since,
      ...(inAll ? { inAll: true } : {}),
      ...(doors.fridge ? { doors: doors.fridge } : {}),
      ...(doors.freezer ? { freezerDoors: doors.freezer } : {}),
      ...(fullness ? { fullness } : {}),
      ...(foods.length > 0 ? { items: foods } : {}),
      ...(lapse
        ? { asked: 'lapse' }
        : holds
          ? { asked: 'holds' }
          : all
            ? { asked: 'lost' }
            : todo
              ? { asked: 'todo' }
              : {}),
      ...(kind && (holds || all || asks(sentence)) ? { placeKind: kind } : {}),
    },
  };
};
