/** Who eats here, and words left for one another. */
import {
  addPerson as addPersonChange,
  amendPerson,
  applyChange,
  dropNotes,
  heardNotes,
  isRefused,
  joinChanges,
  leaveNote as leaveNoteChange,
  mendNote,
  notesFor,
  peopleCalled,
  personCalled,
  foodKey,
  livingItems,
} from '../../kitchen/index.js';
import type { Change, Kitchen, Note, Person } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import { allergenNamed, watchesFor } from '../../safety/index.js';
import type { Act, Mention, Slots } from '../../understanding/intents.js';
import { withChange } from '../describe/refusals.js';
import {
  type Handler,
  type Reply,
  type Turn,
  about,
  ago,
  day,
  assent,
  list,
  say,
  speakerPerson,
  onRecord,
  notFound,
  todayOf,
} from '../handler.js';
import { findItems, noSuch } from '../refer/items.js';
import { needItem } from '../refer/need.js';
import type { Ask } from '../state.js';
import { forEverybody } from '../allergens/for-everybody.js';
import { asOne, keepEaters } from './eaters.js';

export const surelyThem = 0.85;
/** From here on a name may be theirs, and is asked about. */
const perhapsThem = 0.65;
/** "No" to "did you mean Dele": somebody else. */
const somebodyElse = 'somebody-else';

/** The person meant, if the household knows her; "me" is whoever speaks. */
export const personSaid = (
  turn: Turn,
  slots: Slots,
  asked = false,
): { person: Person | null; name: string | null } => {
  const said = slots.person;
  if (!said) return { person: null, name: null };
  const { points } = said;
  if (points === 'other') {
    // "Peter's here, can he have that": whoever was just named. Only asked: nothing is noted of a guess.
    const here = (turn.beside?.named ?? []).flatMap(({ kind, id, whole }) =>
      kind === 'person' && whole ? (turn.kitchen.people.get(id) ?? []) : [],
    );
    if (asked && here.length === 1) return { person: here[0]!, name: null };
    const last = turn.memory.personId ? turn.kitchen.people.get(turn.memory.personId) : undefined;
    return { person: ofWhom(turn, slots.risks ?? []) ?? last ?? null, name: null };
  }
  if (points === 'speaker') return { person: speakerPerson(turn) ?? null, name: null };
  const settled = turn.picked.person?.[0];
  const meant = settled ? turn.kitchen.people.get(settled) : undefined;
  if (meant) return { person: meant, name: said.words };
  // A name that only sounds like one may be somebody new.
  const near = said.candidates.find(({ fit }) => fit >= surelyThem);
  const known = near ? turn.kitchen.people.get(near.id) : undefined;
  return { person: known ?? personCalled(turn.kitchen, said.words), name: said.words };
};

/** "She's pregnant": whoever was just spoken of as that, before whoever was spoken of last. */
const ofWhom = ({ memory, kitchen }: Turn, risks: readonly string[]): Person | null => {
  const spoken = memory.people.flatMap((id) => kitchen.people.get(id) ?? []);
  const known = spoken.filter((one) => one.risks?.some((risk) => risks.includes(risk)));
  const atRisk = spoken.filter((one) => one.atRisk && (one.risks ?? []).length === 0);
  return risks.length > 0 ? (known[0] ?? atRisk[0] ?? null) : null;
};

/** "Bea", and there are two of them: which, before anything is noted of either. */
const askWhichPerson = (turn: Turn, { person, eaters = [] }: Slots): Reply | null => {
  if (turn.picked.person?.length) return null;
  const said = [
    ...(person && !personSaid(turn, { person }).person ? [person.words] : []),
    ...eaters.flatMap(({ name }) => name ?? []),
  ];
  const several = said.map((name) => peopleCalled(turn.kitchen, name)).find(({ length }) => length > 1);
  if (!several) return null;
  const choices = several.map(({ id, name }) => ({ ids: [id], label: say('person-plain', { name }) }));
  const question = say('ask-which-person', {
    people: list(
      several.map(({ name }) => name),
      true,
    ),
  });
  return { parts: [], ask: { slot: 'person', question, expecting: 'choice', choices } };
};

