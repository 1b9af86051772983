/** People of the household, and words left for them. */
import { isPlainDate, type PlainDate } from '../../terms/dates.js';
import type { Id, Kitchen, Note, Person } from '../model.js';
import { change, op, refuse, type Doing, type Result } from '../doing.js';

const sameName = (a: string, b: string): boolean =>
  a.trim().localeCompare(b.trim(), 'en', { sensitivity: 'base' }) === 0;

export const personNamed = (kitchen: Kitchen, name: string): Person | null =>
  [...kitchen.people.values()].find((person) => sameName(person.name, name)) ?? null;

const wordsOf = (name: string): readonly string[] => name.trim().toLowerCase().split(/\s+/u);
const holdsAll = (words: readonly string[], all: readonly string[]): boolean =>
  words.length > 0 && words.every((word) => all.includes(word));

/**
 * Whoever may be called so: by the whole name, else by part of it ("Bea" for Aunt Bea) or with a word beside it
 * ("Auntie Amara"). More than one where it cannot be told which is meant.
 */
export const peopleCalled = (kitchen: Kitchen, said: string): readonly Person[] => {
  const whole = personNamed(kitchen, said);
  if (whole) return [whole];
  const words = wordsOf(said);
  return [...kitchen.people.values()].filter(({ name }) => {
    const own = wordsOf(name);
    return holdsAll(words.filter(Boolean), own) || holdsAll(own, words);
  });
};

/** The one who is called so; null for nobody, and where several may be. */
export const personCalled = (kitchen: Kitchen, said: string): Person | null => {
  const [one, ...more] = peopleCalled(kitchen, said);
  return one && more.length === 0 ? one : null;
};

/** Words of a household's own with everybody's name as it is on record: "for dele" is for Dele. */
export const withPeopleNames = (kitchen: Kitchen, text: string): string => {
  const words = text.split(' ');
  for (const { name } of kitchen.people.values()) {
    const called = name.split(' ');
    for (const at of words.keys())
      if (called.every((word, n) => words[at + n]?.toLowerCase() === word.toLowerCase()))
        words.splice(at, called.length, ...called);
  }
  return words.join(' ');
};

/** A new person. Refused: no-name, not-a-date, person-exists (`ids`). */
export const addPerson = (
  doing: Doing,
  person: { readonly name: string } & Partial<Omit<Person, 'id' | 'name'>>,
): Result => {
  if (person.name.trim() === '') return refuse('no-name');
  if (person.comesOn !== undefined && !isPlainDate(person.comesOn)) return refuse('not-a-date');
  const known = personNamed(doing.kitchen, person.name);
  if (known) return refuse('person-exists', { ids: [known.id], about: [known.name] });
  const made: Person = {
    id: doing.newId(),
    name: person.name.trim(),
    eatsHere: person.eatsHere ?? true,
    allergens: person.allergens ?? [],
    ...(person.diets?.length ? { diets: person.diets } : {}),
    atRisk: person.atRisk ?? false,
    ...(person.risks?.length ? { risks: person.risks } : {}),
    ...(person.needs?.length ? { needs: person.needs } : {}),
    ...(person.comesOn ? { comesOn: person.comesOn } : {}),
  };
  return change('set', [made.name], [op('person', made.id, null, made)]);
};

export interface PersonFacts {
  readonly name?: string;
  readonly eatsHere?: boolean;
  readonly atRisk?: boolean;
  readonly addRisks?: readonly string[];
  readonly addAllergens?: readonly string[];
  readonly removeAllergens?: readonly string[];
  readonly addDiets?: readonly string[];
  readonly removeDiets?: readonly string[];
  readonly addNeeds?: readonly string[];
  readonly removeNeeds?: readonly string[];
  /** Null: on no day that is known. */
  readonly comesOn?: PlainDate | null;
}

/** Left out when there are none, as it was before anybody said. */
const dietsWith = (
  { diets = [] }: Person,
  { addDiets = [], removeDiets = [] }: PersonFacts,
): Pick<Person, 'diets'> => {
  const kept = diets.filter((diet) => !removeDiets.includes(diet));
  const after = [...kept, ...addDiets.filter((diet) => !kept.includes(diet))];
  return after.length > 0 || diets.length > 0 ? { diets: after } : {};
};

/** Nobody stays at risk of a kind once it is said that she is not at risk. */
const risksWith = ({ risks = [] }: Person, { atRisk, addRisks = [] }: PersonFacts): Pick<Person, 'risks'> => {
  const after = atRisk === false ? [] : [...new Set([...risks, ...addRisks])];
  return after.length > 0 || risks.length > 0 ? { risks: after } : {};
};

/** Each once, in the order told. */
const needsWith = (
  { needs = [] }: Person,
  { addNeeds = [], removeNeeds = [] }: PersonFacts,
): Pick<Person, 'needs'> => {
  const kept = needs.filter((need) => !removeNeeds.includes(need));
  return addNeeds.length > 0 || removeNeeds.length > 0 ? { needs: [...new Set([...kept, ...addNeeds])] } : {};
};

/** A person as she was, less a day that is to be forgotten. */
const withDay = (person: Person, { comesOn }: PersonFacts): Person => {
  if (comesOn === undefined || comesOn === person.comesOn) return person;
  const { comesOn: _was, ...dayless } = person;
  return comesOn === null ? dayless : { ...dayless, comesOn };
};

