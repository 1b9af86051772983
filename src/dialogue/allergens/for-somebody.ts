/**
 * What of some food is not for somebody: what is said to hold what she watches for, what does so by its name or
 * kind, what is not as she eats, what guidance names for people at risk. Such a list is told whole, and how many
 * there are of which nobody knows is told with it.
 */
import type { Item, Person } from '../../kitchen/model.js';
import { assessFor, assessIn, dietIn, isKnownFood } from '../../safety/index.js';
import type { Say } from '../../speech/answer.js';
import { cautionWords, distinct, verdictWords, reasonsOf } from '../describe/guidance.js';
import { type Reply, type Turn, about, list, say } from '../handler.js';
import { dietsOf } from '../people/people.js';
import { riskCautions } from './risk-cautions.js';
import { type Sorted, sortedBy } from './sorted.js';

/** Names once each, as a list of foods. */
export const foodList = (items: readonly Item[]): ReturnType<typeof list> =>
  list([...new Set(items.map(({ name }) => name))]);
const kinds = (items: readonly Item[]): number => new Set(items.map(({ name }) => name)).size;

/** What is not on record and may hold it all the same, and of how many nobody knows. */
export const beyondRecord = ({ byName, inDoubt, unknown }: Sorted): Say[] => [
  ...(byName.length > 0 ? [say('usually-with', { items: foodList(byName), count: kinds(byName) })] : []),
  ...(inDoubt.length > 0 ? [say('free-in-doubt', { items: foodList(inDoubt), count: kinds(inDoubt) })] : []),
  ...(unknown.length > 0 ? [say('not-recorded-for', { count: unknown.length })] : []),
];

/** So many cautions are told with what they are of; more are told to who asks for more. */
const toldAtOnce = 2;
const fewStrange = 3;

/** What guidance names of these for somebody at risk, and what it says of them. */
export const riskParts = (
  turn: Turn,
  person: Person,
  pool: readonly Item[],
): { parts: Say[]; details: Say[] } => {
  if (!person.atRisk) return { parts: [], details: [] };
  // What is past guidance is nobody's, however it is heated.
  const isPast = (item: Item): boolean => assessIn(turn.kitchen, item, turn.clock).verdict === 'throw-out';
  const past = pool.filter(isPast);
  const kept = pool.filter((item) => !past.includes(item));
  const of = kept.flatMap((item) => riskCautions(turn, person, item).map((caution) => ({ item, caution })));
  const items = of.map(({ item }) => item);
  const cautions = distinct(of.map(({ caution }) => cautionWords(caution)));
  const few = cautions.length <= toldAtOnce;
  // What the tables do not know by its name they say nothing of, which is no promise either.
  const strange = kept.filter((one) => !isKnownFood(one.name));
  return {
    parts: [
      ...(past.length > 0 ? [say('past-for-nobody', { items: foodList(past) })] : []),
      items.length > 0
        ? say('risk-named', { person: person.name, items: foodList(items) })
        : say('risk-none', { person: person.name, rest: past.length > 0 ? 'yes' : 'no' }),
      // That guidance names nothing is no promise.
      ...(items.length > 0 ? [] : [say('caution-ask-clinician')]),
      // How it may be had after all.
      ...(few ? cautions : []),
      ...(strange.length > 0
        ? [
            say('risk-unknown', {
              count: kinds(strange),
              items: foodList(strange),
              few: kinds(strange) <= fewStrange ? 'yes' : 'no',
            }),
          ]
        : []),
    ],
    details: [...(few ? [] : cautions), ...(items.length > 0 ? [say('caution-ask-clinician')] : [])],
  };
};

const dietParts = (person: Person, pool: readonly Item[]): Say[] =>
  dietsOf(person).flatMap((diet) => {
    const answers = pool.map((item) => ({ item, answer: dietIn(item, diet).answer }));
    const against = answers.flatMap(({ item, answer }) =>
      answer === 'contains' || answer === 'usually' ? [item] : [],
    );
    const unmarked = answers.filter(({ answer }) => answer === 'unknown').length;
    return [
      against.length > 0
        ? say('not-by-diet', { person: person.name, diet, items: foodList(against) })
        : say('none-not-by-diet', { person: person.name, diet }),
      ...(unmarked > 0 ? [say('diet-unmarked', { count: unmarked })] : []),
    ];
  });

/** "What in this fridge must Dele not have": all of it. */
export const notFor = (turn: Turn, person: Person, pool: readonly Item[]): Reply => {
  const memory = { personId: person.id, ...about(turn, pool.length === 1 ? pool : []) };
  const sorted = sortedBy(pool, person.allergens);
  const { onRecord } = sorted;
  const risk = riskParts(turn, person, pool);
  const allergens = list(person.allergens, true);
  const watched: Say[] =
    person.allergens.length === 0
      ? []
      : [
          onRecord.length > 0
            ? say('must-not-have', { person: person.name, allergens, items: foodList(onRecord) })
            : say('none-must-not', { person: person.name, allergens }),
          ...beyondRecord(sorted),
        ];
  const known = [...watched, ...dietParts(person, pool), ...risk.parts];
  return {
    parts: [...known, ...(known.length === 0 ? [say('person-none', { name: person.name })] : [])],
    details: [
      ...risk.details,
      ...(person.allergens.length === 0 && known.length > 0
        ? [say('person-none', { name: person.name })]
        : []),
      say('check-the-label'),
    ],
    memory: { ...memory, ...(onRecord.length > 0 ? about(turn, onRecord) : {}), personId: person.id },
    names: [...new Set([...onRecord, ...sorted.byName].map(({ name }) => name))],
    count: kinds(onRecord),
  };
};

/** One food for somebody of whom no allergy is known: what guidance says of it, and what is in it. */
export const guidanceForOne = (turn: Turn, person: Person, item: Item): Reply => {
  const found = assessFor(turn.kitchen, item, turn.clock, person);
  const risks = riskCautions(turn, person, item).map(cautionWords);
  const { contains } = item;
  return {
    // What is to be thrown out is nobody's, however it is heated: that comes first, and no risk is dropped.
    parts: [
      ...(found.verdict === 'throw-out' ? [] : risks),
      verdictWords(found, item.name),
      ...(found.verdict === 'throw-out' ? risks : []),
      contains.length > 0
        ? say('contains-these', { name: item.name, allergens: list(contains) })
        : say('contains-unknown', { name: item.name }),
      say('person-none', { name: person.name }),
    ],
    details: [
      ...reasonsOf(found).first,
      ...(person.atRisk ? [say('caution-ask-clinician')] : []),
      say('check-the-label'),
    ],
    sources: reasonsOf(found).sources,
    memory: { personId: person.id, ...about(turn, [item]) },
    names: [item.name],
    count: 1,
  };
};