/** "Did you mean Dele?", of a name that sounds like hers; null when it sounds like nobody's. */
export const askWhetherMeant = (turn: Turn, { person: said }: Slots): Reply | null => {
  const [near] = said?.candidates ?? [];
  if (!near || near.fit < perhapsThem || turn.picked.person?.length) return null;
  const person = turn.kitchen.people.get(near.id);
  if (!person) return null;
  const question = say('near-person', { name: person.name });
  const ask: Ask = { slot: 'person', question, expecting: 'yes-no', guess: [person.id], no: [somebodyElse] };
  return { parts: [], ask };
};

/** Nobody of that name: perhaps it was misheard. */
export const nobodyCalled = (turn: Turn, slots: Slots, name: string): Reply =>
  askWhetherMeant(turn, slots) ?? { parts: [notFound('unknown-person', { name: capital(name) })] };

/** The same, where a name nobody knows is told apart from no name at all. */
export const personAsked = (turn: Turn, slots: Slots): { person: Person | null; unknown: string | null } => {
  const { person, name } = personSaid(turn, slots, true);
  if (person) return { person, unknown: null };
  const unknown = name ?? (slots.person ? null : (slots.words ?? null));
  return {
    person: unknown ? personCalled(turn.kitchen, unknown) : null,
    unknown: unknown ? capital(unknown) : null,
  };
};

/** What somebody eats by choice. */
export const dietsOf = ({ diets = [] }: Person): readonly string[] => diets;

const capital = (name: string): string => name.replace(/(^|\s)\p{Ll}/gu, (letter) => letter.toUpperCase());

const bothKinds = ['tree nuts', 'peanuts'] as const;

/** "Nuts" were taken as both kinds: which it is, is hers to say, and both are kept until she does. */
const askNuts = ({ asked }: Slots, { id, name }: Pick<Person, 'id' | 'name'>): { readonly next?: Act } =>
  asked === 'which-nuts'
    ? {
        next: {
          intent: 'add-person',
          slots: { person: { words: name, candidates: [{ id, fit: 1 }] }, asked: 'nuts' },
        },
      }
    : {};

const whichNuts = (turn: Turn, { id, name }: Person): Reply => {
  const kept = turn.picked.nuts;
  const memory = { personId: id };
  if (!kept)
    return {
      parts: [],
      ask: {
        slot: 'nuts',
        question: say('ask-which-nuts'),
        expecting: 'allergen',
        choices: bothKinds.map((kind) => ({ ids: [kind], label: say('allergen-name', { allergen: kind }) })),
        guess: bothKinds,
        no: bothKinds,
        unsure: bothKinds,
      },
      memory,
    };
  const told = onRecord('person-watches', { name, allergens: list([...new Set(kept)]) });
  const dropped = bothKinds.filter((kind) => !kept.includes(kind));
  if (dropped.length === 0) return { parts: [told], memory };
  return withChange(turn, amendPerson(turn, id, { removeAllergens: dropped }), (change) => ({
    parts: [told],
    changes: [change],
    memory,
  }));
};

/** What makes somebody at risk is said back as it was told. */
const riskTold = ({ name, risks = [] }: Person): { name: string; risk: string } => ({
  name,
  risk: risks[0] ?? 'unsaid',
});
const riskWords = (name: string, risks: readonly string[] = []): { name: string; risk?: string } => ({
  name,
  ...(risks[0] ? { risk: risks[0] } : {}),
});

