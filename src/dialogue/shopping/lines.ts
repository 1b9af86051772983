/** What is asked of lines of the list: how many, since when, who put them there, where from, which kind, for whom. */
import { shoppingList } from '../../kitchen/index.js';
import type { JournalEntry, Purchase } from '../../kitchen/model.js';
import type { Say, Value } from '../../speech/answer.js';
import type { Act, Slots } from '../../understanding/intents.js';
import { allergenIn } from '../../safety/index.js';
import { isGoods } from '../../understanding/index.js';
import { type Reply, type Turn, ago, list, say } from '../handler.js';
import { personSaid } from '../people/people.js';
import { lineName, lineWords, linesSaid } from './said.js';

const told = (lines: readonly Purchase[], parts: readonly Say[]): Reply => ({
  parts,
  memory: { purchases: lines.map(({ id }) => id) },
  names: lines.map(({ name }) => name),
  count: lines.length,
});

/** When it was put on, and by whom; else when it was last changed there. */
const entryOf = ({ journal }: Turn, line: Purchase): JournalEntry | undefined => {
  const entries = journal.filter(
    ({ verb, ops }) => verb === 'put on the list' && ops.some(({ id, after }) => id === line.id && after),
  );
  return (
    entries.find(({ ops }) => ops.some(({ id, before }) => id === line.id && before === null)) ?? entries[0]
  );
};

const nameOf = (turn: Turn, id: string | null | undefined): string | null =>
  id ? (id === turn.speaker.personId ? 'you' : (turn.kitchen.people.get(id)?.name ?? null)) : null;

const howMany = (line: Purchase): Say =>
  line.amount ? say('line-amount', { item: lineName(line) }) : say('line-no-amount', { name: line.name });

const since = (line: Purchase): Say => say('line-since', { name: line.name, when: ago(line.addedAt) });

const whoPut = (turn: Turn, line: Purchase): Say => {
  const who = nameOf(turn, entryOf(turn, line)?.personId ?? line.addedBy);
  return who
    ? say('listed-by', { name: line.name, who, when: ago(entryOf(turn, line)?.at ?? line.addedAt) })
    : say('nobody-listed', { name: line.name });
};

const forWhom = (turn: Turn, line: Purchase): readonly Say[] => {
  const who = nameOf(turn, line.forPersonId);
  return who
    ? [say('line-for', { name: line.name, person: who })]
    : [say('line-for-nobody', { name: line.name }), whoPut(turn, line)];
};

const where = (line: Purchase): Say =>
  line.shop
    ? say('line-shop', { name: line.name, shop: line.shop })
    : line.section
      ? say('line-section', { name: line.name, section: line.section })
      : say('line-no-shop', { name: line.name });

const kind = (turn: Turn, line: Purchase): Say =>
  line.note
    ? say('line-kind', { item: lineWords(turn.kitchen, line) })
    : say('line-no-kind', { name: line.name });

const ofLine = (turn: Turn, asked: string, line: Purchase): readonly Say[] | null => {
  switch (asked) {
    case 'amount':
      return [howMany(line)];
    case 'when':
      return [since(line)];
    case 'who':
      return [whoPut(turn, line)];
    case 'whom':
      return forWhom(turn, line);
    case 'shop':
      return [where(line)];
    case 'note':
      return [kind(turn, line)];
    default:
      return null;
  }
};

/** "What's on there for Junie", "what did Junie ask for". */
const whose = (turn: Turn, slots: Slots): Reply => {
  const { person, name } = personSaid(turn, slots);
  const all = shoppingList(turn.kitchen);
  const put = (line: Purchase): boolean =>
    slots.deed === 'listed' && (entryOf(turn, line)?.personId ?? line.addedBy) === person?.id;
  const lines = person ? all.filter((line) => line.forPersonId === person.id || put(line)) : [];
  const who = person ? (nameOf(turn, person.id) ?? person.name) : (name ?? '');
  return lines.length > 0
    ? told(lines, [say('lines-for', { person: who, items: list(lines.map(lineName)) })])
    : told([], [say('lines-for-nobody', { person: who })]);
};

/** What is nothing to eat, or all that is. */
const byKind = (turn: Turn, food: boolean): Reply => {
  const all = shoppingList(turn.kitchen);
  const lines = all.filter(({ name }) => isGoods(name, turn.locale) !== food);
  const items: Value = list(lines.map(lineName));
  return lines.length > 0
    ? told(lines, [say('lines-of-kind', { items, count: lines.length })])
    : told([], [say(food ? 'lines-no-food' : 'lines-only-food')]);
};

/** All that is still to buy. */
const left = (turn: Turn): Reply => {
  const all = shoppingList(turn.kitchen);
  return all.length === 0
    ? { parts: [say('list-empty-now')], count: 0, names: [] }
    : told(all, [
        say('left-on-list', {
          items: list(all.map((line) => lineWords(turn.kitchen, line))),
          count: all.length,
        }),
      ]);
};

/** "Which has been on the longest": those that were put on at that moment. */
const oldest = (turn: Turn): Reply => {
  const all = shoppingList(turn.kitchen);
  const at = all.map(({ addedAt }) => addedAt).sort()[0];
  const lines = all.filter(({ addedAt }) => addedAt === at);
  return lines.length > 0
    ? told(lines, lines.map(since))
    : { parts: [say('list-empty-now')], count: 0, names: [] };
};

/** "Anything on it Junie can't have": by what the names tell, and no more is known of what is not bought yet. */
const notFor = (turn: Turn, slots: Slots): Reply => {
  const { person, name } = personSaid(turn, slots);
  const who = person ? (nameOf(turn, person.id) ?? person.name) : (name ?? '');
  if (!person || person.allergens.length === 0) return { parts: [say('list-no-watch', { person: who })] };
  const risks = (line: Purchase): readonly string[] =>
    person.allergens.filter((allergen) => {
      const { answer } = allergenIn({ name: line.name, contains: [], freeFrom: [] }, allergen);
      return answer === 'usually-contains' || answer === 'said-to-contain';
    });
  const lines = shoppingList(turn.kitchen).filter((line) => risks(line).length > 0);
  return told(lines, [
    lines.length > 0
      ? say('list-not-for', {
          person: who,
          items: list(lines.map(lineName)),
          allergens: list([...new Set(lines.flatMap(risks))]),
        })
      : say('list-none-against', { person: who }),
    say('list-by-name'),
  ]);
};

/** Null where something else is asked of the list. */
export const aboutLines = ({ slots }: Act, turn: Turn): Reply | null => {
  const { asked } = slots;
  if (!asked) return null;
  if (asked === 'whose') return whose(turn, slots);
  if (asked === 'food' || asked === 'not-food') return byKind(turn, asked === 'food');
  if (asked === 'left') return left(turn);
  if (asked === 'oldest') return oldest(turn);
  if (asked === 'cannot') return notFor(turn, slots);
  const { lines, unknown } = linesSaid(turn, slots);
  if (lines.length === 0 && unknown.length > 0 && ofLineOnly.has(asked))
    return { parts: [say('not-on-list', { items: list(unknown, true) })], count: 0 };
  const parts = lines.map((line) => ofLine(turn, asked, line));
  const said = parts.flatMap((part) => part ?? []);
  return said.length > 0 ? told(lines, said) : null;
};
const ofLineOnly: ReadonlySet<string> = new Set(['amount', 'when', 'who', 'whom', 'shop', 'note']);
