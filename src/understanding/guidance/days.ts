/** Days that were told, each with what was done on it. */
import { plusDays, plusMonths, today } from '../../terms/dates.js';
import { asDate, asNumber } from '../meaning-parts.js';
import type { SaidDate } from '../intents.js';
import { agesOfPeople } from './at-risk.js';
import type { GuidanceFacts } from './facts.js';
import { spansIn } from './figures.js';
import { isWord, spotsOf, type Sentence } from './sentence.js';
import { matchesIn, type Match } from './spots.js';

const kinds = ['made', 'bought', 'opened', 'frozen', 'thawed'] as const;
type Dates = { -readonly [K in keyof GuidanceFacts['dates']]: GuidanceFacts['dates'][K] };

const aDay = 86_400;

/** "Three days past its best before". */
const pastLabels = (
  sentence: Sentence,
  spans: readonly Match[],
): readonly { readonly span: Match; readonly kind: keyof Dates }[] =>
  spans.flatMap((span) => {
    const past = spotsOf(sentence, 'pastof').find(({ from }) => from === span.to);
    const label = past
      ? (spotsOf(sentence, 'label').find(({ from }) => from >= past.to && from - past.to <= 1) ??
        // "Two years past the date": of what kind nobody said, so that it is taken for the strictest.
        (isWord(sentence, 'dateword', sentence.tokens[past.to]) ? { value: 'useBy' } : undefined))
      : // "Past its use by by two days".
        spotsOf(sentence, 'label').find(
          ({ from, to }) =>
            to <= span.from &&
            span.from - to <= 2 &&
            spotsOf(sentence, 'pastof').some((one) => one.to <= from),
        );
    return label ? [{ span, kind: label.value as keyof Dates }] : [];
  });

const isPast = (sentence: Sentence, { from, to }: Match): boolean => {
  const before = spotsOf(sentence, 'fromday').some((one) => one.to === from || one.from === from);
  return (
    before ||
    isWord(sentence, 'agoold', sentence.tokens[to - 1]) ||
    isWord(sentence, 'agoold', sentence.tokens[to])
  );
};

/** "Two years past its date": months and years, as days of the calendar. */
const pastMonths = (sentence: Sentence): readonly { readonly span: Match; readonly day: string }[] =>
  matchesIn(sentence.tokens, sentence.rules, 'builtin:grammar/number').flatMap((number) => {
    const unit = spotsOf(sentence, 'spanmonths').find(({ from }) => from === number.to);
    return unit && typeof number.value === 'number'
      ? [
          {
            span: { ...number, to: unit.to },
            day: plusMonths(today(sentence.clock), -number.value * Number(unit.value)),
          },
        ]
      : [];
  });

/** "For three months": days of the calendar, not of seconds. */
const monthsIn = (
  sentence: Sentence,
  taken: readonly Match[],
): { readonly day: string; readonly of: Match } | null => {
  for (const number of matchesIn(sentence.tokens, sentence.rules, 'builtin:grammar/number')) {
    const { to, value } = number;
    const unit = spotsOf(sentence, 'spanmonths').find(({ from }) => from === to);
    if (!unit || typeof value !== 'number' || taken.some((one) => one.from < unit.to && number.from < one.to))
      continue;
    const months = value * Number(unit.value);
    return { day: plusMonths(today(sentence.clock), -months), of: { ...number, to: unit.to } };
  }
  return null;
};

/** "A week ago Monday": the Monday on or before that day, and not the last one. */
const saidOf = (sentence: Sentence, read: Match): SaidDate => {
  const said = asDate(read.value);
  if (!isWord(sentence, 'agoold', sentence.tokens[read.to - 1])) return said;
  const day = matchesIn(sentence.tokens, sentence.rules, 'builtin:grammar/date?lean=past').find(
    ({ from }) => from === read.to,
  );
  if (!day) return said;
  let named = asDate(day.value).day;
  while (named > said.day) named = plusDays(named, -7);
  return { day: named };
};

/** Each date with what was done that day: the nearest deed before it, else the nearest after. */
export const datesIn = (
  sentence: Sentence,
): { readonly dates: Dates; readonly when: SaidDate | null; readonly taken: readonly Match[] } => {
  const { tokens, rules } = sentence;
  const deeds = [
    ...spotsOf(sentence, 'did').map(({ value, from, to }) => ({ kind: value, from, to })),
    ...spotsOf(sentence, 'label').map(({ value, from, to }) => ({ kind: value, from, to })),
  ];
  const dates: Dates = {};
  let when: SaidDate | null = null;
  const taken: Match[] = [];
  const spans = spansIn(sentence);
  for (const { span, day } of pastMonths(sentence)) {
    const [label] = pastLabels(sentence, [span]);
    if (!label) continue;
    dates[label.kind] ??= { day };
    taken.push(span);
  }
  for (const { span, kind } of pastLabels(sentence, spans)) {
    if (taken.some((one) => one.from < span.to && span.from < one.to)) continue;
    dates[kind] ??= {
      day: plusDays(today(sentence.clock), -Math.round(asNumber(span.value, 'span') / aDay)),
    };
    taken.push(span);
  }
  for (const { from, to, weight } of matchesIn(tokens, rules, 'builtin:grammar/date?lean=past')) {
    if (weight < 0.5 && to - from < 2) continue;
    if (taken.some((one) => one.from < to && from < one.to)) continue;
    // The weekday of "a week ago Monday" is told with the week.
    if (taken.some((one) => one.to === from && isWord(sentence, 'agoold', tokens[from - 1]))) continue;
    // "Nine hours ago" is nine hours, and no day.
    if (spans.some((one) => one.from < to && from < one.to && asNumber(one.value, 'span') < 2 * aDay))
      continue;
    const before = deeds.filter((one) => one.to <= from && from - one.to <= 8).at(-1);
    const after = deeds.find((one) => one.from >= to && one.from - to <= 5);
    const deed = (before ?? after)?.kind;
    // "I've got it on the counter since Sunday": what is had since a day was not bought on it.
    const since = spotsOf(sentence, 'fromday').some((one) => one.to === from || one.from === from);
    const kind = since && deed === 'bought' ? undefined : deed;
    const printed = kind === 'useBy' || kind === 'bestBefore' || kind === 'sellBy';
    const [read] = matchesIn(
      tokens,
      rules,
      // "Use by the twenty-sixth", said the day after, is yesterday.
      printed ? 'builtin:grammar/date' : 'builtin:grammar/date?lean=past',
    ).filter((one) => one.from <= from && one.to >= to);
    if (!read) continue;
    const said = saidOf(sentence, read);
    taken.push(read);
    if (kind && (printed || kinds.some((one) => one === kind))) dates[kind as keyof Dates] ??= said;
    // "From Sunday", "since the first", "six days ago": how old it is. Any other day is one it may be asked for.
    else if (isPast(sentence, read)) when ??= said;
  }
  const months = when === null && agesOfPeople(sentence).length === 0 ? monthsIn(sentence, taken) : null;
  if (months) {
    when = { day: months.day };
    taken.push(months.of);
  }
  return { dates, when, taken };
};