/** "He grew out of it": what somebody's life may rest on is taken off her record only after a plain yes. */
const noLonger = (turn: Turn, person: Person, named: readonly string[]): Reply => {
  const memory = { personId: person.id };
  const of = (one: string): readonly string[] =>
    person.allergens.filter(
      (kept) => kept === one || allergenNamed(one).some((id) => allergenNamed(kept).includes(id)),
    );
  const gone = [...new Set(named.length > 0 ? named.flatMap(of) : person.allergens)];
  if (gone.length === 0 || (named.length === 0 && gone.length > 1))
    return { parts: ofPerson(person).filter(({ phrase }) => phrase !== 'person-is-at-risk'), memory };
  return withChange(turn, amendPerson(turn, person.id, { removeAllergens: gone }), (change) => ({
    parts: [
      say('person-no-longer', { name: person.name, allergens: list(gone) }),
      ...(person.allergens.length > gone.length
        ? [
            onRecord('person-watches', {
              name: person.name,
              allergens: list(person.allergens.filter((one) => !gone.includes(one))),
            }),
          ]
        : []),
    ],
    changes: [change],
    ...(turn.sure
      ? {}
      : { confirm: say('confirm-person-no-longer', { name: person.name, allergens: list(gone) }) }),
    memory,
  }));
};

/** The day of a visit and how her food is to be go with whatever else is told of somebody, in one change. */
const withBeside = (turn: Turn, { slots }: Act, reply: Reply): Reply => {
  const { visit, needs = [] } = slots;
  if (!visit && needs.length === 0) return reply;
  const kept = reply.changes ?? [];
  const after: Kitchen = kept.reduce(applyChange, turn.kitchen);
  const ids = [...new Set([reply.memory?.personId ?? [], reply.memory?.people ?? []].flat())];
  // A guest is somebody who was not here before, or of whom alone it was told.
  const guests = ids.length > 1 ? ids.filter((id) => !turn.kitchen.people.has(id)) : ids;
  const people = guests.flatMap((id) => after.people.get(id) ?? []);
  if (people.length === 0) return reply;
  const told = people.map((person) =>
    amendPerson({ ...turn, kitchen: after }, person.id, {
      ...(visit ? { comesOn: visit.day } : {}),
      addNeeds: needs,
    }),
  );
  const beside = told.filter((one): one is Change => !isRefused(one));
  const [first, ...rest] = [...kept, ...beside];
  const own = reply.parts.filter(
    ({ phrase }) =>
      // A guest does not "eat here now", and what is new of somebody known is what is said.
      !(phrase === 'person-added' && visit) && !(phrase === 'person-known' && beside.length > 0),
  );
  return {
    ...reply,
    parts: [
      ...people.flatMap(({ name }) => (visit ? [say('person-comes', { name, day: day(visit.day) })] : [])),
      ...(needs.length > 0
        ? people.map(({ name }) => say('person-needs-noted', { name, needs: list(needs) }))
        : []),
      ...own,
    ],
    ...(first ? { changes: [joinChanges(first, ...rest)] } : {}),
  };
};

/** What is new of what she must not have; "shellfish", of her who watches for crustaceans, takes the place of that. */
const watchedToo = (
  person: Person,
  allergens: readonly string[],
): { addAllergens: readonly string[]; removeAllergens: readonly string[] } => {
  const added = allergens.filter((one) => !watchesFor(person, one));
  return {
    addAllergens: added,
    removeAllergens: person.allergens.filter((kept) =>
      added.some(
        (one) =>
          watchesFor({ allergens: [one] }, kept) && allergenNamed(one).length > allergenNamed(kept).length,
      ),
    ),
  };
};

/**
 * A dish of hers by its own name, and in no table of allergens. Kiwi and mushrooms are in none either and are kept at
 * once: what somebody cannot eat is never lost to a question.
 */
