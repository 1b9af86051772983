/** What is asked of lines of the list: how many, since when, who asked for it, from where, which kind, for whom. */
import { itMention, type Act, type Slots } from '../../../intents.js';
import { is, some, type Bit } from '../bits.js';
import { personIn, type Talk } from './lines.js';
import { isIdle, isLine, isSection } from './pieces.js';

const heads = [
  ...(['how-many', 'how-long', 'when', 'who', 'who-for', 'where', 'what', 'kind'] as const),
] as const;

const read = (slots: Slots): Act => ({ intent: 'buy-read', slots });

const onlyOf = (bits: readonly Bit[], classes: readonly string[], kind?: Bit['kind']): boolean =>
  bits.every((bit) => isIdle(bit) || bit.kind === kind || is(bit, 'topic', 'there', 'aux-ask', ...classes));

/** Null where it asks nothing of the list. */
export const askedOf = ({ bits, tokens, list }: Talk): Act | null => {
  const marked = bits.some((bit) => is(bit, 'topic', 'there')) || list.talk;
  if (
    some(bits, 'longest') &&
    some(bits, 'what') &&
    marked &&
    onlyOf(bits, ['longest', 'things', 'did-put', 'went-on', 'what', 'kind-head'])
  )
    return read({ asked: 'oldest' });
  const whom = bits.flatMap((bit) => personIn(bit) ?? []);
  if (
    some(bits, 'cannot') &&
    whom.length === 1 &&
    marked &&
    onlyOf(bits, ['cannot', 'what', 'things', 'whatever'], 'person')
  )
    return read({ asked: 'cannot', person: whom[0]! });
  const section = bits.find((bit) => bit.kind === 'thing' && isSection(bit.mention.words ?? '', list));
  if (section && some(bits, 'what') && (some(bits, 'topic', 'to-get', 'left', 'need') || list.talk)) {
    if (onlyOf(bits, ['what', 'to-get', 'need', 'left', 'things', 'did-put'], 'thing'))
      return read({ asked: 'section', words: tokens.slice(section.from, section.to).join(' ') });
  }
  const first = bits.find((bit) => !is(bit, 'fill', 'aside', 'opener', 'else-on') || is(bit, ...heads));
  if (!first || !is(first, ...heads)) return isItThere(bits, list);
  const says = (...classes: readonly string[]): boolean => some(bits.slice(1), ...classes);
  const thing = bits.find((bit) => bit.kind === 'thing');
  const named = thing?.kind === 'thing' ? thing.mention : null;
  const pointed = bits.some(
    (bit) => bit.kind === 'pointer' || (is(bit, 'it', 'them', 'one') && bit !== first),
  );
  const onIt = says('topic');
  const ofList = onIt || list.talk;
  const item = named ?? (pointed ? itMention : null);
  // "How many lemons are we getting", with no word of the list, where lemons are on it.
  const ofLine = named?.words ? isLine(named.words, list) : false;
  const other = bits.some((bit) => ['place', 'marker', 'day', 'time', 'span'].includes(bit.kind));
  const persons = bits.flatMap((bit) => personIn(bit) ?? []);
  const [person] = persons;
  if (other || persons.length > 1) return null;
  const things = bits.filter(({ kind }) => kind === 'thing').length;
  const strange = bits.filter(
    (bit) =>
      bit !== first &&
      !isIdle(bit) &&
      bit.kind !== 'pointer' &&
      bit.kind !== 'thing' &&
      bit.kind !== 'person' &&
      !is(
        bit,
        ...([
          'topic',
          'there',
          'did-put',
          'did-want',
          'to-get',
          'things',
          'food',
          'not',
          'not-food',
          'left',
        ] as const),
        ...([
          'saying',
          'ought',
          'went-on',
          'aux-ask',
          'it',
          'them',
          'one',
          'from',
          'shop-kind',
          'some-time',
          'need',
          'kind-head',
          'for',
          'only',
        ] as const),
      ),
  );
  if (strange.length > 0 || things > 1) return null;
  if (is(first, 'what') && (onIt || (list.talk && says('there'))) && says('not-food'))
    return read({ asked: 'not-food' });
  if (is(first, 'what') && onIt && says('food') && !says('not', 'need')) return read({ asked: 'food' });
  const shop = bits.find((bit) => is(bit, 'shop-kind'));
  if (is(first, 'what') && shop && !item && (ofList || says('to-get', 'need')))
    return read({ asked: 'section', words: tokens.slice(shop.from, shop.to).join(' ') });
  if (is(first, 'what') && person && !item && (onIt || (list.talk && says('there', 'did-put'))))
    return read({ asked: 'whose', person, ...(says('did-put') ? { deed: 'listed' } : {}) });
  if (is(first, 'what') && !item && !person && !shop && says('left', 'need') && (list.talk || onIt))
    return read({ asked: 'left' });
  const some_ = item !== null && (onIt || (list.talk && (!named || ofLine || says('there'))));
  if (is(first, 'how-many') && (some_ || (ofLine && says('to-get', 'need', 'left'))))
    return item ? read({ asked: 'amount', item }) : null;
  if (
    is(first, 'how-many') &&
    !item &&
    list.talk &&
    list.about.length === 1 &&
    bits.every((bit) => bit === first || isIdle(bit))
  )
    return read({ asked: 'amount', item: itMention });
  if (
    is(first, 'how-long', 'when') &&
    item &&
    (ofList || (ofLine && says('went-on'))) &&
    (onIt || says('there', 'did-put'))
  )
    return read({ asked: 'when', item });
  if (is(first, 'where') && item && (says('to-get', 'from', 'need') || onIt) && (ofLine || ofList))
    return read({ asked: 'shop', item });
  if (is(first, 'kind') && item && (ofLine || ofList) && (onIt || list.talk || says('to-get', 'need')))
    return read({ asked: 'note', item });
  if (is(first, 'who', 'who-for') && item && (ofLine || ofList) && (onIt || list.talk)) {
    const ends = bits.at(-1);
    const whom = is(ends, 'for') || is(first, 'who-for') || says('did-want');
    if (says('did-put') && !is(ends, 'for')) return read({ asked: 'who', item });
    return whom ? read({ asked: 'whom', item }) : null;
  }
  return null;
};

/** "Is it on the list", of what was just spoken of. */
const isItThere = (bits: readonly Bit[], list: Talk['list']): Act | null => {
  const at = bits.findIndex((bit) => !is(bit, 'opener', 'aside') || is(bit, 'is'));
  const pointed = bits.some((bit) => bit.kind === 'pointer' || is(bit, 'it', 'them'));
  if (!is(bits[at], 'is') || !pointed || list.about.length === 0) return null;
  const rest = bits.slice(at + 1);
  const only = rest.every(
    (bit) => bit.kind === 'pointer' || isIdle(bit) || is(bit, 'it', 'them', 'topic', 'there'),
  );
  return only && (some(rest, 'topic') || (list.talk && some(rest, 'there')))
    ? read({ item: itMention })
    : null;
};

/** Put as a question: nothing is changed by it. */
export const isQuestion = (bits: readonly Bit[]): boolean => {
  const opens = bits.find((bit) => !is(bit, 'opener', 'aside') || is(bit, 'aux-ask'));
  const first = bits.find((bit) => !isIdle(bit));
  return is(opens, 'aux-ask') || (is(first, ...heads) && !is(first, 'if', 'need'));
};
