/** Who eats here, told several at once: kept together, said back together. */
import {
  addPerson,
  amendPerson,
  applyChange,
  isRefused,
  joinChanges,
  peopleCalled,
  personCalled,
} from '../../kitchen/index.js';
import type { Change, Kitchen, Person } from '../../kitchen/model.js';
import { watchesFor } from '../../safety/index.js';
import type { SaidEater } from '../../protocol/first-day.js';
import type { Say } from '../../speech/answer.js';
import type { Act, Slots } from '../../understanding/intents.js';
import { type Reply, type Turn, list, say, speakerPerson } from '../handler.js';

export const eaterWords = ({ who, name, allergens, diets, risks }: SaidEater): Say =>
  say('told-eater', {
    ...(who === 'me' ? {} : { name: name ?? '' }),
    ...(allergens.length > 0 ? { allergens: list(allergens, true) } : {}),
    ...(diets.length > 0 ? { diets: list(diets) } : {}),
    ...(risks.length > 0 ? { risk: risks[0]! } : {}),
  });

export const peopleKept = (turn: Turn, eaters: readonly SaidEater[]): readonly Change[] => {
  const changes: Change[] = [];
  let kitchen: Kitchen = turn.kitchen;
  const me = speakerPerson(turn);
  for (const { who, name, allergens, diets, risks } of eaters) {
    const person = (who === 'me' && me) || (name ? personCalled(kitchen, name) : null);
    const doing = { ...turn, kitchen };
    const facts = { allergens, diets, ...(risks.length > 0 ? { atRisk: true, risks } : {}) };
    const result = person
      ? amendPerson(doing, person.id, {
          addAllergens: allergens.filter((one) => !watchesFor(person, one)),
          addDiets: diets,
          ...(risks.length > 0 ? { atRisk: true, addRisks: risks } : {}),
        })
      : name
        ? addPerson(doing, { name, ...facts })
        : null;
    if (!result || isRefused(result)) continue;
    changes.push(result);
    kitchen = applyChange(kitchen, result);
  }
  return changes;
};

/** One person, and one matter of theirs: as if it had been told by itself; else null. */
export const asOne = (told: readonly SaidEater[]): Slots | null => {
  const [only, ...more] = told;
  if (!only || more.length > 0 || only.none || only.unclear || only.who === 'whose') return null;
  const { who, name, allergens, nuts, diets, risks } = only;
  const matters = [allergens.length > 0 || nuts, diets.length > 0, risks.length > 0].filter(Boolean);
  if (matters.length !== 1 || diets.length > 1) return null;
  return {
    person: {
      words: name ?? '',
      candidates: [],
      // "I'm Joanne, I can't have sesame": by her name, whoever's device it is.
      ...(who === 'me' && !name ? { points: 'speaker' } : who === 'last' ? { points: 'other' } : {}),
    },
    ...(nuts
      ? { asked: 'which-nuts', allergens: withBoth(only).allergens }
      : allergens.length > 0
        ? { allergens }
        : {}),
    ...(diets[0] ? { diet: diets[0] } : {}),
    ...(risks.length > 0 ? { asked: 'risk', risks } : {}),
  };
};

const bothKinds = ['tree nuts', 'peanuts'] as const;

/** Nuts are both kinds until it is told which. */
const withBoth = (eater: SaidEater): SaidEater =>
  eater.nuts ? { ...eater, nuts: false, allergens: [...new Set([...eater.allergens, ...bothKinds])] } : eater;

/** Whoever is called so, as it was settled where several may be. */
const calledSo = ({ kitchen, picked }: Turn, name: string): Person | null => {
  const [one, ...more] = peopleCalled(kitchen, name);
  if (more.length === 0) return one ?? null;
  return kitchen.people.get(picked.person?.[0] ?? '') ?? null;
};

/** "He can't have eggs": of whoever was spoken of last. */
const whoIs = (turn: Turn, eater: SaidEater): SaidEater => {
  const last = turn.memory.personId ? turn.kitchen.people.get(turn.memory.personId) : undefined;
  if (eater.who === 'last' && last) return { ...eater, who: 'named' as const, name: last.name };
  // "Bea" is Aunt Bea, by the name that is on record, and never somebody besides her.
  const called = eater.who === 'named' && eater.name ? calledSo(turn, eater.name) : null;
  if (called) return { ...eater, name: called.name };
  const me = eater.who === 'me' && !speakerPerson(turn) && !eater.name;
  return me || eater.who === 'last' ? { ...eater, who: 'whose' } : eater;
};

