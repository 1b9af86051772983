/**
 * What knots and ridges say, held against what is on record of the food that bears them. Only the record speaks:
 * what nothing is recorded of is told as that, and not as right.
 */
import { countedHere, itemWithMarker, livingItems, marksOf } from '../../kitchen/index.js';
import type { Item, Person } from '../../kitchen/model.js';
import { allergenIn, dietIn } from '../../safety/index.js';
import type { Say } from '../../speech/answer.js';
import { andMore, inGroups } from '../describe/lists.js';
import { raised } from '../describe/touch.js';
import { type Reply, type Turn, about, list, say } from '../handler.js';

interface Borne {
  readonly item: Item;
  readonly count: number;
  readonly meaning: string;
}

/** Living food whose marker has a meaning. */
const borne = (turn: Turn): readonly Borne[] =>
  [...turn.kitchen.markers.values()].flatMap(({ id, touch: { dots: count } }) => {
    const item = itemWithMarker(turn.kitchen, id);
    const meaning = count === undefined ? undefined : turn.kitchen.household.dotMeanings[count];
    return item && count !== undefined && meaning ? [{ item, count, meaning }] : [];
  });

const holdsWords = (text: string, words: string): boolean =>
  ` ${text.toLowerCase()} `.includes(` ${words.toLowerCase()} `);

const meantFor = (turn: Turn, meaning: string): Person | undefined =>
  [...turn.kitchen.people.values()].find(({ name }) => holdsWords(meaning, name));

/** What the record says against a meaning, the graver first; nothing where it says nothing against it. */
const against = (turn: Turn, { item, meaning }: Borne): readonly Say[] => {
  const { name } = item;
  const person = meantFor(turn, meaning);
  const mustNot = (person?.allergens ?? []).filter(
    (allergen) => allergenIn(item, allergen).answer === 'said-to-contain',
  );
  const diet = dietIn({ ...item, diets: [] }, meaning.toLowerCase());
  // What the marker itself says it contains is the other side of the question.
  const said = marksOf(turn.kitchen, item).contains.filter((what) => !item.contains.includes(what));
  const free = said.filter((what) => allergenIn({ ...item, contains: [] }, what).answer === 'said-free-from');
  const owner = item.ownerId === null ? undefined : turn.kitchen.people.get(item.ownerId);
  return [
    ...(person && mustNot.length > 0
      ? [say('meaning-must-not', { name, person: person.name, allergens: list(mustNot) })]
      : []),
    ...(diet.answer === 'contains' || (diet.answer === 'usually' && diet.what.length > 0)
      ? [say('meaning-contains', { name, meaning, allergens: list(diet.what), how: diet.answer })]
      : []),
    ...(diet.answer === 'usually' && diet.what.length === 0
      ? [say('meaning-animal', { name, meaning })]
      : []),
    ...(free.length > 0 ? [say('meaning-free', { name, allergens: list(free) })] : []),
    ...(person && owner && owner.id !== person.id
      ? [say('meaning-owner', { name, meaning, owner: owner.name })]
      : []),
  ];
};

/** Whether anything beside the marker says the same of it. */
const borneOut = (turn: Turn, { item, meaning }: Borne): boolean => {
  const person = meantFor(turn, meaning);
  const texts = [...item.cautions, ...item.notes, ...item.diets, item.name];
  return (
    (person !== undefined && item.ownerId === person.id) ||
    texts.some((text) => holdsWords(text, meaning)) ||
    item.contains.some((what) => holdsWords(meaning, what))
  );
};

/** Recorded as what a mark says, and without the mark: "very hot pepper", with no two knots. */
const unmarked = (turn: Turn, count: number, meaning: string): readonly Say[] =>
  livingItems(turn.kitchen)
    .filter((item) => turn.kitchen.markers.get(item.markerId ?? '')?.touch.dots !== count)
    .flatMap((item) => {
      const caution = item.cautions.find((one) => holdsWords(one, meaning));
      return caution
        ? [
            say('meaning-unmarked', {
              name: item.name,
              caution,
              raised: raised(count, countedHere(turn.kitchen)),
            }),
          ]
        : [];
    });

/** "Do the knots match what's on the shelf"; of one count or one meaning, where that was named. */
export const checkMeanings = (turn: Turn, only: number | null): Reply => {
  const meanings = Object.entries(turn.kitchen.household.dotMeanings)
    .map(([count, meaning]) => ({ count: Number(count), meaning }))
    .filter(({ count }) => only === null || count === only);
  if (meanings.length === 0)
    return { parts: [say('no-dot-meanings', { counted: countedHere(turn.kitchen) })] };
  const bearing = borne(turn).filter(({ count }) => only === null || count === only);
  const doubts = [
    ...bearing.flatMap((one) => against(turn, one)),
    ...meanings.flatMap(({ count, meaning }) => unmarked(turn, count, meaning)),
  ];
  const { first, more, left } = inGroups(doubts);
  const unsaid = meanings.flatMap(({ meaning }) => {
    const silent = bearing.filter(
      (one) => one.meaning === meaning && against(turn, one).length === 0 && !borneOut(turn, one),
    );
    return silent.length > 0
      ? [say('meaning-unsaid', { meaning, names: list(silent.map(({ item }) => item.name)) })]
      : [];
  });
  return {
    parts: [
      first.length > 0
        ? say('meanings-doubted', { doubts: doubts.length, which: list(first) })
        : say('meanings-checked', { count: bearing.length }),
      ...andMore(left),
      // Asked of one meaning, what nothing is recorded of is half the answer.
      ...(only === null ? [] : unsaid),
    ],
    details: only === null ? unsaid : [],
    more,
    count: doubts.length,
    memory: about(
      turn,
      bearing.map(({ item }) => item),
    ),
  };
};
