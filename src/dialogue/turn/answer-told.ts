/** "Oh, it's in the fridge, in a glass tub", to where it goes: what was told of nothing by name is the answer, with its facts. */
import { type Act, type Slots, type Statement, emptyMention } from '../../understanding/intents.js';
import { foodKey } from '../../kitchen/index.js';
import { aFact } from '../tell/plan.js';
import type { Frame } from '../state.js';

/** Of what was asked about: pointed at, or by a part of its name. */
const isOfThat = ({ thing }: Statement, asked: string | null): boolean => {
  if (thing === null) return true;
  if (thing.words === null) return thing.pointer !== null && ofIt.has(thing.pointer);
  const called = new Set(foodKey(asked ?? '').split(' '));
  return foodKey(thing.words)
    .split(' ')
    .every((word) => called.has(word));
};

/** "It", "they": pancakes that are put away are one thing. */
const ofIt: ReadonlySet<string> = new Set(['it', 'this', 'that', 'them']);

/** Facts that no part of a deed holds: they are kept right after it, with it. */
const factsBeside = (statements: readonly Statement[]): Partial<Statement> =>
  statements.reduce<Partial<Statement>>(
    (all, { contains, freeFrom, ingredients, diets, cautions, notes, owner }) => ({
      ...all,
      ...(contains && all.freeFrom ? { contains } : {}),
      ...(freeFrom ? { freeFrom } : {}),
      ...(ingredients ? { ingredients: [...(all.ingredients ?? []), ...ingredients] } : {}),
      ...(diets ? { diets: [...(all.diets ?? []), ...diets] } : {}),
      ...(cautions ? { cautions: [...(all.cautions ?? []), ...cautions] } : {}),
      ...(notes ? { notes: [...(all.notes ?? []), ...notes] } : {}),
      ...(owner ? { owner } : {}),
    }),
    {},
  );

/** All that was said of it, as parts of the deed that waits. */
const partsOf = (statements: readonly Statement[], { besides: waiting }: Slots): Slots => {
  const beside = factsBeside(statements);
  const besides: Statement = { ...aFact, ...waiting, ...beside };
  return { ...slotsOf(statements), ...(Object.keys(beside).length > 0 ? { besides } : {}) };
};
const slotsOf = (statements: readonly Statement[]): Slots =>
  statements.reduce<Slots>(
    (all, { amount, place, from, dates, when, maker, marker, container, contains }) => ({
      ...all,
      ...(amount ? { amount } : {}),
      ...((place ?? from) ? { place: place ?? from! } : {}),
      ...(dates ? { dates } : {}),
      ...(when ? { when } : {}),
      ...(maker ? { maker } : {}),
      ...(marker ? { marker } : {}),
      ...(container ? { container } : {}),
      ...(contains ? { allergens: contains } : {}),
    }),
    {},
  );

/** "One pound in the fridge and the other in the freezer", to where it goes: that food, shared out. */
export const sharedOut = (frame: Frame | undefined, act: Act): Act => {
  const { statements = [] } = act.slots;
  const { item, amount } = frame?.act.slots ?? {};
  const waits = frame?.kind === 'slot' && frame.slot === 'place' && frame.act.intent === 'put-away';
  if (act.intent !== 'tell' || !waits || !item?.words || !statements.some(({ parts }) => parts)) return act;
  if (!statements.every((one) => isOfThat(one, item.words))) return act;
  const told = statements.map((one): Statement => ({
    ...one,
    deed: 'stored',
    thing: item,
    definite: false,
    ...(amount && !one.amount ? { amount } : {}),
  }));
  return { ...act, slots: { ...act.slots, statements: told } };
};

/** Told while a question waits, and of nothing by name, it answers; anything else is as it was. */
export const answeringTold = (frame: Frame | undefined, act: Act): Act => {
  const { statements = [] } = act.slots;
  const asked = frame?.act.slots.item?.words ?? null;
  const waits = frame?.kind === 'slot' && (frame.slot === 'place' || frame.slot === 'item');
  const plain = statements.every((one) => isOfThat(one, asked) && !lost.has(one.deed));
  if (act.intent !== 'tell' || !waits || statements.length === 0 || !plain) return act;
  const parts = partsOf(statements, frame.act.slots);
  if (frame.slot === 'place') return parts.place ? { intent: 'answer', slots: parts } : act;
  const [from] = statements.flatMap((one) => one.from ?? one.place ?? []);
  if (!frame.choices || !(from ?? parts.maker ?? parts.marker)) return act;
  return {
    intent: 'choose',
    slots: {
      item: {
        ...emptyMention,
        at: from ?? null,
        maker: parts.maker ?? null,
        touch: parts.marker?.touch ?? parts.container ?? null,
      },
    },
  };
};
const lost: ReadonlySet<Statement['deed']> = new Set<Statement['deed']>([
  'finished',
  'threw',
  'gave',
  'took',
]);
