/** Plays the histories of `tests/data/guidance/histories.md`: each step is a change to a kitchen, as anybody makes it. */
import { readFileSync } from 'node:fs';
import {
  applyChange,
  buildPlaces,
  emptyKitchen,
  freeze,
  isRefused,
  merge,
  open,
  putAway,
  putBack,
  reheated,
  split,
  takeOut,
  tellPowerCut,
  thaw,
  type Doing,
  type Item,
  type Kitchen,
  type PowerCut,
  type Result,
} from '../../src/kitchen/index.js';
import { projectFile } from '../../src/project-files.js';
import { assessIn, cameOf, powerCut, questionOf, wallTime } from '../../src/safety/index.js';
import type { Assessment } from '../../src/safety/api.js';

export interface History {
  readonly no: string;
  readonly food: string;
  readonly through: readonly string[];
  readonly asked: string;
  readonly verdict: string;
  readonly lastDay: string;
}

export const histories = (): readonly History[] =>
  readFileSync(projectFile('tests', 'data', 'guidance', 'histories.md'), 'utf8')
    .split('\n')
    .filter((line) => /^\| \d/u.test(line))
    .map((line) => line.split('|').map((cell) => cell.trim()))
    .map(([, no = '', food = '', through = '', asked = '', verdict = '', lastDay = '']) => ({
      no,
      food,
      through: through.split(', '),
      asked,
      verdict,
      lastDay,
    }));

const ZONE = 'America/Chicago';
const MONTHS = { Jan: '2027-01', Jun: '2026-06', Nov: '2026-11', Dec: '2026-12' } as const;

/** "21 12:00", "10 Dec" as a day and a time. */
const momentOf = (text: string, usual: string): { readonly day: string; readonly at: string } => {
  const [, day, month = 'Nov', time = usual] =
    /^(\d+)(?: (Jan|Jun|Nov|Dec))?(?: (\d\d:\d\d))?$/u.exec(text) ?? [];
  if (day === undefined) throw new Error(`"${text}" is no moment`);
  const on = `${MONTHS[month as keyof typeof MONTHS]}-${day.padStart(2, '0')}`;
  return { day: on, at: wallTime(on, time, ZONE) };
};

export const dayOf = (text: string): string => momentOf(text, '12:00').day;

const VERDICTS: Readonly<Record<Assessment['verdict'], string>> = {
  fine: 'fine',
  'use-soon': 'use it up',
  'last-day': 'last day',
  'throw-out': 'throw out',
  'refrigerate-now': 'fridge now',
  'cook-thoroughly': 'cook through',
  'past-best-quality': 'past best',
  unknown: 'not known',
  'no-figure': 'no figure',
  'how-long': 'how long',
};

/** What the gate says of it once it has been through all of that. */
export const played = ({ food, through, asked }: History): { verdict: string; lastDay: string | null } => {
  let ids = 0;
  let kitchen: Kitchen = emptyKitchen({
    id: 'histories',
    name: 'A kitchen',
    timeZone: ZONE,
    locale: 'en-US',
    region: through[0] === 'in the UK' ? 'uk' : 'us',
    measures: 'us',
    microwaveWatts: null,
    summaryAt: null,
    quietHours: null,
    dotMeanings: {},
  });
  const doing = (now: string): Doing => ({
    kitchen,
    clock: { now, timeZone: ZONE },
    speaker: { personId: null },
    newId: () => `id${(ids += 1)}`,
  });
  const change = (now: string, build: (doing: Doing) => Result): void => {
    const result = build(doing(now));
    if (isRefused(result)) throw new Error(JSON.stringify(result));
    kitchen = applyChange(kitchen, result);
  };
  const first = momentOf('1 Jun', '00:00').at;
  for (const kind of ['fridge', 'freezer', 'counter'] as const)
    change(first, (d) => buildPlaces(d, { kind, parentId: null, names: [kind] }));
  const placeId = (kind: string): string =>
    [...kitchen.places.values()].find((place) => place.kind === kind)!.id;

  /** The one that is asked of, and another of its name. */
  let it: string | null = null;
  let other: string | null = null;
  const begin = (now: string, dates: Item['dates']): string => {
    const before = new Set(kitchen.items.keys());
    change(now, (d) => putAway(d, { name: food, placeId: placeId('fridge'), dates }));
    return [...kitchen.items.keys()].find((id) => !before.has(id))!;
  };
  const step = (said: string): void => {
    const [, ofOther, what = '', when = ''] =
      /^(the other )?(made|bought|opened|use by|out in heat|out|back|frozen|thawed on the counter|thawed|heated|another made|together|in two|power cut) (.+)$/u.exec(
        said,
      ) ?? [];
    if (what === '') throw new Error(`"${said}" is no step`);
    const id = ofOther ? other : it;
    if (what === 'power cut') {
      const [, from = '', to = '', doors = ''] = /^(.+) to (.+) doors (shut|open)$/u.exec(when) ?? [];
      const cut: PowerCut = {
        id: `cut${(ids += 1)}`,
        since: momentOf(from, '12:00').at,
        backAt: momentOf(to, '12:00').at,
        doors: doors as 'shut' | 'open',
        freezerDoors: null,
        fullness: null,
        fridgeReads: null,
        placeIds: null,
        toldAt: momentOf(to, '12:00').at,
      };
      const now = momentOf(to, '12:00').at;
      const { items } = powerCut(kitchen, questionOf(cut), { now, timeZone: ZONE });
      change(now, (d) => tellPowerCut(d, cut, new Map(items.map((one) => [one.itemId!, cameOf(one)]))));
      return;
    }
    const { day, at } = momentOf(when, '18:00');
    switch (what) {
      case 'made':
      case 'bought':
        it = begin(at, { [what]: day });
        return;
      case 'another made':
        other = begin(at, { made: day });
        return;
      case 'opened':
        if (id === null) it = begin(at, { opened: day });
        else change(at, (d) => open(d, id, day));
        return;
      case 'use by': {
        const item = kitchen.items.get(id!)!;
        kitchen = {
          ...kitchen,
          items: new Map(kitchen.items).set(id!, { ...item, dates: { ...item.dates, useBy: day } }),
        };
        return;
      }
      case 'out':
      case 'out in heat':
        change(at, (d) => takeOut(d, id!, at, { hot: what === 'out in heat' }));
        return;
      case 'back':
        change(at, (d) => putBack(d, id!, { placeId: placeId('fridge') }));
        return;
      case 'frozen':
        change(at, (d) => freeze(d, id!));
        return;
      case 'thawed':
        change(at, (d) => thaw(d, id!, { placeId: placeId('fridge') }));
        return;
      case 'thawed on the counter':
        change(at, (d) => thaw(d, id!, { placeId: placeId('counter') }));
        return;
      case 'heated':
        change(at, (d) => reheated(d, id!));
        return;
      case 'together':
        change(at, (d) => merge(d, [it!, other!]));
        return;
      default: {
        const before = new Set(kitchen.items.keys());
        change(at, (d) => split(d, id!, 2));
        it = [...kitchen.items.keys()].find((one) => !before.has(one))!;
      }
    }
  };
  for (const said of through) if (said !== 'in the UK') step(said);
  const item = kitchen.items.get(it!)!;
  const found = assessIn(kitchen, item, { now: momentOf(asked, '12:00').at, timeZone: ZONE });
  return { verdict: VERDICTS[found.verdict], lastDay: found.lastDay };
};
