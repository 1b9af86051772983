/** "What temperature for chicken?", "how do I cook them?", "how do I know it is done?" */
import type { Temperature } from '../../safety/api.js';
import { cookTemperature as cookGuidance } from '../../safety/index.js';
import type { Item } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import { inNoTable } from '../age/generic-keeps.js';
import { reasonWords, sourcesOf } from '../describe/guidance.js';
import type { Mention } from '../../understanding/intents.js';
import { type Handler, type Reply, type Turn, about, say, seconds } from '../handler.js';
import { findItems } from '../refer/items.js';
import { justSpokenOf, needItem, needItems } from '../refer/need.js';

/** What the figure does not say: how it is cooked is the label's or the recipe's, and no colour tells. */
const beside = (asked: string | undefined, item: Item | undefined): Say[] => {
  if (asked === 'done') return [say('cook-thermometer')];
  if (asked === 'pink') return [say('cook-colour')];
  if (asked !== 'how') return [];
  return item?.preparations.some(({ method }) => method !== 'none')
    ? [say('cook-recorded', { name: item.name })]
    : [say('cook-by-label')];
};

const only = (turn: Turn, items: readonly Item[]): Item | undefined =>
  items.length === 1 || new Set(items.map(({ name }) => name)).size === 1
    ? items[0]
    : (turn.picked.item ?? []).flatMap((id) => turn.kitchen.items.get(id) ?? [])[0];

export const cookTemperature: Handler = (act, turn) => {
  const { item, items, words, asked } = act.slots;
  if (act.slots.noFood) return inNoTable(act.slots);
  if (items) return eachOf(turn, items, asked === 'again');
  // "Them" may be several foods, each with a temperature of its own.
  if (item?.pointer && !item.words) {
    const pointed = needItem(turn, item, { question: say('ask-cook'), anyOfBatch: true });
    if ('reply' in pointed) return pointed.reply;
    return told(turn, pointed.got.name, pointed.got, asked);
  }
  const found = findItems(turn, item);
  const known = only(turn, found.near ? [] : found.items) ?? justSpokenOf(turn, found.items) ?? undefined;
  const food = item?.words ?? words ?? known?.name;
  if (!food) return { parts: [], ask: { slot: 'item', question: say('ask-cook'), expecting: 'name' } };
  return told(turn, food, known, asked);
};

/** Ground meat of no animal that was named: of poultry it wants the hotter figure. */
const poultry = (found: readonly { readonly ifPoultry: Temperature | null }[]): Say[] =>
  found
    .flatMap(({ ifPoultry }) => ifPoultry ?? [])
    .slice(0, 1)
    .map((temperature) => say('cook-if-poultry', { temperature: { kind: 'temperature', ...temperature } }));

/** Of several, each with its own figure behind its name, so that none is heard for another's. */
const eachOf = (turn: Turn, mentions: readonly Mention[], reheating: boolean): Reply => {
  const foods: string[] = [];
  let open: Reply | null = null;
  for (const mention of mentions) {
    const pointed = mention.pointer && !mention.words;
    const needed = pointed ? needItems(turn, mention, { question: say('ask-cook'), several: true }) : null;
    if (needed && 'got' in needed) foods.push(...needed.got.map(({ name }) => name));
    else if (needed)
      open = { ...needed.reply, askFor: { intent: 'cook-temperature', slots: { item: mention } } };
    else if (mention.words) foods.push(mention.words);
  }
  const found = [...new Set(foods)].map((food) => ({
    food,
    ...cookGuidance({ food, region: turn.kitchen.household.region, reheating }),
  }));
  const parts = found.map(({ food, temperature, restSeconds, holdSeconds }) =>
    say('cook-to-each', {
      food,
      again: reheating ? 'yes' : 'no',
      temperature: { kind: 'temperature', ...temperature },
      ...(restSeconds ? { rest: seconds(restSeconds) } : {}),
      ...(holdSeconds ? { hold: seconds(holdSeconds) } : {}),
    }),
  );
  const notes = found.flatMap(({ food, notes: codes }) =>
    codes.map((code) => reasonWords({ code, args: { name: food }, source: null })),
  );
  return {
    ...(open ?? {}),
    parts: [
      ...parts,
      ...(found.some(({ boil }) => boil) ? [say('cook-boil')] : []),
      ...poultry(found),
      ...(open?.parts ?? []),
    ],
    details: notes,
    sources: sourcesOf(found),
    names: found.map(({ food }) => food),
  };
};

const told = (turn: Turn, food: string, item: Item | undefined, asked: string | undefined) => {
  const found = cookGuidance({
    food,
    region: turn.kitchen.household.region,
    reheating: asked === 'again',
  });
  const { temperature, restSeconds, holdSeconds, boil } = found;
  // "What was the temperature again", of what was recorded with a heat: the oven's comes first.
  const heated = item?.preparations.find(({ heat }) => heat);
  const plain = turn.qualifiers.has('heat-alone');
  const oven =
    plain && heated?.heat
      ? [say('recorded-heat', { method: heated.method, heat: { kind: 'temperature', ...heated.heat } })]
      : [];
  return {
    parts: [
      ...oven,
      say('cook-to', {
        food,
        temperature: { kind: 'temperature', ...temperature },
        ...(restSeconds ? { rest: seconds(restSeconds) } : {}),
        ...(holdSeconds ? { hold: seconds(holdSeconds) } : {}),
      }),
      ...(boil ? [say('cook-boil')] : []),
      ...poultry([found]),
      ...beside(asked, item),
    ],
    details: found.notes.map((code) => reasonWords({ code, args: { name: food }, source: null })),
    sources: sourcesOf([found]),
    names: [food],
    ...(item ? { memory: about(turn, [item]) } : {}),
  };
};
