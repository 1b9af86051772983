/** A way of thawing as steps: one act each, with its timer where the water is to be changed. */
import { thawing } from '../../safety/index.js';
import type { ThawOption } from '../../safety/api.js';
import type { Item } from '../../kitchen/model.js';
import { sourcesOf } from '../describe/guidance.js';
import { say, seconds } from '../handler.js';
import type { Procedure, Step } from '../state.js';

/** Changes of water told one by one; a big bird's are told once. Our own choice. */
const mostChanges = 5;

const inWater = (item: Item, hours: number): readonly Step[] => {
  const { changeWaterMinutes } = thawing();
  const timer = { seconds: changeWaterMinutes * 60, label: item.name };
  const changes = Math.max(0, Math.ceil((hours * 60) / changeWaterMinutes) - 1);
  const change: Step = { text: say('thaw-step-change'), timer };
  return [
    { text: say('thaw-leak-proof-bag') },
    { text: say('thaw-step-into-water'), timer },
    ...(changes <= mostChanges
      ? Array.from({ length: changes }, () => change)
      : [{ ...change, text: say('thaw-step-change-for', { time: seconds(hours * 3600) }) }]),
    { text: say('thaw-check-thawed') },
    { text: say('thaw-cook-at-once') },
  ];
};

const inFridge = (hours: number | null, advice: ThawOption['advice']): readonly Step[] => [
  { text: say('thaw-low-shelf-on-tray') },
  ...(hours === null ? [] : [{ text: say('thaw-step-leave', { time: seconds(hours * 3600) }) }]),
  { text: say('thaw-check-thawed') },
  { text: say(advice.includes('use-within-day') ? 'thaw-use-within-day' : 'thaw-keeps-days-after') },
];

const inMicrowave: readonly Step[] = [
  { text: say('thaw-step-microwave') },
  { text: say('thaw-cook-at-once') },
];

export const thawSteps = (item: Item, { method, hours, advice, source }: ThawOption): Procedure => {
  const [first, ...rest] =
    method === 'cold-water'
      ? inWater(item, hours?.high ?? 1)
      : method === 'fridge'
        ? inFridge(hours?.high ?? null, advice)
        : inMicrowave;
  return {
    kind: 'thaw',
    title: say('thaw-title', { name: item.name, method }),
    itemId: item.id,
    steps: [{ ...first!, caution: say('thaw-never-on-counter') }, ...rest],
    at: 0,
    paused: false,
    source: sourcesOf([{ source }]),
  };
};
