/** What guidance says of a food where nobody said where it is: each place has its own answer, and none is taken for granted. */
import type { Assessment, GuidanceQuestion, Reason, Where } from '../../safety/api.js';
import { guidanceFor, keptSealed, keptWithoutCold, leftOut } from '../../safety/index.js';
import type { Say } from '../../speech/answer.js';
import { reasonsOf, sourcesOf, spanWords, verdictWords } from '../describe/guidance.js';
import { day, list, say, seconds } from '../handler.js';
import { fromNow } from '../timers/wall-time.js';

export type Placeless = Omit<GuidanceQuestion, 'where'>;

interface Told {
  readonly parts: readonly Say[];
  readonly details: readonly Say[];
  readonly sources: readonly Say[];
  /** What the figures of the coldest room it is eaten from rest on: its cautions are told with any place. */
  readonly found: Assessment;
  /** An age was told, and in some place something else than throwing it out comes of it. */
  readonly leave: boolean;
}

const hoursPerDay = 24;

/** Places where such food is kept: what has thawed is back in no freezer, and only what needs no cold is on a shelf. */
const placesFor = ({ food, thawed }: Placeless): readonly Where[] => [
  ...(keptWithoutCold(food) ? (['pantry'] as const) : []),
  'fridge',
  ...(thawed ? [] : (['freezer'] as const)),
];

const out = (question: Placeless, hours: number | null) =>
  leftOut({
    food: question.food,
    since: hours === null ? null : fromNow(question.clock, -hours * 3600),
    clock: question.clock,
    region: question.region,
    state: question.state ?? null,
  });

const aged = ({ days, hours, dates }: Placeless): boolean =>
  (days ?? hours ?? null) !== null || Object.keys(dates ?? {}).length > 0;

/** "One to two days in the fridge, nine months frozen, two hours out." */
const spans = (question: Placeless, found: readonly Assessment[], coldOnly: boolean): Told | null => {
  // Where something is known of its age, that has a verdict, and how long such food keeps is none.
  if (found.some(({ verdict }) => verdict !== 'how-long' && aged(question))) return null;
  const dated = found.filter(
    ({ row, reasons }) => row?.limit && reasons.some(({ code }) => code === 'keeps'),
  );
  const [first] = dated;
  if (!first) return null;
  const atRoom = out(question, null);
  const entries = [
    ...dated.map(({ row, where }) =>
      say('keeps-at', { where: where ?? 'fridge', kind: row!.kind, span: spanWords(row!.limit!) }),
    ),
    ...(atRoom.verdict === 'no-figure' || coldOnly
      ? []
      : [say('keeps-at', { where: 'counter', kind: 'keeping', span: seconds(atRoom.limitMinutes * 60) })]),
  ];
  return {
    parts: [
      say('keeps-each', {
        food: question.food,
        listed: first.match.notes.includes('not-in-table') ? 'no' : 'yes',
        spans: list(entries),
      }),
      ...(dated.some(({ match }) => match.notes.includes('raw-assumed')) ? [say('taken-as-raw')] : []),
      ...(question.opened !== true && !coldOnly && keptSealed(question.food) ? [say('keeps-sealed')] : []),
    ],
    details: notesOf(dated, (code) => code !== 'keeps'),
    sources: sourcesOf([...dated.flatMap(({ reasons }) => reasons), ...atRoom.reasons]),
    found: first,
    leave: false,
  };
};

const notesOf = (found: readonly Assessment[], keep: (code: Reason['code']) => boolean): Say[] => {
  const all = found.flatMap((one) => {
    const told = reasonsOf({ ...one, reasons: one.reasons.filter(({ code }) => keep(code)) });
    return [...told.first, ...told.rest];
  });
  return [...new Map(all.map((one) => [JSON.stringify(one), one])).values()];
};

/** "Rice in the fridge or left out: past guidance, throw it out. Frozen: past its best for taste." */
const verdicts = (question: Placeless, found: readonly Assessment[], hours: number | null): Told => {
  const atRoom = hours === null ? null : out(question, hours);
  const all = [
    ...found.map((one) => ({
      where: one.where ?? 'fridge',
      verdict: one.verdict,
      last: one.verdict === 'throw-out' ? null : one.lastDay,
    })),
    ...(atRoom && atRoom.verdict !== 'no-figure'
      ? [{ where: 'counter' as const, verdict: atRoom.verdict, last: null }]
      : []),
  ];
  const keyOf = ({ verdict, last }: (typeof all)[number]): string => `${verdict} ${last ?? ''}`;
  const groups = [...new Set(all.map(keyOf))].map((key) => all.filter((one) => keyOf(one) === key));
  const details = notesOf(found, () => true);
  const sources = sourcesOf([...found.flatMap(({ reasons }) => reasons), ...(atRoom?.reasons ?? [])]);
  const leave = all.some(({ verdict }) => verdict !== 'throw-out');
  // Alike wherever it is: the place goes unsaid.
  if (groups.length === 1)
    return { parts: [verdictWords(found[0]!, question.food)], details, sources, found: found[0]!, leave };
  const entries = groups.map((group, at) => {
    const [{ verdict, last }] = group as [(typeof all)[number]];
    const places = list(
      // Frozen since a day nobody told, it may have been in the fridge before: only all along is that so.
      group.map(({ where }) => say('kept-at', { where })),
      true,
    );
    return say('list-entry', {
      entry: say('verdict-entry', {
        name: at === 0 ? say('food-stored-at', { food: question.food, places }) : places,
        verdict,
        ...(last ? { last: day(last) } : {}),
      }),
    });
  });
  return { parts: entries, details, sources, found: found[0]!, leave };
};

/**
 * Every place's answer: how long it keeps there, or, where an age was told, what comes of it there.
 * `coldOnly`: of fridge and freezer alone, where only these were asked about.
 */
export const inEachPlace = (question: Placeless, { coldOnly = false } = {}): Told => {
  const places = placesFor(question).filter((where) => !coldOnly || where !== 'pantry');
  const all = places.map((where) => guidanceFor({ ...question, where }));
  const judged = all.filter(({ verdict }) => verdict !== 'how-long');
  const found = aged(question) && judged.length > 0 ? judged : all;
  const hours =
    question.hours ??
    (question.days === null || question.days === undefined ? null : question.days * hoursPerDay);
  return spans(question, found, coldOnly) ?? verdicts(question, found, hours);
};
