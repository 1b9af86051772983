/** Who eats here, and words left for one another. */
import {
  addPerson as addPersonChange,
  amendPerson,
  heardNotes,
  isRefused,
  leaveNote as leaveNoteChange,
  notesFor,
  personNamed,
} from '../../kitchen/index.js';
import type { Note, Person } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { Slots } from '../../understanding/intents.js';
import { withChange } from '../describe/refusals.js';
import { type Handler, type Turn, ago, list, say, speakerPerson } from '../handler.js';
import { findItems } from '../refer/items.js';

const surelyThem = 0.85;

/** The person meant, if the household knows her; "me" is whoever speaks. */
export const personSaid = (turn: Turn, slots: Slots): { person: Person | null; name: string | null } => {
  const said = slots.person;
  if (!said) return { person: null, name: null };
  if (/^(me|i|my|myself|us)$/i.test(said.words)) return { person: speakerPerson(turn) ?? null, name: null };
  // A name that only sounds like one is somebody new.
  const near = said.candidates.find(({ fit }) => fit >= surelyThem);
  const known = near ? turn.kitchen.people.get(near.id) : undefined;
  return { person: known ?? personNamed(turn.kitchen, said.words), name: said.words };
};

const capital = (name: string): string => name.replace(/(^|\s)\p{Ll}/gu, (letter) => letter.toUpperCase());

export const addPerson: Handler = (act, turn) => {
  const { slots } = act;
  const { person, name } = personSaid(turn, slots);
  const allergens = slots.allergens ?? [];
  if (person) {
    const facts = slots.negated ? { removeAllergens: allergens } : { addAllergens: allergens };
    const result = amendPerson(turn, person.id, {
      ...facts,
      ...(slots.asked === 'risk' ? { atRisk: !slots.negated } : {}),
    });
    if (isRefused(result) && result.refused === 'nothing-changes') {
      return { parts: [say('person-known', { name: person.name })], memory: { personId: person.id } };
    }
    return withChange(turn, result, (change) => ({
      parts: [
        say(slots.negated ? 'person-no-longer' : 'person-watches', {
          name: person.name,
          allergens: list(allergens),
        }),
      ],
      changes: [change],
      doubt: say('confirm-person', {
        name: person.name,
        ...(allergens.length > 0 ? { allergens: list(allergens) } : {}),
      }),
      memory: { personId: person.id },
    }));
  }
  const called = name ?? slots.words;
  if (!called) return { parts: [], ask: { slot: 'person', question: say('ask-person'), expecting: 'words' } };
  const named = capital(called);
  return withChange(turn, addPersonChange(turn, { name: named, allergens }), (change) => ({
    parts: [
      say('person-added', { name: named }),
      ...(allergens.length > 0 ? [say('person-watches', { name: named, allergens: list(allergens) })] : []),
    ],
    changes: [change],
    doubt: say('confirm-person', {
      name: named,
      ...(allergens.length > 0 ? { allergens: list(allergens) } : {}),
    }),
    memory: { personId: change.ops[0]!.id },
  }));
};

export const people: Handler = (_act, turn) => {
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

export const whoAllergic: Handler = (act, turn) => {
  const wanted = act.slots.allergens ?? [];
  const { person } = personSaid(turn, act.slots);
  if (person) {
    const parts = [
      person.allergens.length > 0
        ? say('person-watches', { name: person.name, allergens: list(person.allergens) })
        : say('person-none', { name: person.name }),
    ];
    return { parts, memory: { personId: person.id } };
  }
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

/** The message as it was said: all that follows the name. */
const messageIn = (turn: Turn, { words, person }: Slots): string | undefined => {
  const heard = turn.heard?.toLowerCase() ?? '';
  const name = person?.words.toLowerCase();
  const at = name ? heard.indexOf(name) : -1;
  const after =
    at < 0 || !name
      ? ''
      : heard
          .slice(at + name.length)
          .replace(/^\s*(know\s+)?(that\s+)?/, '')
          .trim();
  return words && after.includes(words.toLowerCase()) ? after : words;
};

/** "Tell Dele the soup is hers." */
export const leaveNote: Handler = (act, turn) => {
  const { person, name } = personSaid(turn, act.slots);
  const { item } = act.slots;
  const words = messageIn(turn, act.slots);
  if (!person && name) {
    return { parts: [say('unknown-person', { name })] };
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

/** Messages, read once: what was read out is marked as heard. */
export const notes: Handler = (_act, turn) => {
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
