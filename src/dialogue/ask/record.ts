/**
 * What was asked last and what was told of it: one object, whatever answered. A follow-up is a change to
 * this question; "those", "the others", "the second" are its members.
 */
import type { Id } from '../../kitchen/model.js';
import type { Attribute, Filter, Query, Who } from '../../protocol/query.js';
import type { Act, Intent, Slots } from '../../understanding/intents.js';
import type { Asked, Memory } from '../state.js';

const subjectsKept = 8;

const asks: Readonly<Partial<Record<Intent, Attribute>>> = {
  find: 'where',
  count: 'how-many',
  'how-old': 'how-old',
  'item-date': 'until',
  keeps: 'good',
  contains: 'contents',
  'can-eat': 'what',
  'tell-about': 'all',
  'whats-this': 'what',
  'use-first': 'use-first',
  'how-to-reach': 'where',
  'who-allergic': 'people',
  'who-did': 'maker',
};

const dated: Readonly<Record<string, Attribute>> = {
  made: 'date:made',
  bought: 'date:bought',
  opened: 'date:opened',
  frozen: 'date:frozen',
  thawed: 'date:thawed',
};

/** What a reading of the whole sentence asks of a thing, where it asks for anything in particular. */
export const attributeOf = ({ intent, slots }: Act): Attribute | null => {
  if (intent === 'item-date' && slots.asked && dated[slots.asked]) return dated[slots.asked]!;
  if (intent === 'tell-about' && (slots.asked === 'feel' || slots.asked === 'owner')) return slots.asked;
  return slots.asked === 'freeze' ? null : (asks[intent] ?? null);
};

const filtersOf = (intent: Intent, slots: Slots): readonly Filter[] => {
  const { item, items, place, maker, diet, allergens, free, person, marker, asked } = slots;
  // A name that is nobody's here was "he" or "she": whoever was spoken of.
  const who: Who | null = person
    ? person.candidates.length > 0
      ? { who: 'named', person }
      : { who: 'same' }
    : null;
  const filters: Filter[] = [];
  if (items && items.length > 0) filters.push({ by: 'each', mentions: items });
  else if (item && (item.words !== null || item.candidates.length > 0))
    filters.push({ by: 'named', mention: item });
  const at = place ?? item?.at;
  if (at) filters.push({ by: 'place', places: [at] });
  const by = maker ?? item?.maker;
  if (by) filters.push({ by: 'maker', who: { who: 'named', person: { words: by, candidates: [] } } });
  if (diet) filters.push({ by: 'diet', diet });
  if (allergens && intent !== 'add-person') filters.push({ by: free ? 'free' : 'contains', allergens });
  if (marker?.touch) filters.push({ by: 'felt', touch: marker.touch, candidates: marker.candidates });
  if (who && intent === 'can-eat') filters.push({ by: 'suits', who, is: true });
  if (who && intent === 'who-did' && asked === 'made') filters.push({ by: 'maker', who });
  return filters;
};

/** A question that an older way of reading made, as one of this kind; null where it was none. */
export const queryOf = ({ intent, slots }: Act): Query | null => {
  const ask = attributeOf({ intent, slots });
  if (slots.query) return slots.query;
  if (!ask) return null;
  const where = filtersOf(intent, slots);
  const subject = where.some(({ by }) => by === 'named' || by === 'each');
  const wanted =
    intent === 'item-date' && slots.asked && dated[slots.asked]
      ? dated[slots.asked]!
      : (intent === 'contains' && (slots.allergens ?? slots.diet)) ||
          ((intent === 'find' || intent === 'who-did' || intent === 'contains') && !subject)
        ? 'what'
        : ask;
  return { where, ask: [wanted], whether: intent === 'can-eat', order: null, by: null };
};

/** What may still be chosen of a list read before is no part of an answer about something that was named since. */
const membersIn = (
  { items = [], offered = [] }: Partial<Memory>,
  named: boolean,
  offeredBefore: readonly Id[],
): readonly Id[] => {
  const kept = named && items.length > 0 && offered === offeredBefore;
  return [...new Set(!kept && offered.length >= items.length ? offered : items)];
};

/** The record after an act was answered: what it told, if it told of things. */
export const askedAfter = (
  was: Asked | null,
  act: Act,
  reply: { readonly asked?: Pick<Asked, 'query' | 'members'>; readonly memory?: Partial<Memory> },
  turn: number,
  offeredBefore: readonly Id[],
): Asked | null => {
  const query = reply.asked?.query ?? queryOf(act);
  const named = query?.where.some(({ by }) => by === 'named' || by === 'each') ?? false;
  const members = reply.asked?.members ?? membersIn(reply.memory ?? {}, named, offeredBefore);
  // "Go on" is about what was asked before it: a follow-up after it is one of that.
  if (act.intent === 'continue' && was) return { ...was, turn };
  if (!query) {
    // What was done to a thing makes it the subject, and asks nothing.
    if (members.length === 0) return was;
    const done: Query = { where: [], ask: [], whether: false, order: null, by: null };
    return { query: done, members, turn, subjects: was?.subjects ?? [] };
  }
  const subjects = [...(was?.subjects ?? []), ...(members.length > 0 ? [members] : [])].slice(
    0,
    subjectsKept,
  );
  return { query, members, turn, subjects };
};