const oddIn = ({ kitchen }: Turn) => {
  const dishes = new Set(
    livingItems(kitchen)
      .map(({ name }) => foodKey(name))
      .filter((name) => name.includes(' ')),
  );
  return (allergen: string): boolean => allergenNamed(allergen).length === 0 && dishes.has(foodKey(allergen));
};
const oddOf = (
  { allergens = [], eaters = [] }: Slots,
  isOdd: (one: string) => boolean,
): readonly string[] => [
  ...new Set([...allergens, ...eaters.flatMap((eater) => eater.allergens)].filter(isOdd)),
];
/** What was told, with those allergens alone that pass; null where nothing is left. */
const onlyWith = (act: Act, keep: (allergen: string) => boolean): Act | null => {
  const { allergens, eaters, ...rest } = act.slots;
  const kept = allergens?.filter(keep) ?? [];
  const some = (eaters ?? [])
    .map((eater) => ({ ...eater, allergens: eater.allergens.filter(keep) }))
    .filter((eater, at) => eater.allergens.length > 0 || eaters![at]!.allergens.length === 0);
  const held = kept.length > 0 || some.some((eater) => eater.allergens.length > 0);
  return held
    ? {
        ...act,
        slots: { ...rest, ...(allergens ? { allergens: kept } : {}), ...(eaters ? { eaters: some } : {}) },
      }
    : null;
};

/** "Marianne can't have the coffee ice cream": what is in no table of allergens is kept as one only after a yes. */
export const addPerson: Handler = (act, turn) => {
  const isOdd = oddIn(turn);
  const odd = act.slots.negated || turn.sure ? [] : oddOf(act.slots, isOdd);
  if (odd.length === 0) return withBeside(turn, act, personTold(act, turn));
  const known = onlyWith(act, (one) => !isOdd(one));
  if (known) {
    const first = withBeside(turn, known, personTold(known, turn));
    const rest = onlyWith(act, isOdd);
    return rest && !first.next && !first.ask ? { ...first, next: rest } : first;
  }
  const reply = withBeside(turn, act, personTold(act, turn));
  return (reply.changes ?? []).length > 0 && !reply.confirm
    ? { ...reply, confirm: say('confirm-no-allergen', { foods: list(odd) }) }
    : reply;
};

const personTold: Handler = (act, turn) => {
  const which = askWhichPerson(turn, act.slots);
  if (which) return which;
  if (act.slots.eaters && !asOne(act.slots.eaters)) return keepEaters(turn, act.slots.eaters);
  // Whose it is, where that was asked, stands over what the sentence itself said of it.
  const slots = { ...asOne(act.slots.eaters ?? []), ...act.slots };
  const { person, name } = personSaid(turn, slots);
  const allergens = slots.allergens ?? [];
  if (person && slots.asked === 'nuts') return whichNuts(turn, person);
  if (person && slots.negated && !slots.diet && slots.asked !== 'risk')
    return noLonger(turn, person, allergens);
  if (person) {
    const diets = slots.diet ? [slots.diet] : [];
    const facts = slots.negated
      ? { removeDiets: diets }
      : { ...watchedToo(person, allergens), addDiets: diets };
    const result = amendPerson(turn, person.id, {
      ...facts,
      ...(slots.asked === 'risk'
        ? { atRisk: !slots.negated, ...(slots.risks ? { addRisks: slots.risks } : {}) }
        : {}),
    });
    if (isRefused(result) && result.refused === 'nothing-changes') {
      const known =
        diets.length > 0 && !slots.negated
          ? onRecord('person-eats', { name: person.name, diets: list(diets) })
          : allergens.length > 0 && !slots.negated
            ? onRecord('person-watches-already', { name: person.name, allergens: list(person.allergens) })
            : slots.asked === 'risk' && !slots.negated
              ? say('person-risk-already', riskWords(person.name, slots.risks))
              : say('person-known', { name: person.name });
      return { parts: [known], memory: { personId: person.id } };
    }
    if (diets.length > 0)
      return withChange(turn, result, (change) => ({
        parts: [
          say(slots.negated ? 'person-no-longer-eats' : 'person-eats', {
            name: person.name,
            diets: list(diets),
          }),
        ],
        changes: [change],
        doubt: say('confirm-person-eats', { name: person.name, diets: list(diets) }),
        memory: { personId: person.id },
      }));
    if (slots.asked === 'risk')
      return withChange(turn, result, (change) => ({
        parts: [say('person-at-risk', riskWords(person.name, slots.risks))],
        changes: [change],
        doubt: say('confirm-at-risk', { name: person.name }),
        memory: { personId: person.id },
      }));
    return withChange(turn, result, (change) => ({
      parts: [onRecord('person-watches', { name: person.name, allergens: list(allergens) })],
      changes: [change],
      ...askNuts(slots, person),
      doubt: say('confirm-person', {
        name: person.name,
        ...(allergens.length > 0 ? { allergens: list(allergens) } : {}),
      }),
      memory: { personId: person.id },
    }));
  }
  const misheard = askWhetherMeant(turn, slots);
  if (misheard) return misheard;
  const called = name ?? slots.words;
  const question = slots.person?.points === 'speaker' ? say('setup-your-name') : say('ask-person');
  if (!called) return { parts: [], ask: { slot: 'person', question, expecting: 'person' } };
  const named = capital(called);
  const diets = slots.diet && !slots.negated ? [slots.diet] : [];
  const risk = slots.asked === 'risk' ? { atRisk: true, ...(slots.risks ? { risks: slots.risks } : {}) } : {};
  return withChange(turn, addPersonChange(turn, { name: named, allergens, diets, ...risk }), (change) => ({
    parts: [
      onRecord('person-added', { name: named }),
      ...(slots.asked === 'risk' ? [say('person-at-risk', riskWords(named, slots.risks))] : []),
      ...(diets.length > 0 ? [onRecord('person-eats', { name: named, diets: list(diets) })] : []),
      ...(allergens.length > 0
        ? [onRecord('person-watches', { name: named, allergens: list(allergens) })]
        : []),
    ],
    changes: [change],
    ...askNuts(slots, { id: change.ops[0]!.id, name: named }),
    doubt:
      diets.length > 0
        ? say('confirm-person-eats', { name: named, diets: list(diets) })
        : say('confirm-person', {
            name: named,
            ...(allergens.length > 0 ? { allergens: list(allergens) } : {}),
          }),
    memory: { personId: change.ops[0]!.id },
  }));
};

