/** After a power cut, as steps: place by place, what spoils first. */
import type { PowerCutReport, PowerItem } from '../../safety/api.js';
import type { Id, Kitchen } from '../../kitchen/model.js';
import { placeAt } from '../describe/place.js';
import { groupSize } from '../describe/lists.js';
import { list, say } from '../handler.js';
import type { Procedure, Step } from '../state.js';

/** What something is to be done about, worst first; what may be kept is no step. */
const acted = ['discard', 'discard-in-doubt', 'check', 'use-now', 'refreeze'] as const;
type Acted = (typeof acted)[number];

const actOf = ({ verdict }: PowerItem): Acted | null =>
  verdict === 'refreeze-with-loss' ? 'refreeze' : (acted.find((one) => one === verdict) ?? null);

const byPlace = (kitchen: Kitchen, items: readonly PowerItem[]): ReadonlyMap<Id | null, PowerItem[]> => {
  const order = [...kitchen.places.keys()];
  const found = new Map<Id | null, PowerItem[]>();
  for (const one of items) {
    const placeId = (one.itemId === null ? null : kitchen.items.get(one.itemId)?.placeId) ?? null;
    found.set(placeId, [...(found.get(placeId) ?? []), one]);
  }
  return new Map([...found].sort(([a], [b]) => order.indexOf(a ?? '') - order.indexOf(b ?? '')));
};

const stepOf = (kitchen: Kitchen, act: Acted, placeId: Id | null, items: readonly PowerItem[]): Step => ({
  text: say('power-step', {
    verdict: act,
    at: placeAt(kitchen, placeId),
    items: list([...new Set(items.map(({ name }) => name))]),
  }),
  code: `power-${act}`,
  ...(placeId && kitchen.places.has(placeId) ? { own: kitchen.places.get(placeId)!.name } : {}),
  items: items.flatMap(({ itemId }) => itemId ?? []),
});

/** Null when everything may be kept. */
export const powerSteps = (kitchen: Kitchen, report: PowerCutReport): Procedure | null => {
  const steps = acted.flatMap((act) =>
    [
      ...byPlace(
        kitchen,
        report.items.filter((item) => actOf(item) === act),
      ),
    ].flatMap(([placeId, items]) => {
      const groups: Step[] = [];
      for (let at = 0; at < items.length; at += groupSize)
        groups.push(stepOf(kitchen, act, placeId, items.slice(at, at + groupSize)));
      return groups;
    }),
  );
  const [first, ...rest] = steps;
  if (!first) return null;
  const kept = [...new Set(report.items.filter((item) => actOf(item) === null).map(({ name }) => name))];
  const keep: readonly Step[] =
    kept.length === 0
      ? []
      : [
          {
            text: say('power-keep', {
              count: kept.length,
              items: list(kept.slice(0, groupSize)),
              left: Math.max(0, kept.length - groupSize),
            }),
          },
        ];
  return {
    kind: 'power-back',
    title: say('power-back-title'),
    itemId: null,
    steps: [{ ...first, caution: say('step-never-taste') }, ...rest, ...keep],
    at: 0,
    paused: false,
  };
};

/** How many things are to be thrown out, by name as the record has them. */
export const thrownOut = ({ items }: PowerCutReport): number =>
  items.filter((item) => actOf(item)?.startsWith('discard')).length;
