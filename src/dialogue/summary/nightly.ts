/**
 * The nightly and the weekly summary: what to use up, most urgent first, and what to do with it.
 * Held to what can be said within 45 seconds; the rest waits for "more".
 */
import { foodKey, pathOf } from '../../kitchen/index.js';
import type { Id, Item, Kitchen } from '../../kitchen/model.js';
import type { Assessment, RankedItem } from '../../safety/api.js';
import { guidanceFor } from '../../safety/index.js';
import type { Answer, Say, Value } from '../../speech/answer.js';
import type { Clock } from '../../terms/dates.js';
import { groupName, grouped } from '../describe/item.js';
import { placeNoun } from '../describe/place.js';
import { list, say } from '../handler.js';

/** What of an assessment the summary goes by: `rankUseFirst` of the safety room gives more. */
export interface Ranked {
  readonly item: Item;
  readonly assessment: Pick<
    Assessment,
    'verdict' | 'lastDay' | 'daysLeft' | 'where' | 'clock' | 'match' | 'hazard'
  >;
}
// A change of the safety room's shape that the summary cannot follow is found by the compiler here.
const fits = (ranked: RankedItem): Ranked => ranked;
void fits;

export interface Summary {
  readonly answer: Answer;
  /**
   * The items of each line, in the order spoken, so that "it" and "the second" mean something after
   * it: what can still be used first, then what is to be thrown out.
   */
  readonly about: readonly (readonly Id[])[];
  /** As "the first" and "the second" count them: a line of its own to throw out comes where it is said. */
  readonly counted: readonly (readonly Id[])[];
}

export interface SummaryOptions {
  /** Looks a week ahead, and at what has no date or is past its best in the freezer. */
  readonly weekly?: boolean;
  /** The cook asked for it: she can be offered the rest at once. */
  readonly asked?: boolean;
  /** The moment it should have been told, when it comes late. */
  readonly lateSince?: string;
}

/** Days ahead that are looked at. */
const AHEAD = { nightly: 2, weekly: 7 } as const;
/** Lines said at once, and words they may come to: some 45 seconds at 175 words a minute, less the rest. */
const MOST_LINES = 5;
/** Things to throw out that are named at once. */
const MOST_THROWN = 4;
const MOST_WORDS = 95;
/** Names of one kind in the weekly summary; the others wait for "more". */
const MOST_WEEKLY = 3;

type Deed =
  'throw-out' | 'chill' | 'cook-through' | 'cook-or-freeze' | 'freeze-or-cook' | 'use-or-freeze' | 'use';

/**
 * Whether freezing is worth naming: it comes from the fridge, was not thawed, and a chart has a
 * freezer time for it. The chart asked is the American one everywhere: the British give no times
 * for the freezer, and this only asks which foods freeze well, not for how long.
 */
const freezes = ({ item, assessment }: Ranked, clock: Clock): boolean => {
  const { where, clock: past, match } = assessment;
  if (where !== 'fridge' || past.phase === 'thawed' || past.phase === 'out') return false;
  return (
    guidanceFor({ food: item.name, where: 'freezer', region: 'us', state: match.state, clock }).verdict ===
    'how-long'
  );
};

/** What to do about one item; null when it can wait. */
const deedFor = (ranked: Ranked, ahead: number, clock: Clock): Deed | null => {
  const { verdict, daysLeft } = ranked.assessment;
  if (verdict === 'throw-out') return 'throw-out';
  if (verdict === 'refrigerate-now') return 'chill';
  if (verdict === 'cook-thoroughly') return 'cook-through';
  if (verdict !== 'last-day' && verdict !== 'use-soon') return null;
  if (daysLeft === null || daysLeft > ahead) return null;
  if (!freezes(ranked, clock)) return 'use';
  return daysLeft <= 0 ? 'cook-or-freeze' : daysLeft === 1 ? 'freeze-or-cook' : 'use-or-freeze';
};

const URGENCY: readonly Deed[] = ['throw-out', 'chill', 'cook-or-freeze', 'cook-through', 'freeze-or-cook'];
const urgency = ({ deed, ranked }: { deed: Deed; ranked: Ranked }): number => {
  if (deed === 'use') return 2 + Math.max(0, ranked.assessment.daysLeft ?? 0) * 2;
  const place = URGENCY.indexOf(deed);
  return place >= 0 ? place : 4 + (ranked.assessment.daysLeft ?? 0);
};