export const people: Handler = ({ slots }, turn) => {
  if (slots.asked === 'guests') return guestsTold(turn, slots);
  const here = [...turn.kitchen.people.values()].filter(({ eatsHere }) => eatsHere);
  if (here.length === 0) return { parts: [say('no-people')], count: 0 };
  const names = here.map(({ name, allergens }) =>
    allergens.length > 0
      ? say('person-with', { name, allergens: list(allergens) })
      : say('person-plain', { name }),
  );
  return {
    parts: [say('people-here', { count: here.length, people: list(names) })],
    names: here.map(({ name }) => name),
    count: here.length,
  };
};

const besideOf = ({ name, needs = [] }: Person): Say[] =>
  needs.length > 0 ? [say('person-needs', { name, needs: list(needs) })] : [];

/** A visit that is still to come. */
const visitOf = (turn: Turn, { name, comesOn }: Person): Say[] =>
  comesOn && comesOn >= todayOf(turn) ? [say('person-comes', { name, day: day(comesOn) })] : [];

/** "Who is coming on Saturday": of that day, else of every day to come, with what each must not have. */
const guestsTold = (turn: Turn, { visit }: Slots): Reply => {
  const all = [...turn.kitchen.people.values()]
    .filter(
      (one) =>
        visitOf(turn, one).length > 0 &&
        (!visit || (one.comesOn! >= visit.day && one.comesOn! <= (visit.until ?? visit.day))),
    )
    .sort((a, b) => a.comesOn!.localeCompare(b.comesOn!));
  return {
    parts:
      all.length > 0
        ? all.flatMap((one) => [...visitOf(turn, one), ...ofPerson(one)])
        : [say('nobody-comes')],
    names: all.map(({ name }) => name),
    count: all.length,
    ...(all[0] ? { memory: { personId: all[0].id } } : {}),
  };
};

