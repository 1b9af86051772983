/** Facts told of something that is on record: kept in one change, and read back in one breath. */
import { ingredientNote } from '../../kitchen/index.js';
import { type Facts, amend, isRefused, personNamed } from '../../kitchen/index.js';
import type { Id, Item } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { Statement } from '../../understanding/intents.js';
import { pastByIt, pastNow } from '../describe/past.js';
import { refusal } from '../describe/refusals.js';
import { watchers } from '../describe/watchers.js';
import { type Reply, type Turn, about, list, say, speakerPerson } from '../handler.js';
import { dateFacts, type Told } from '../put-away/amend.js';
import { makerName } from '../put-away/maker-name.js';
import { surelyThem } from '../people/people.js';

export const makerOf = (turn: Turn, { maker }: Statement): string | null => {
  if (maker === undefined) return null;
  return maker === 'me' ? (speakerPerson(turn)?.name ?? null) : makerName(turn, maker);
};

export const ownerOf = (turn: Turn, { owner }: Statement): Id | null => {
  if (!owner) return null;
  if (owner.points === 'speaker') return turn.speaker.personId;
  const [best] = owner.candidates;
  if (best && best.fit >= surelyThem && turn.kitchen.people.has(best.id)) return best.id;
  return personNamed(turn.kitchen, owner.words)?.id ?? null;
};

const people = (turn: Turn, statement: Statement): Told => {
  const maker = makerOf(turn, statement);
  const ownerId = ownerOf(turn, statement);
  const owner = ownerId ? turn.kitchen.people.get(ownerId) : undefined;
  return {
    facts: { ...(maker ? { maker } : {}), ...(owner ? { ownerId: owner.id } : {}) },
    said: [
      ...(maker ? [say('read-back-maker', { maker })] : []),
      ...(owner ? [say('read-back-owner', { name: owner.name })] : []),
    ],
  };
};

const inside = ({
  contains = [],
  freeFrom = [],
  ingredients = [],
  diets = [],
  cautions = [],
  notes = [],
}: Statement): Told => ({
  facts: {
    ...(contains.length > 0 ? { contains: { add: contains } } : {}),
    ...(freeFrom.length > 0 ? { freeFrom: { add: freeFrom } } : {}),
    ...(ingredients.length + notes.length > 0
      ? { notes: { add: [...ingredients.map(ingredientNote), ...notes] } }
      : {}),
    ...(cautions.length > 0 ? { cautions: { add: cautions } } : {}),
    ...(diets.length > 0 ? { diets: { add: diets } } : {}),
  },
  said: [
    ...ingredients.map((what) => say('read-back-ingredient', { what })),
    ...(contains.length > 0 ? [say('read-back-contains', { allergens: list(contains) })] : []),
    ...(freeFrom.length > 0 ? [say('read-back-free', { allergens: list(freeFrom) })] : []),
    ...diets.map((diet) => say('read-back-diet', { diet })),
    ...cautions.map((caution) => say('read-back-caution', { caution })),
    ...notes.map((note) => say('read-back-note', { note })),
  ],
});

/** How much there is: of one container, in its own unit. */
const howMuch = (item: Item, { amount }: Statement): Told => {
  if (!amount) return { facts: {}, said: [] };
  const unit = amount.unit === 'piece' ? (item.amount?.unit ?? 'piece') : amount.unit;
  const counted = { ...amount, unit };
  return {
    facts: { amount: counted },
    said: [say('read-back-amount', { amount: { kind: 'amount', amount: counted } })],
  };
};

/** All facts of a statement but its place and its marker. `withAmount`: how much there is was put right. */
export const factsOf = (turn: Turn, item: Item, statement: Statement, withAmount: boolean): Told => {
  const all = [
    ...(withAmount ? [howMuch(item, statement)] : []),
    dateFacts(statement.dates, statement.maker ?? item.maker),
    people(turn, statement),
    inside(statement),
    ...(statement.name
      ? [{ facts: { name: statement.name }, said: [say('read-back-name', { name: statement.name })] }]
      : []),
    ...(statement.container ? [{ facts: { touch: statement.container }, said: [] as readonly Say[] }] : []),
  ];
  return {
    facts: Object.assign({}, ...all.map(({ facts }) => facts)) as Facts,
    said: all.flatMap(({ said }) => said),
  };
};

/** Keeps them; an empty reply where there was nothing to keep, or it is known already. */
export const keepFacts = (
  turn: Turn,
  items: readonly Item[],
  statement: Statement,
  withAmount = false,
): Reply => {
  // "I'm keeping the sour cream": nothing is noted, and what guidance says of it is said all the same.
  if (statement.deed === 'kept')
    return {
      parts: [...items.map(({ name }) => say('stays', { name })), ...pastNow(turn, items)],
      memory: about(turn, items),
      names: items.map(({ name }) => name),
    };
  const replies = items.flatMap((item): Reply[] => {
    const { facts, said } = factsOf(turn, item, statement, withAmount);
    if (Object.keys(facts).length === 0) return [];
    const dish = item.batchId !== null && !facts.amount;
    const result = amend(turn, item.id, { ...facts, wholeBatch: dish, sure: turn.sure });
    if (isRefused(result)) {
      if (result.refused === 'contains-it')
        return [
          {
            parts: [],
            confirm: say('confirm-free', { name: item.name, allergens: list(result.about ?? []) }),
          },
        ];
      if (result.refused === 'nothing-changes')
        return said.length > 0
          ? [{ parts: [say('known-already', { name: item.name, facts: list(said) })] }]
          : [];
      return [refusal(turn, result)];
    }
    return [
      {
        parts: [
          ...(said.length > 0 ? [say('amended', { name: item.name, facts: list(said) })] : []),
          ...(facts.dates ? pastByIt(turn, [result]) : []),
          ...watchers(turn, item, statement.contains ?? []),
        ],
        changes: [result],
      },
    ];
  });
  const asks = replies.find(({ confirm }) => confirm);
  if (asks) return { ...asks, memory: about(turn, items) };
  return {
    parts: replies.flatMap(({ parts }) => parts),
    changes: replies.flatMap(({ changes }) => changes ?? []),
    memory: about(turn, items),
    names: items.map(({ name }) => name),
  };
};