/** Raw meat, fish and eggs are cooked, cooked food is eaten, the rest (milk, juice) is used. */
const verbFor = ({ assessment: { match, hazard } }: Ranked): string =>
  match.state === 'cooked' ? 'eat' : match.state === 'raw' && hazard === 'high' ? 'cook' : 'use';

/** Who of those who eat here must not have it, as far as the record says. */
const notFor = (kitchen: Kitchen, items: readonly Item[]): { people: string[]; allergens: string[] } => {
  const contained = new Map(
    items.flatMap((item) => item.contains.map((word) => [foodKey(word), word] as const)),
  );
  const people: string[] = [];
  const allergens = new Set<string>();
  for (const person of kitchen.people.values()) {
    if (!person.eatsHere) continue;
    const met = person.allergens.flatMap((word) => contained.get(foodKey(word)) ?? []);
    if (met.length > 0) people.push(person.name);
    for (const word of met) allergens.add(word);
  }
  return { people, allergens: [...allergens] };
};

interface Line {
  readonly say: Say;
  readonly caution: Say | null;
  readonly items: readonly Item[];
  readonly words: number;
}

const countWords = (text: string): number => text.split(/\s+/).filter(Boolean).length;

const lineFor = (kitchen: Kitchen, deed: Deed, ranked: readonly Ranked[]): Line => {
  const first = ranked[0]!;
  const items = ranked.map((one) => one.item);
  // Like with like only when they lie together; else the name alone stands for all of them.
  const groups = grouped(kitchen, items);
  const name: Value = groups.length === 1 ? groupName(groups[0]!) : first.item.name;
  const places = [...new Set(items.map((item) => item.placeId))];
  const place =
    places.length === 1 && first.item.placeId !== null ? placeNoun(kitchen, first.item.placeId) : null;
  const { people, allergens } = notFor(kitchen, items);
  const { lastDay, daysLeft } = first.assessment;
  return {
    say: say(`summary-${deed}`, {
      item: name,
      verb: verbFor(first),
      ...(place ? { place } : {}),
      ...(daysLeft !== null && daysLeft <= 0 ? { tonight: 'yes' } : {}),
      ...(lastDay !== null ? { day: { kind: 'date', day: lastDay } } : {}),
    }),
    caution:
      people.length === 0 || deed === 'throw-out'
        ? null
        : say('summary-not-for', { item: name, people: list(people, true), allergens: list(allergens) }),
    items,
    words:
      10 +
      countWords(first.item.name) +
      (place
        ? pathOf(kitchen, first.item.placeId).reduce((sum, one) => sum + countWords(one.name) + 2, 0)
        : 0) +
      (people.length === 0 ? 0 : 4 + countWords([...people, ...allergens].join(' '))),
  };
};

const thrown = (kitchen: Kitchen, of: readonly (readonly Ranked[])[]): Value[] =>
  of.map((ranked) => {
    const { item } = ranked[0]!;
    return say('summary-thrown', { item: item.name, place: placeNoun(kitchen, item.placeId) });
  });

/** The first few, and how many more: "ham, rice, and three more". */
const firstFew = (of: readonly Value[], most: number): Value =>
  of.length <= most
    ? list(of)
    : list([...of.slice(0, most), say('summary-others', { count: of.length - most })]);

/** What is to be thrown out: one by its place and day; several in one breath, so that what can be saved is heard. */
const throwLines = (kitchen: Kitchen, of: readonly (readonly Ranked[])[]): Line[] => {
  const [first] = of;
  if (first === undefined) return [];
  if (of.length === 1) return [lineFor(kitchen, 'throw-out', first)];
  return [
    {
      say: say('summary-throw-many', {
        count: of.length,
        items: firstFew(thrown(kitchen, of), MOST_THROWN),
      }),
      caution: null,
      items: of.flat().map(({ item }) => item),
      words: 8 + of.slice(0, MOST_THROWN).reduce((sum, [one]) => sum + countWords(one!.item.name), 0),
    },
  ];
};

/** The ones that were not named, a few at a time. */
const thrownMore = (kitchen: Kitchen, of: readonly (readonly Ranked[])[]): Say[] => {
  const parts: Say[] = [];
  for (let from = MOST_THROWN; from < of.length; from += MOST_THROWN)
    parts.push(
      say('summary-throw-rest', { items: list(thrown(kitchen, of.slice(from, from + MOST_THROWN))) }),
    );
  return parts;
};

