/**
 * "Who can have the soup", "are the kids all right with it": one food, and everybody who watches for something. Who
 * must not have it is told first, and of whom nobody knows last; nobody is promised anything by a date.
 */
import type { Item, Person } from '../../kitchen/model.js';
import type { AllergenAnswer } from '../../safety/api.js';
import { allergenIn, assessIn } from '../../safety/index.js';
import type { Say } from '../../speech/answer.js';
import { cautionWords, distinct, verdictWords } from '../describe/guidance.js';
import { type Reply, type Turn, about, list, say } from '../handler.js';
import { riskCautions } from './risk-cautions.js';
import { worse } from './sorted.js';

type Answer = AllergenAnswer['answer'];

interface Watched {
  readonly person: Person;
  readonly allergen: string;
  readonly answer: Answer;
}

const together = (phrase: string, name: string, some: readonly Watched[]): Say[] =>
  some.length === 0
    ? []
    : [
        say(phrase, {
          name,
          people: list([...new Set(some.map(({ person }) => person.name))]),
          allergens: list([...new Set(some.map(({ allergen }) => allergen))], true),
        }),
      ];

const peopleOf = ({ kitchen }: Turn): readonly Person[] => [...kitchen.people.values()];

/** What is known of one name's things for each who watches; of several things the one to be warned of most. */
const watchedIn = (people: readonly Person[], items: readonly Item[]): readonly Watched[] =>
  people
    .flatMap((person) =>
      person.allergens.map((allergen): Watched => {
        const answers = items.map((item) => allergenIn(item, allergen).answer).sort(worse);
        return { person, allergen, answer: answers[0]! };
      }),
    )
    .sort((a, b) => worse(a.answer, b.answer));

/** What is past guidance is nobody's. */
const pastOf = (turn: Turn, items: readonly Item[]): Say[] => {
  const ages = items.map((item) => assessIn(turn.kitchen, item, turn.clock));
  return ages.every(({ verdict }) => verdict === 'throw-out') ? [verdictWords(ages[0]!, items[0]!.name)] : [];
};

/** Warnings of every name first; of more than one name, what nobody recorded is one sentence. `people`: of these alone. */
export const forEverybody = (
  turn: Turn,
  items: readonly Item[],
  people: readonly Person[] = peopleOf(turn),
): Reply => {
  const names = [...new Set(items.map(({ name }) => name))];
  const found = names.map((name) => {
    const some = items.filter((item) => item.name === name);
    return { name, some, all: watchedIn(people, some) };
  });
  const warnings = found.flatMap(({ name, all }) =>
    all
      .filter(({ answer }) => answer !== 'unknown' && answer !== 'said-free-from')
      .map(({ person, allergen, answer }) =>
        say('person-and-food', { person: person.name, name, allergen, answer }),
      ),
  );
  const unknown = found.filter(({ all }) => all.some(({ answer }) => answer === 'unknown'));
  const of = (all: readonly Watched[], answer: Answer): readonly Watched[] =>
    all.filter((one) => one.answer === answer);
  const risks = people.flatMap((person) =>
    items.flatMap((item) => riskCautions(turn, person, item).map(cautionWords)),
  );
  const nobody = found.every(({ all }) => all.length === 0);
  // Asked of some by name: that nothing is on record of one is said, too.
  const asked = people.length < turn.kitchen.people.size ? people : [];
  const clear = asked
    .filter(({ allergens }) => allergens.length === 0)
    .map(({ name }) => say('no-allergy-recorded', { name }));
  return {
    parts: [
      ...found.flatMap(({ some }) => pastOf(turn, some)),
      ...warnings,
      ...(unknown.length > 1
        ? [say('unknown-in-several', { names: list(unknown.map(({ name }) => name)) })]
        : unknown.flatMap(({ name, all }) => together('unknown-for-several', name, of(all, 'unknown')))),
      ...found.flatMap(({ name, all }) => together('free-for-several', name, of(all, 'said-free-from'))),
      ...(nobody ? [say('nobody-allergic')] : clear),
      ...distinct(risks),
    ],
    details: [say('check-the-label')],
    memory: about(turn, items),
    names,
    count: items.length,
  };
};