/** "Does Theo need extra care": whether guidance counts him as at risk, how his food is to be, and what he watches for. */
const careFor = (person: Person): Reply => ({
  parts: [
    person.atRisk ? say('person-risk-yes', riskTold(person)) : say('person-risk-not', { name: person.name }),
    ...besideOf(person),
    ...(person.allergens.length > 0
      ? [onRecord('person-watches', { name: person.name, allergens: list(person.allergens) })]
      : []),
  ],
  details: person.atRisk ? [say('caution-ask-clinician')] : [],
  memory: { personId: person.id },
});

/** "Who is at risk", "does anybody need extra care". */
const whoAtRisk = (turn: Turn): Reply => {
  const all = [...turn.kitchen.people.values()];
  const names = all.filter(({ atRisk }) => atRisk).map(({ name }) => name);
  return {
    parts: [
      names.length > 0
        ? say('people-at-risk', { people: list(names), count: names.length })
        : say('nobody-at-risk'),
      ...all.flatMap(besideOf),
    ],
    names,
    count: names.length,
  };
};

/** What is recorded of one person: allergens first. */
const ofPerson = (person: Person): Say[] => [
  person.allergens.length > 0
    ? onRecord('person-watches', { name: person.name, allergens: list(person.allergens) })
    : say('person-none', { name: person.name }),
  ...(person.atRisk ? [say('person-is-at-risk', riskTold(person))] : []),
  ...besideOf(person),
  ...(dietsOf(person).length > 0
    ? [onRecord('person-eats', { name: person.name, diets: list(dietsOf(person)) })]
    : []),
];

/** "Who eats vegan?" */
const whoEats = (turn: Turn, diet: string): Reply => {
  const all = [...turn.kitchen.people.values()].filter((person) => dietsOf(person).includes(diet));
  const names = all.map(({ name }) => name);
  return {
    parts: [
      names.length > 0
        ? say('people-eat', { people: list(names), count: names.length, diet })
        : say('nobody-eats', { diet }),
    ],
    names,
    count: names.length,
  };
};

/** "Who must not have the hummus?" */
const whoMustNot = (turn: Turn, act: Act): Reply | null => {
  const found = act.slots.item ? findItems(turn, act.slots.item) : null;
  const item = found && !found.near ? found.items[0] : undefined;
  if (!item) return found?.unknown ? { parts: noSuch(turn, found.unknown) } : null;
  return forEverybody(turn, [item]);
};

export const whoAllergic: Handler = (act, turn) => {
  const wanted = act.slots.allergens ?? [];
  const mustNot = act.slots.item ? whoMustNot(turn, act) : null;
  if (mustNot) return mustNot;
  const { person, unknown } = personAsked(turn, act.slots);
  if (unknown && !person) return nobodyCalled(turn, act.slots, unknown);
  if (act.slots.asked === 'risk') return person ? careFor(person) : whoAtRisk(turn);
  if (person && wanted.length > 0) {
    const watched = wanted.filter((one) => person.allergens.includes(one));
    return {
      parts:
        watched.length > 0
          ? [say('person-watches-yes', { name: person.name, allergens: list(watched) })]
          : [
              say('person-watches-not', { name: person.name, allergens: list(wanted, true) }),
              ...ofPerson(person),
            ],
      memory: { personId: person.id },
    };
  }
  if (person && act.slots.diet) {
    const eats = dietsOf(person).includes(act.slots.diet);
    return {
      parts: [
        eats
          ? say('person-eats-yes', { name: person.name, diets: act.slots.diet })
          : say('person-eats-not', { name: person.name, diets: act.slots.diet }),
      ],
      memory: { personId: person.id },
    };
  }
  if (person)
    return { parts: [...ofPerson(person), ...visitOf(turn, person)], memory: { personId: person.id } };
  if (act.slots.diet) return whoEats(turn, act.slots.diet);
  const all = [...turn.kitchen.people.values()].filter(({ allergens }) =>
    wanted.length > 0 ? allergens.some((one) => wanted.includes(one)) : allergens.length > 0,
  );
  if (all.length === 0)
    return {
      parts: [
        wanted.length > 0
          ? say('nobody-allergic-to', { allergens: list(wanted, true) })
          : say('nobody-allergic'),
      ],
      count: 0,
    };
  const entries = all.map(({ name, allergens }) => say('person-with', { name, allergens: list(allergens) }));
  return {
    parts: [say('allergic-people', { people: list(entries) })],
    names: all.map(({ name }) => name),
    count: all.length,
  };
};