/** What is only said once a week: things past their best in the freezer, and things without a date. */
const weeklyParts = (
  ranked: readonly Ranked[],
): { readonly parts: readonly Say[]; readonly more: readonly Say[] } => {
  const names = (of: readonly Ranked[]): string[] => [...new Set(of.map(({ item }) => item.name))];
  const stale = names(ranked.filter(({ assessment }) => assessment.verdict === 'past-best-quality'));
  const undated = names(
    ranked.filter(({ assessment }) => assessment.verdict === 'unknown' && assessment.where === 'fridge'),
  );
  const told = [
    { phrase: 'summary-stale', of: stale },
    { phrase: 'summary-undated', of: undated },
  ];
  return {
    parts: told.flatMap(({ phrase, of }) =>
      of.length === 0 ? [] : [say(phrase, { items: firstFew(of, MOST_WEEKLY), count: of.length })],
    ),
    more: told.flatMap(({ phrase, of }) => {
      const left = of.slice(MOST_WEEKLY);
      return left.length === 0 ? [] : [say(phrase, { items: list(left), count: left.length })];
    }),
  };
};

/**
 * What to tell the household tonight. Pure.
 *
 * @param ranked everything that is there, assessed; in any order
 */
export const nightlySummary = (
  kitchen: Kitchen,
  ranked: readonly Ranked[],
  clock: Clock,
  { weekly = false, asked = false, lateSince }: SummaryOptions = {},
): Summary => {
  const ahead = weekly ? AHEAD.weekly : AHEAD.nightly;
  const wanted = ranked
    .flatMap((one) => {
      const deed = deedFor(one, ahead, clock);
      return deed === null ? [] : [{ deed, ranked: one }];
    })
    .sort((a, b) => urgency(a) - urgency(b));

  const together = new Map<string, { deed: Deed; ranked: Ranked[] }>();
  for (const { deed, ranked: one } of wanted) {
    const key = [deed, one.item.name, deed === 'throw-out' ? '' : one.assessment.lastDay].join('|');
    const same = together.get(key);
    if (same) same.ranked.push(one);
    else together.set(key, { deed, ranked: [one] });
  }
  const all = [...together.values()];
  const toThrow = all.filter(({ deed }) => deed === 'throw-out').map(({ ranked: of }) => of);
  const lines = [
    ...throwLines(kitchen, toThrow),
    ...all
      .filter(({ deed }) => deed !== 'throw-out')
      .map(({ deed, ranked: of }) => lineFor(kitchen, deed, of)),
  ];
  const toUse = lines.length - Math.min(1, toThrow.length);

  let words = 0;
  let said = 0;
  while (
    said < lines.length &&
    said < MOST_LINES &&
    (said === 0 || words + (lines[said]?.words ?? 0) <= MOST_WORDS)
  )
    words += lines[said++]!.words;
  const spoken = lines.slice(0, said);
  const rest = lines.slice(said);

  const late: Say[] =
    lateSince === undefined ? [] : [say('summary-late', { at: { kind: 'time', at: lateSince } })];
  const span = weekly ? 'week' : 'night';
  const { parts: extra, more: extraMore } = weekly ? weeklyParts(ranked) : { parts: [], more: [] };
  const about = [
    ...all.filter(({ deed }) => deed !== 'throw-out'),
    ...all.filter(({ deed }) => deed === 'throw-out'),
  ].map(({ ranked: of }) => of.map(({ item }) => item.id));
  if (lines.length === 0)
    return {
      answer: {
        parts: [...late, ...(extra.length > 0 ? extra : [say('summary-nothing', { span })])],
        ...(extraMore.length > 0 ? { more: extraMore } : {}),
      },
      about: [],
      counted: [],
    };
  const parts: Say[] = [
    ...late,
    ...spoken.flatMap((line, i) => [
      // Counted before they begin, which is after what is to be thrown out.
      ...(toUse > 1 && i === Math.min(1, toThrow.length)
        ? [say('summary-lead', { count: toUse, span })]
        : []),
      line.say,
      ...(line.caution ? [line.caution] : []),
    ]),
    ...(rest.length > 0 && !asked ? [say('summary-rest', { count: rest.length })] : []),
    ...extra,
    ...(rest.length > 0 && asked ? [say('list-more', { left: rest.length })] : []),
  ];
  const more = [
    ...thrownMore(kitchen, toThrow),
    ...rest.flatMap((line) => [line.say, ...(line.caution ? [line.caution] : [])]),
    ...extraMore,
  ];
  // Where a count is said before what can be used, that begins the count; else the line before it does.
  const counted = toThrow.length === 1 && toUse <= 1 ? about.toReversed() : about;
  return { answer: { parts, ...(more.length > 0 ? { more } : {}) }, about, counted };
};
