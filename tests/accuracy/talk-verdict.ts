/** Whether what was spoken and what is on record is what a talk item wants. Pure. */
import { foodWords, openReminders, pathOf } from '../../src/kitchen/index.js';
import type { Item, Kitchen, RecordKind } from '../../src/kitchen/model.js';
import { wallTime } from '../../src/safety/index.js';
import type { Clock } from '../../src/terms/dates.js';
import type { TurnReply } from '../../shared/wire/turn.js';
import type { TalkItem, WantedState } from './talk-items.js';

export type Verdict = 'right' | 'asked' | 'question' | 'missed' | 'wrong';

/** One turn, and the kitchen before and after it. */
export interface Heard {
  readonly reply: TurnReply;
  readonly before: Kitchen;
  readonly after: Kitchen;
}

// How far a check has come and what was heard of the news are no change to what is on record.
const ON_RECORD = [
  'people',
  'places',
  'markers',
  'items',
  'purchases',
  'notes',
  'reminders',
] as const satisfies readonly (keyof Kitchen)[];
const OF_NO_MATTER: ReadonlySet<RecordKind | string> = new Set(['heard', 'deliveredAt']);

const asText = (value: unknown): string =>
  JSON.stringify(value, (key, part: unknown) => (OF_NO_MATTER.has(key) ? undefined : part));

/** Whether anything on record is other than before. */
export const changed = ({ before, after }: Pick<Heard, 'before' | 'after'>): boolean =>
  asText(before.household) !== asText(after.household) ||
  ON_RECORD.some((kind) => asText([...before[kind]].sort()) !== asText([...after[kind]].sort()));

const words = (name: string): readonly string[] => foodWords(name);
const sameName = (a: string, b: string): boolean => words(a).join(' ') === words(b).join(' ');
const holds = (name: string, wanted: string): boolean => {
  const has = new Set(words(name));
  return words(wanted).every((word) => has.has(word));
};

/** Of that very name; where there is none, whose name holds the words. */
const named = (items: readonly Item[], wanted: string): readonly Item[] => {
  const same = items.filter(({ name }) => sameName(name, wanted));
  return same.length > 0 ? same : items.filter(({ name }) => holds(name, wanted));
};

const pathText = (kitchen: Kitchen, item: Item): string =>
  pathOf(kitchen, item.placeId)
    .map(({ name }) => name.toLowerCase())
    .join(' / ');

const within = (value: number, wanted: number | readonly [number, number]): boolean =>
  typeof wanted === 'number'
    ? Math.abs(value - wanted) < 0.01
    : value >= wanted[0] - 0.01 && value <= wanted[1] + 0.01;

const fieldText = (kitchen: Kitchen, item: Item, field: string): string => {
  switch (field) {
    case 'owner':
      return item.ownerId === null ? '' : (kitchen.people.get(item.ownerId)?.name ?? '');
    case 'marker': {
      const marker = item.markerId === null ? undefined : kitchen.markers.get(item.markerId);
      return [marker?.touch ?? {}, item.touch]
        .flatMap((touch) => Object.entries(touch).map(([part, value]) => `${value} ${part}`))
        .join(', ');
    }
    default: {
      const value = item[field as 'maker' | 'notes' | 'cautions' | 'contains' | 'diets' | 'name'];
      return typeof value === 'string' ? value : (value ?? []).join(', ');
    }
  }
};

const stateHolds = (wanted: WantedState, heard: Heard, clock: Clock): boolean => {
  const { after } = heard;
  const items = [...after.items.values()];
  const living = items.filter(({ gone }) => gone === null);
  if ('nothing' in wanted) return !changed(heard);
  if ('gone' in wanted) {
    const gone = items.filter((item) => item.gone !== null);
    return !living.some(({ name }) => sameName(name, wanted.item)) && named(gone, wanted.item).length > 0;
  }
  if ('field' in wanted)
    return named(living, wanted.item).some((item) => wanted.has.test(fieldText(after, item, wanted.field)));
  if ('item' in wanted) {
    const { place, amount, date } = wanted;
    const there = named(living, wanted.item).filter(
      (item) =>
        (place === undefined || pathText(after, item).includes(place.toLowerCase())) &&
        (date === undefined ||
          Object.entries(date).every(([kind, day]) => item.dates[kind as keyof Item['dates']] === day)),
    );
    if (there.length === 0 || amount === undefined) return there.length > 0;
    const values = there.map((item) => item.amount?.value ?? 0);
    return [...values, values.reduce((sum, value) => sum + value, 0)].some((value) => within(value, amount));
  }
  if ('list' in wanted)
    return [...after.purchases.values()].some(({ name }) => holds(name, wanted.list)) === wanted.on;
  const open = openReminders(after);
  if ('timer' in wanted)
    return open.some(
      ({ kind, due }) =>
        kind === 'timer' && Math.abs(Date.parse(due) - Date.parse(clock.now) - wanted.timer * 60_000) < 1000,
    );
  const [day = '', time = ''] = wanted.due.split('T');
  return open.some(
    ({ label, due }) =>
      (label ?? '').toLowerCase().includes(wanted.reminder.toLowerCase()) &&
      Date.parse(due) === Date.parse(wallTime(day, time, clock.timeZone)),
  );
};

/** What is wanted and is not so, in words; empty when all is as wanted. */
export const lacks = (
  want: TalkItem['want'],
  heard: Heard,
  spoken: string,
  clock: Clock,
): readonly string[] => [
  ...want.answer.filter((one) => !one.test(spoken)).map((one) => `not said: ${one.source}`),
  ...want.not.filter((one) => one.test(spoken)).map((one) => `said: ${one.source}`),
  ...want.state
    .filter((one) => !stateHolds(one, heard, clock))
    .map(
      (one) =>
        `not on record: ${JSON.stringify(one, (_, value: unknown) => (value instanceof RegExp ? value.source : value))}`,
    ),
];

const NOT_HEARD: ReadonlySet<TurnReply['understood']['verdict']> = new Set([
  'ask-again',
  'out-of-scope',
  'nothing-heard',
]);

export const asks = ({ speech, expects }: TurnReply): boolean =>
  speech.text.includes('?') || expects.kind === 'yes-no' || expects.kind === 'choice';

/** Why it was not right, by what was answered: a question that changed nothing, nothing understood, or wrong. */
export const otherThanRight = (heard: Heard): Verdict => {
  const { reply } = heard;
  if (changed(heard)) return 'wrong';
  if (NOT_HEARD.has(reply.understood.verdict)) return 'missed';
  return asks(reply) ? 'question' : 'wrong';
};