/** "Scrap the note for Ruth": the last one for her that she has not heard, else the last one left. */
const takeBack = (turn: Turn, person: Person | null): Reply => {
  const left = [...turn.kitchen.notes.values()]
    .filter(
      (note) => !note.heard && (note.fromPersonId === null || note.fromPersonId === turn.speaker.personId),
    )
    .sort((a, b) => a.at.localeCompare(b.at));
  const meant = person
    ? left.filter(({ forPersonId }) => forPersonId === person.id).slice(-1)
    : left.slice(-1);
  if (meant.length === 0)
    return { parts: [person ? say('no-notes-for', { name: person.name }) : say('no-notes')] };
  return withChange(
    turn,
    dropNotes(
      turn,
      meant.map(({ id }) => id),
    ),
    (change) => ({
      parts: [say('note-dropped', { text: list(meant.map(({ text }) => text)), count: meant.length })],
      changes: [change],
      doubt: say('confirm-drop-note', { text: list(meant.map(({ text }) => text)) }),
    }),
  );
};

/** "Sorry, he's coming at ten, not nine": the words that were wrong, in the message left last. */
const putRight = (turn: Turn, { words = '', not }: Slots): Reply | null => {
  const { done } = turn.state;
  const [note] = (done?.changes ?? []).flatMap(({ ops }) =>
    ops.flatMap((op) => (op.kind === 'note' && op.after ? (turn.kitchen.notes.get(op.id) ?? []) : [])),
  );
  if (!note) return null;
  const mended = mendNote(turn, note.id, { wrong: not?.words ?? '', right: words });
  if (isRefused(mended)) return null;
  const [op] = mended.ops;
  const text = op?.kind === 'note' && op.after ? op.after.text : note.text;
  const person = note.forPersonId ? turn.kitchen.people.get(note.forPersonId) : undefined;
  return {
    parts: [person ? say('note-left', { name: person.name, text }) : say('note-for-all', { text })],
    changes: [mended],
    memory: { personId: person?.id ?? null },
  };
};

/** "Tell Dele the soup is hers." */
export const leaveNote: Handler = (act, turn) => {
  if (act.slots.asked === 'put-right')
    return putRight(turn, act.slots) ?? { parts: [assent('nothing-to-correct')] };
  const { person, name } = personSaid(turn, act.slots);
  if (act.slots.negated) return (person ? null : askWhetherMeant(turn, act.slots)) ?? takeBack(turn, person);
  const { item } = act.slots;
  const { words } = act.slots;
  if (!person && name) {
    return { ...nobodyCalled(turn, act.slots, name), askFor: act };
  }
  if (!words)
    return {
      parts: [],
      ask: { slot: 'words', question: say('ask-note', { name: person?.name ?? '' }), expecting: 'words' },
    };
  const found = item ? findItems(turn, item).items : [];
  const itemId = found.length === 1 ? found[0]!.id : null;
  return withChange(
    turn,
    leaveNoteChange(turn, { text: words, forPersonId: person?.id ?? null, itemId }),
    (change) => ({
      parts: [
        person ? say('note-left', { name: person.name, text: words }) : say('note-for-all', { text: words }),
      ],
      changes: [change],
      doubt: say('confirm-note', { text: words }),
      memory: { personId: person?.id ?? null },
    }),
  );
};

export const noteWords = (turn: Turn, { fromPersonId, text, at }: Note): Say => {
  const from = fromPersonId ? turn.kitchen.people.get(fromPersonId) : undefined;
  return say('note-reads', { text, when: ago(at), ...(from ? { from: from.name } : {}) });
};

