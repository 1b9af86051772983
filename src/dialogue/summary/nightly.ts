/**
 * The nightly and the weekly summary: what to use up, most urgent first, and what to do with it.
 * Held to what can be said within 45 seconds; the rest waits for "more".
 */
import { pathOf } from '../../kitchen/index.js';
import type { Id, Item, Kitchen } from '../../kitchen/model.js';
import type { Assessment, RankedItem } from '../../safety/api.js';
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
    'verdict' | 'lastDay' | 'daysLeft' | 'where' | 'clock' | 'match' | 'reasons'
  >;
}
// A change of the safety room's shape that the summary cannot follow is found by the compiler here.
const fits = (ranked: RankedItem): Ranked => ranked;
void fits;

export interface Summary {
  readonly answer: Answer;
  /** The items in the order they are spoken of, so that "it" and "the second" mean something after it. */
  readonly about: readonly Id[];
}

export interface SummaryOptions {
  /** Looks a week ahead, and at what has no date or is past its best in the freezer. */
  readonly weekly?: boolean;
  /** The moment it should have been told, when it comes late. */
  readonly lateSince?: string;
}

/** Days ahead that are looked at. */
const AHEAD = { nightly: 2, weekly: 7 } as const;
/** Lines said at once, and words they may come to: some 45 seconds at 175 words a minute, less the rest. */
const MOST_LINES = 5;
const MOST_WORDS = 95;

type Deed =
  'throw-out' | 'chill' | 'cook-through' | 'cook-or-freeze' | 'freeze-or-cook' | 'use-or-freeze' | 'use';

/** What to do about one item; null when it can wait. */
const deedFor = ({ assessment }: Ranked, ahead: number): Deed | null => {
  const { verdict, daysLeft, where, clock, reasons } = assessment;
  if (verdict === 'throw-out') return 'throw-out';
  if (verdict === 'refrigerate-now') return 'chill';
  if (verdict === 'cook-thoroughly') return 'cook-through';
  if (verdict !== 'last-day' && verdict !== 'use-soon') return null;
  if (daysLeft === null || daysLeft > ahead) return null;
  const thawed = clock.phase === 'thawed' || clock.phase === 'out';
  const freezable =
    where === 'fridge' && !thawed && !reasons.some((reason) => reason.code === 'not-for-freezing');
  if (!freezable) return 'use';
  return daysLeft <= 0 ? 'cook-or-freeze' : daysLeft === 1 ? 'freeze-or-cook' : 'use-or-freeze';
};

const URGENCY: readonly Deed[] = ['throw-out', 'chill', 'cook-or-freeze', 'cook-through', 'freeze-or-cook'];
const urgency = ({ deed, ranked }: { deed: Deed; ranked: Ranked }): number => {
  if (deed === 'use') return 2 + Math.max(0, ranked.assessment.daysLeft ?? 0) * 2;
  const place = URGENCY.indexOf(deed);
  return place >= 0 ? place : 4 + (ranked.assessment.daysLeft ?? 0);
};

const isRaw = ({ assessment }: Ranked): boolean =>
  assessment.match.state === 'raw' || assessment.reasons.some((reason) => reason.code === 'raw-assumed');

const plain = (word: string): string => word.trim().toLowerCase().replace(/s$/, '');

/** Who of those who eat here must not have it, as far as the record says. */
const notFor = (kitchen: Kitchen, items: readonly Item[]): { people: string[]; allergens: string[] } => {
  const contained = new Map(
    items.flatMap((item) => item.contains.map((word) => [plain(word), word] as const)),
  );
  const people: string[] = [];
  const allergens = new Set<string>();
  for (const person of kitchen.people.values()) {
    if (!person.eatsHere) continue;
    const met = person.allergens.flatMap((word) => contained.get(plain(word)) ?? []);
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
  const groups = grouped(items);
  const name: Value = groups.length === 1 ? groupName(groups[0]!) : first.item.name;
  const places = [...new Set(items.map((item) => item.placeId))];
  const place =
    places.length === 1 && first.item.placeId !== null ? placeNoun(kitchen, first.item.placeId) : null;
  const { people, allergens } = notFor(kitchen, items);
  const { lastDay, daysLeft } = first.assessment;
  return {
    say: say(`summary-${deed}`, {
      item: name,
      verb: isRaw(first) ? 'cook' : 'eat',
      ...(place ? { place } : {}),
      ...(daysLeft !== null && daysLeft <= 0 ? { tonight: 'yes' } : {}),
      ...(lastDay !== null ? { day: { kind: 'date', day: lastDay } } : {}),
    }),
    caution:
      people.length === 0
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

/** What is only said once a week: things past their best in the freezer, and things without a date. */
const weeklyParts = (ranked: readonly Ranked[]): Say[] => {
  const names = (of: readonly Ranked[]): string[] => [...new Set(of.map(({ item }) => item.name))];
  const stale = names(ranked.filter(({ assessment }) => assessment.verdict === 'past-best-quality'));
  const undated = names(
    ranked.filter(({ assessment }) => assessment.verdict === 'unknown' && assessment.where === 'fridge'),
  );
  const part = (phrase: string, of: readonly string[]): Say[] =>
    of.length === 0
      ? []
      : [say(phrase, { items: list(of.slice(0, 3)), count: of.length, more: Math.max(0, of.length - 3) })];
  return [...part('summary-stale', stale), ...part('summary-undated', undated)];
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
  { weekly = false, lateSince }: SummaryOptions = {},
): Summary => {
  const ahead = weekly ? AHEAD.weekly : AHEAD.nightly;
  const wanted = ranked
    .flatMap((one) => {
      const deed = deedFor(one, ahead);
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
  const lines = [...together.values()].map(({ deed, ranked: of }) => lineFor(kitchen, deed, of));

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
  const extra = weekly ? weeklyParts(ranked) : [];
  const about = lines.flatMap((line) => line.items.map((item) => item.id));
  if (lines.length === 0)
    return {
      answer: { parts: [...late, ...(extra.length > 0 ? extra : [say('summary-nothing', { span })])] },
      about: [],
    };
  const parts: Say[] = [
    ...late,
    ...(lines.length > 1 ? [say('summary-lead', { count: lines.length, span })] : []),
    ...spoken.flatMap((line) => [line.say, ...(line.caution ? [line.caution] : [])]),
    ...(rest.length > 0 ? [say('summary-rest', { count: rest.length })] : []),
    ...extra,
  ];
  const more = rest.flatMap((line) => [line.say, ...(line.caution ? [line.caution] : [])]);
  return { answer: { parts, ...(more.length > 0 ? { more } : {}) }, about };
};