/** "Not Joan, Ben": hers no longer, what is told of another. */
const movedFrom = (turn: Turn, told: readonly SaidEater[]): readonly Change[] => {
  const moved = told.flatMap((eater) => (eater.none ? [] : withBoth(eater).allergens));
  return told
    .filter(({ none, name }) => none && name)
    .flatMap(({ name }) => {
      const person = personCalled(turn.kitchen, name!);
      const gone = person?.allergens.filter((one) => moved.includes(one)) ?? [];
      const change =
        person && gone.length > 0 ? amendPerson(turn, person.id, { removeAllergens: gone }) : null;
      return change && !isRefused(change) ? [change] : [];
    });
};

const whichNuts = ({ kitchen }: Turn, told: readonly SaidEater[], changes: readonly Change[]): Act | null => {
  // Of whom both kinds were on record before, it was said.
  const known = ({ name }: SaidEater): boolean =>
    bothKinds.every((kind) => name && personCalled(kitchen, name)?.allergens.includes(kind));
  const of = told.find((eater) => eater.nuts && !known(eater));
  const after = changes.reduce(applyChange, kitchen);
  const person: Person | null = of?.name ? personCalled(after, of.name) : null;
  return person
    ? {
        intent: 'add-person',
        slots: { person: { words: person.name, candidates: [{ id: person.id, fit: 1 }] }, asked: 'nuts' },
      }
    : null;
};

/** People and what they must not have, in one sentence of any shape. Nothing told of nobody is let go unsaid. */
export const keepEaters = (turn: Turn, said: readonly SaidEater[]): Reply => {
  const me = speakerPerson(turn);
  const told = said.map((eater) => whoIs(turn, eater));
  const clear = told.filter(({ who, none }) => who !== 'whose' && !none);
  const moved = movedFrom(turn, told);
  const now = { ...turn, kitchen: moved.reduce(applyChange, turn.kitchen) };
  const changes = [...moved, ...peopleKept(now, clear.map(withBoth))];
  const [first, ...rest] = changes;
  const taken = told.flatMap(({ none, name }) => {
    const person = none && name ? personCalled(turn.kitchen, name) : null;
    const left = person ? (now.kitchen.people.get(person.id)?.allergens ?? []) : [];
    const allergens = person?.allergens.filter((one) => !left.includes(one)) ?? [];
    return person && allergens.length > 0 ? [{ name: person.name, allergens }] : [];
  });
  const unclear = told.find((one) => one.unclear);
  const whose = told.find(({ who }) => who === 'whose');
  const asked: readonly Say[] = [
    ...(unclear ? [say('setup-what-not', unclear.who === 'me' ? {} : { name: unclear.name ?? '' })] : []),
    ...(whose ? [say('setup-whose', { allergens: list(whose.allergens, true) })] : []),
  ];
  const next = whichNuts(
    now,
    told.map((eater) => (eater.who === 'me' && me ? { ...eater, name: me.name } : eater)),
    changes,
  );
  const named = clear.at(-1)?.name;
  const spoken = clear.flatMap(({ name }) =>
    name ? (personCalled(changes.reduce(applyChange, turn.kitchen), name)?.id ?? []) : [],
  );
  const last = named ? personCalled(changes.reduce(applyChange, turn.kitchen), named) : null;
  const noted = clear.filter(({ unclear: missing }) => !missing);
  return {
    parts: [
      ...taken.map(({ name, allergens }) => say('person-no-longer', { name, allergens: list(allergens) })),
      ...(noted.length > 0
        ? [say(first ? 'eaters-noted' : 'eaters-known', { told: list(noted.map(withBoth).map(eaterWords)) })]
        : []),
      ...asked,
    ],
    ...(first ? { changes: [joinChanges(first, ...rest)] } : {}),
    ...(last ? { memory: { personId: last.id, people: [...new Set(spoken.toReversed())] } } : {}),
    ...(next ? { next } : {}),
    // What was still asked of whoever it was taken back from is no question any longer.
    ...(told.some(({ none }) => none) ? { dropFrames: true } : {}),
  };
};