/** "What does the note on the stew say?" */
const notesOn = (turn: Turn, mention: Mention): Reply => {
  const found = needItem(turn, mention, {
    question: say('ask-about'),
    anyOfBatch: true,
    fitting: ({ notes, cautions }) => notes.length + cautions.length > 0,
  });
  if ('reply' in found) return found.reply;
  const item = found.got;
  // What somebody warned of is a note as well, and the first to be told.
  const parts = [
    ...item.cautions.map((caution) => say('item-caution', { caution })),
    ...(item.notes.length > 0
      ? [say('notes-on', { name: item.name, notes: list(item.notes), count: item.notes.length })]
      : item.cautions.length === 0
        ? [say('no-notes-on', { name: item.name })]
        : []),
  ];
  return {
    parts,
    memory: about(turn, [item]),
    names: [item.name],
    count: item.notes.length + item.cautions.length,
  };
};

/** What waits for somebody else is told, and stays unheard. */
const notesWaitingFor = (turn: Turn, person: Person): Reply => {
  const waiting = notesFor(turn.kitchen, person.id).filter(({ forPersonId }) => forPersonId === person.id);
  return {
    parts:
      waiting.length > 0
        ? [say('notes-waiting', { name: person.name, texts: list(waiting.map(({ text }) => text)) })]
        : [say('no-notes-for', { name: person.name })],
    memory: { personId: person.id },
    count: waiting.length,
  };
};

/** "Who's that from, and when": of what was read last. */
const sentBy = (turn: Turn): Reply => {
  const [last] = [...turn.kitchen.notes.values()]
    .filter(
      ({ forPersonId, heard }) => heard && (forPersonId === null || forPersonId === turn.speaker.personId),
    )
    .sort((a, b) => b.at.localeCompare(a.at));
  if (!last) return { parts: [say('no-notes')], count: 0 };
  const from = last.fromPersonId ? turn.kitchen.people.get(last.fromPersonId) : undefined;
  return {
    parts: [say('note-from', { when: ago(last.at), ...(from ? { from: from.name } : {}) })],
    count: 1,
  };
};

/** "Has Junie heard the message I left her?" */
const wasHeard = (turn: Turn, person: Person): Reply => {
  const all = [...turn.kitchen.notes.values()].filter(({ forPersonId }) => forPersonId === person.id);
  const waiting = all.filter(({ heard }) => !heard);
  const texts = list((waiting.length > 0 ? waiting : all).map(({ text }) => text));
  const { name } = person;
  if (all.length === 0) return { parts: [say('no-notes-for', { name })], count: 0 };
  return {
    parts: [say(waiting.length > 0 ? 'note-not-heard' : 'note-was-heard', { name, texts })],
    memory: { personId: person.id },
    count: all.length,
  };
};

/** Messages, read once: what was read out is marked as heard. */
export const notes: Handler = (act, turn) => {
  if (act.slots.item) return notesOn(turn, act.slots.item);
  const { person } = personSaid(turn, act.slots);
  const misheard = person ? null : askWhetherMeant(turn, act.slots);
  if (misheard) return misheard;
  if (act.slots.asked === 'from') return sentBy(turn);
  if (act.slots.asked === 'heard' && person) return wasHeard(turn, person);
  if (person && person.id !== turn.speaker.personId) return notesWaitingFor(turn, person);
  const mine = notesFor(turn.kitchen, turn.speaker.personId);
  if (mine.length === 0) return { parts: [say('no-notes')], count: 0 };
  const parts = mine.map((note) => noteWords(turn, note));
  const head = say('notes-count', { count: mine.length });
  return withChange(
    turn,
    heardNotes(
      turn,
      mine.map(({ id }) => id),
    ),
    (change) => ({
      parts: mine.length > 1 ? [head, ...parts] : parts,
      changes: [change],
      count: mine.length,
    }),
  );
};