/** Refused: unknown-person, no-name, person-exists, not-a-date, nothing-changes. */
export const amendPerson = (doing: Doing, personId: Id, facts: PersonFacts): Result => {
  const person = doing.kitchen.people.get(personId);
  if (!person) return refuse('unknown-person', { ids: [personId] });
  if (typeof facts.comesOn === 'string' && !isPlainDate(facts.comesOn)) return refuse('not-a-date');
  if (facts.name !== undefined) {
    if (facts.name.trim() === '') return refuse('no-name');
    const known = personNamed(doing.kitchen, facts.name);
    if (known && known.id !== personId)
      return refuse('person-exists', { ids: [known.id], about: [known.name] });
  }
  const kept = person.allergens.filter((allergen) => !facts.removeAllergens?.includes(allergen));
  const after: Person = {
    ...withDay(person, facts),
    name: facts.name?.trim() ?? person.name,
    eatsHere: facts.eatsHere ?? person.eatsHere,
    atRisk: facts.atRisk ?? person.atRisk,
    ...risksWith(person, facts),
    ...needsWith(person, facts),
    ...dietsWith(person, facts),
    allergens: [...kept, ...(facts.addAllergens ?? []).filter((allergen) => !kept.includes(allergen))],
  };
  if (JSON.stringify(after) === JSON.stringify(person)) {
    return refuse('nothing-changes', { ids: [personId], about: [person.name] });
  }
  return change('set', [after.name], [op('person', personId, person, after)]);
};

/** Notes a person has not heard yet, oldest first: theirs, and those for everyone from others. */
export const notesFor = (kitchen: Kitchen, personId: Id | null): readonly Note[] =>
  [...kitchen.notes.values()]
    .filter(
      ({ heard, forPersonId, fromPersonId }) =>
        !heard &&
        (forPersonId === null
          ? fromPersonId === null || fromPersonId !== personId
          : forPersonId === personId),
    )
    .sort((a, b) => a.at.localeCompare(b.at));

/** "Tell Dele the soup is hers." Null: for whoever asks next. Refused: no-name (no words), unknown-person, unknown-item. */
export const leaveNote = (
  doing: Doing,
  note: { readonly text: string; readonly forPersonId: Id | null; readonly itemId?: Id | null },
): Result => {
  if (note.text.trim() === '') return refuse('no-name');
  const person = note.forPersonId === null ? null : doing.kitchen.people.get(note.forPersonId);
  if (person === undefined)
    return refuse('unknown-person', { ids: note.forPersonId ? [note.forPersonId] : [] });
  if (note.itemId && !doing.kitchen.items.has(note.itemId)) {
    return refuse('unknown-item', { ids: [note.itemId] });
  }
  const made: Note = {
    id: doing.newId(),
    forPersonId: note.forPersonId,
    fromPersonId: doing.speaker.personId,
    text: note.text.trim(),
    itemId: note.itemId ?? null,
    at: doing.clock.now,
    heard: false,
  };
  return change('noted', person ? [person.name] : [], [op('note', made.id, null, made)]);
};

/** Where a message holds these words, whole; -1 where it does not. */
const wordsAt = (text: string, words: string): number => {
  const at = text.toLowerCase().indexOf(words.toLowerCase());
  const edge = (index: number): boolean => !/[\p{L}\p{N}]/u.test(text.charAt(index));
  return at >= 0 && edge(at - 1) && edge(at + words.length) ? at : -1;
};

/** Other words of a message in the place of these. Refused: unknown-note, no-name (it does not hold them). */
export const mendNote = (
  doing: Doing,
  noteId: Id,
  { wrong, right }: { readonly wrong: string; readonly right: string },
): Result => {
  const note = doing.kitchen.notes.get(noteId);
  if (!note) return refuse('unknown-note', { ids: [noteId] });
  const at = wrong === '' ? -1 : wordsAt(note.text, wrong);
  if (at < 0 || right === '') return refuse('no-name');
  const text = `${note.text.slice(0, at)}${right}${note.text.slice(at + wrong.length)}`;
  return change('noted', [], [op('note', noteId, note, { ...note, text })]);
};

/** Takes back words that were left, heard or not. Refused: unknown-note, too-few. */
export const dropNotes = (doing: Doing, noteIds: readonly Id[]): Result => {
  if (noteIds.length === 0) return refuse('too-few');
  const notes = noteIds.flatMap((id) => doing.kitchen.notes.get(id) ?? []);
  if (notes.length < noteIds.length) return refuse('unknown-note', { ids: noteIds });
  return change(
    'noted',
    [],
    notes.map((note) => op('note', note.id, note, null)),
  );
};

/** Notes that were read out. Refused: unknown-note, too-few. */
export const heardNotes = (doing: Doing, noteIds: readonly Id[]): Result => {
  if (noteIds.length === 0) return refuse('too-few');
  const notes = noteIds.map((id) => doing.kitchen.notes.get(id));
  const missing = noteIds.filter((_, index) => notes[index] === undefined);
  if (missing.length > 0) return refuse('unknown-note', { ids: missing });
  return change(
    'noted',
    [],
    notes.flatMap((note) => (note ? [op('note', note.id, note, { ...note, heard: true })] : [])),
  );
};
