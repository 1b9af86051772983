/** What contains what, and what someone can eat. What nobody said is unknown, never free from. */
import { ingredientIn, itemsAt, livingItems, placeUnder } from '../../kitchen/index.js';
import type { Item, Person } from '../../kitchen/model.js';
import { allergenIn, assessIn, dietIn } from '../../safety/index.js';
import type { AllergenAnswer } from '../../safety/api.js';
import type { Say } from '../../speech/answer.js';
import { cautionWords, reasonsOf, verdictWords } from '../describe/guidance.js';
import { type Group, groupName, grouped, toldGroups } from '../describe/item.js';
import { andMore, groupSize, inGroups } from '../describe/lists.js';
import { placeAt } from '../describe/place.js';
import { placeIds } from '../ask/filters.js';
import { askedItems, tellPlace } from '../find/find.js';
import { type Handler, type Reply, type Turn, about, list, say } from '../handler.js';
import type { Slots } from '../../understanding/intents.js';
import { noSuch } from '../refer/items.js';
import { dietsOf, nobodyCalled, personAsked } from '../people/people.js';
import { beyondRecord, foodList, guidanceForOne, notFor, riskParts } from './for-somebody.js';
import { riskCautions } from './risk-cautions.js';
import { type Pile, pileOf, sortedBy, worsePile, worstOf } from './sorted.js';

const answerFor = (item: Item, allergens: readonly string[]): AllergenAnswer['answer'][] =>
  allergens.map((allergen) => allergenIn(item, allergen).answer);

/** "Does the chilli have peanuts?" */
const oneItem = (turn: Turn, item: Item, allergens: readonly string[]): Reply => {
  const parts: Say[] = allergens.map((allergen) =>
    say('contains-answer', { name: item.name, allergen, answer: allergenIn(item, allergen).answer }),
  );
  const label =
    parts.length > 0 && allergens.some((allergen) => allergenIn(item, allergen).answer !== 'said-to-contain');
  return {
    parts,
    details: label ? [say('check-the-label')] : [],
    memory: about(turn, [item]),
    names: [item.name],
    count: 1,
  };
};

/** "Is the stew vegan?" Only a mark says yes. */
const fitsDiet = (turn: Turn, item: Item, diet: string): Reply => {
  const found = dietIn(item, diet);
  const what = 'what' in found && found.what.length > 0 ? { what: list(found.what) } : {};
  // "Is it spicy?" Whoever wrote "very hot pepper" marked no diet.
  const cautions =
    found.answer === 'marked' ? [] : item.cautions.map((caution) => say('item-caution', { caution }));
  return {
    parts: [say('diet-answer', { name: item.name, diet, answer: found.answer, ...what }), ...cautions],
    details: found.answer === 'marked' ? [] : [say('check-the-label')],
    memory: about(turn, [item]),
    names: [item.name],
    count: 1,
  };
};

const whatIsIn = (turn: Turn, item: Item): Reply => {
  const { contains, freeFrom } = item;
  // "There's coconut milk in it", told without its being an allergen.
  const others = item.notes.flatMap((note) => ingredientIn(note) ?? []);
  const all = [...contains, ...others];
  const parts: Say[] = [
    all.length > 0
      ? say('contains-these', { name: item.name, allergens: list(all) })
      : say('contains-unknown', { name: item.name }),
    ...(freeFrom.length > 0 ? [say('said-free-list', { allergens: list(freeFrom) })] : []),
  ];
  return {
    parts,
    details: [say('check-the-label')],
    memory: about(turn, [item]),
    names: [item.name],
    count: 1,
  };
};

const entry = (turn: Turn, group: Group): Say =>
  say('item-where', { item: groupName(group), where: placeAt(turn.kitchen, group.first.placeId) });

/** "Anything with peanuts": what is said to, then what such food usually does. Where few are, each with its place. */
const anything = (turn: Turn, pool: readonly Item[], allergens: readonly string[]): Reply => {
  const sorted = sortedBy(pool, allergens);
  const names = list(allergens, true);
  const groups = grouped(turn.kitchen, sorted.onRecord);
  const items =
    groups.length <= groupSize ? list(groups.map((group) => entry(turn, group))) : foodList(sorted.onRecord);
  return {
    parts: [
      groups.length > 0
        ? say('with-allergen', { count: groups.length, allergens: names, items })
        : say('none-with-allergen', { allergens: names }),
      ...beyondRecord(sorted),
    ],
    details: [say('check-the-label')],
    ...toldGroups(turn, sorted.onRecord, groups),
  };
};

/** All there is, or what lies in the place that was said: in each that it may be. */
const inPlace = (turn: Turn, { place }: Slots): readonly Item[] => {
  const all = livingItems(turn.kitchen);
  const ids = place ? placeIds(turn, { by: 'place', places: [place] }) : null;
  return ids ? all.filter(({ placeId }) => ids.some((id) => placeUnder(turn.kitchen, placeId, id))) : all;
};

/** "Does the chilli have peanuts", "is it vegan", "anything with sesame in the pantry". */
export const contains: Handler = (act, turn) => {
  const { slots } = act;
  const allergens = slots.allergens ?? (slots.words ? [slots.words] : []);
  const { allergens: _allergens, diet, person: _person, words: _words, ...rest } = slots;
  const { items, unknown, named } = askedItems({ intent: act.intent, slots: rest }, turn);
  if (named && items.length > 0) {
    const kinds = new Set(items.map(({ name }) => name));
    const item = items[0]!;
    if (diet && (kinds.size === 1 || slots.item?.pointer === null)) return fitsDiet(turn, item, diet);
    if (kinds.size === 1)
      return allergens.length > 0
        ? oneItem(turn, worstOf(items, allergens), allergens)
        : whatIsIn(turn, item);
    if (allergens.length > 0) return anything(turn, items, allergens);
  }
  // "What's in it", of a shelf that was just spoken of.
  const { placeId } = turn.memory;
  if (slots.item?.pointer && items.length !== 1 && allergens.length === 0 && !diet && placeId)
    return tellPlace(turn, turn.kitchen.places.get(placeId)!, itemsAt(turn.kitchen, placeId));
  if (named && unknown) return { parts: noSuch(turn, unknown) };
  if (diet) return { parts: [], ask: { slot: 'item', question: say('ask-contains'), expecting: 'item' } };
  if (allergens.length === 0)
    return { parts: [], ask: { slot: 'item', question: say('ask-contains'), expecting: 'item' } };
  const pool = inPlace(turn, slots);
  if (!slots.free) return anything(turn, pool, allergens);
  // "Without gluten, for Dele": nor what Dele watches for.
  const { person, unknown: stranger } = personAsked(turn, slots.person ? { person: slots.person } : {});
  if (stranger && !person) return nobodyCalled(turn, slots, stranger);
  const watched = person?.allergens.filter((one) => !allergens.includes(one)) ?? [];
  return freeFrom(turn, pool, [...allergens, ...watched]);
};

/** So few can be told one by one, by what is known of them; and so few by their names, a group at a time. */
const fewEnough = 8;
const fewToName = 16;

/** Of what lies in one place, what is said to contain it, and of what nobody said either way: by their names. */
const otherwise = (
  turn: Turn,
  pool: readonly Item[],
  allergens: readonly string[],
): readonly [parts: readonly Say[], more: readonly Say[]] => {
  const groups = grouped(turn.kitchen, pool);
  if (groups.length > fewEnough) {
    const { unknown } = sortedBy(pool, allergens);
    if (unknown.length === 0) return [[], []];
    const open = grouped(turn.kitchen, unknown);
    if (open.length > fewToName) return [[say('not-recorded-for', { count: unknown.length })], []];
    const { first, more, left } = inGroups(open.map(groupName));
    return [
      [say('not-recorded-of', { count: first.length + left, items: list(first) }), ...andMore(left)],
      more,
    ];
  }
  const answers = groups.map((group) => ({ group, said: answerFor(group.first, allergens) }));
  const holds = answers.filter(({ said }) => said.includes('said-to-contain'));
  const open = answers.filter(({ said }) => !said.includes('said-to-contain'));
  const namesOf = (some: typeof answers) => list(some.map(({ group }) => groupName(group)));
  return [
    [
      ...(holds.length > 0 ? [say('holds-it', { items: namesOf(holds) })] : []),
      ...(open.length > 0 ? [say('not-said-either-way', { items: namesOf(open) })] : []),
    ],
    [],
  ];
};

/** What is said to be free from all of these. */
const freeFrom = (turn: Turn, pool: readonly Item[], allergens: readonly string[]): Reply => {
  const free = pool.filter((item) =>
    answerFor(item, allergens).every((answer) => answer === 'said-free-from'),
  );
  const groups = grouped(turn.kitchen, free);
  if (groups.length === 0) {
    const [parts, more] = otherwise(turn, pool, allergens);
    return {
      parts: [say('none-said-free', { allergens: list(allergens) }), ...parts],
      more,
      details: [say('check-the-label')],
      count: 0,
    };
  }
  const { first, more, left } = inGroups(groups.map((group) => entry(turn, group)));
  return {
    parts: [
      say('said-free-items', { count: groups.length, allergens: list(allergens), items: list(first) }),
      ...andMore(left),
    ],
    more,
    details: [say('check-the-label')],
    memory: about(turn, free),
    names: groups.map((group) => group.first.name),
    count: groups.length,
  };
};

/** "What can Ruth eat", who eats vegan: what is marked so. */
const eatsAs = (turn: Turn, items: readonly Item[], person: Person, of: number): Reply => {
  const groups = grouped(turn.kitchen, items);
  const { first, more, left } = inGroups(groups.map(groupName));
  const diets = list(dietsOf(person));
  return {
    parts: [
      groups.length > 0
        ? say('can-eat-diet', { person: person.name, diets, items: list(first), count: groups.length })
        : say('can-eat-diet-none', { person: person.name, diets }),
      ...(of > items.length ? [say('diet-unmarked', { count: of - items.length })] : []),
      ...andMore(left),
    ],
    more,
    details: [say('check-the-label')],
    memory: { personId: person.id, ...about(turn, items) },
    names: groups.map((group) => group.first.name),
    count: groups.length,
  };
};

/** What is told of each pile, in the order it is told. */
const verdicts = ['no', 'usually', 'unknown', 'free'] as const;
const verdictOf: Readonly<Record<Pile, (typeof verdicts)[number]>> = {
  onRecord: 'no',
  byName: 'usually',
  inDoubt: 'usually',
  unknown: 'unknown',
  free: 'free',
};

/** What can be said of one food for one person, and the allergens it rests on. */
const verdictFor = (
  item: Item,
  { allergens }: Person,
): {
  readonly pile: Pile;
  readonly verdict: (typeof verdicts)[number];
  readonly allergens: readonly string[];
} => {
  const pile = pileOf(item, allergens);
  return {
    pile,
    verdict: verdictOf[pile],
    allergens: pile === 'free' ? allergens : allergens.filter((one) => pileOf(item, [one]) === pile),
  };
};

/** "Would it do for someone who can't have celery": no yes where it holds it. */
export const suitsUnnamed = (turn: Turn, items: readonly Item[], allergens: readonly string[]): Reply => {
  const item = worstOf(items, allergens);
  const pile = pileOf(item, allergens);
  const of = pile === 'free' ? allergens : allergens.filter((one) => pileOf(item, [one]) === pile);
  const verdict = verdictOf[pile];
  const age = assessIn(turn.kitchen, item, turn.clock);
  return {
    parts: [
      ...(age.verdict === 'throw-out' && verdict !== 'no' ? [verdictWords(age, item.name)] : []),
      say('can-eat-one', {
        person: '',
        name: item.name,
        verdict,
        allergens: list(of, verdict === 'unknown'),
      }),
    ],
    details: [say('check-the-label')],
    memory: about(turn, [item]),
    names: [item.name],
  };
};

/** "What can Dele eat": what is said to be free from all she watches for; the rest is unknown. */
/** So few of which nobody knows are told by their names. */
const fewNamed = 3;

export const canEat: Handler = (act, turn) => {
  const { person, unknown: name } = personAsked(turn, act.slots);
  if (!person)
    return name
      ? nobodyCalled(turn, act.slots, name)
      : { parts: [], ask: { slot: 'person', question: say('ask-who-eats'), expecting: 'person' } };
  const memory = { personId: person.id };
  const diets = dietsOf(person);
  const { items: asked, named, unknown: missing } = askedItems(act, turn);
  if (person.allergens.length === 0 && diets.length === 0 && named && asked[0])
    return guidanceForOne(turn, person, asked[0]);
  if (person.allergens.length === 0 && diets.length === 0 && !person.atRisk)
    return { parts: [say('no-allergy-recorded', { name: person.name })], memory };
  if (act.slots.item?.words && missing && asked.length === 0) return { parts: noSuch(turn, missing), memory };
  const watched = list(person.allergens, true);
  if (named && asked.length > 0) {
    const item = asked[0]!;
    const risks = riskCautions(turn, person, item).map(cautionWords);
    const against = diets.flatMap((diet) => {
      const found = dietIn(item, diet);
      const what = 'what' in found && found.what.length > 0 ? { what: list(found.what) } : {};
      return found.answer === 'marked' && person.allergens.length > 0
        ? []
        : [
            say('diet-of-person', {
              person: person.name,
              name: item.name,
              diet,
              answer: found.answer,
              ...what,
            }),
          ];
    });
    if (person.allergens.length === 0)
      return {
        parts: [...risks, ...against],
        details: [say('check-the-label')],
        memory: { ...memory, ...about(turn, [item]) },
        names: [item.name],
      };
    // "The stew" may be any of three: all are looked at, and the worst is told first.
    const found = asked
      .map((one) => ({ item: one, ...verdictFor(one, person) }))
      .sort((a, b) => worsePile(a.pile, b.pile));
    const worst = found[0]!;
    const kinds = [...new Map(found.map((one) => [one.item.name, one])).values()];
    // "Can Theo still eat the ham": what is past guidance is nobody's, whatever is in it.
    const age = assessIn(turn.kitchen, worst.item, turn.clock);
    const past = age.verdict === 'throw-out' && worst.verdict !== 'no' && asked.length === 1;
    const others = kinds.filter(({ item: { name } }) => name !== worst.item.name);
    return {
      parts: [
        ...(past ? [verdictWords(age, worst.item.name)] : []),
        say('can-eat-one', {
          person: person.name,
          name: worst.item.name,
          verdict: worst.verdict,
          allergens: list(worst.allergens, worst.verdict === 'unknown'),
        }),
        ...verdicts.flatMap((verdict) => {
          const names = others.filter((one) => one.verdict === verdict).map(({ item: { name } }) => name);
          return names.length > 0 ? [say('can-eat-others', { verdict, names: list(names) })] : [];
        }),
        ...(others.length === 0 ? risks : []),
        ...(others.length === 0 && !past ? against : []),
      ],
      details: [
        ...(past ? [...reasonsOf(age).first, ...against] : []),
        ...(worst.verdict === 'no'
          ? [
              say('because-contains', {
                name: worst.item.name,
                allergens: list(worst.allergens),
                person: person.name,
              }),
            ]
          : []),
        say('check-the-label'),
      ],
      memory: { ...memory, ...about(turn, others.length === 0 ? [worst.item] : asked) },
      names: kinds.map(({ item: { name } }) => name),
    };
  }
  const pool = inPlace(turn, act.slots);
  if (act.slots.asked === 'not') return notFor(turn, person, pool);
  const suits = (item: Item): boolean => diets.every((diet) => dietIn(item, diet).answer === 'marked');
  // Nothing that is not named is promised to somebody at risk: what guidance names is told.
  if (person.allergens.length === 0 && diets.length === 0) return notFor(turn, person, pool);
  if (person.allergens.length === 0) return eatsAs(turn, pool.filter(suits), person, pool.length);
  const sorted = sortedBy(pool, person.allergens);
  const free = grouped(turn.kitchen, sorted.free.filter(suits));
  const { onRecord: not, byName } = sorted;
  const rest =
    pool.length - free.reduce((sum, { items }) => sum + items.length, 0) - not.length - byName.length;
  const told = new Set([...free.flatMap(({ items }) => items), ...not, ...byName]);
  const strange = [...new Set(pool.filter((item) => !told.has(item)).map(({ name: food }) => food))];
  const { first, more, left } = inGroups(free.map(groupName));
  const foods = (items: readonly Item[]) =>
    list(
      [...new Set(items.map(({ name: food }) => food))].map((food) => say('the-food', { name: food })),
      true,
    );
  const risk = riskParts(turn, person, pool);
  const parts: Say[] = [
    ...(free.length > 0
      ? [say('can-eat', { person: person.name, count: free.length, items: list(first), allergens: watched })]
      : []),
    // What somebody must not have is told whole.
    ...(not.length > 0 ? [say('cannot-eat', { count: not.length, items: foods(not) })] : []),
    ...(byName.length > 0 ? [say('usually-with', { count: byName.length, items: foodList(byName) })] : []),
    // What nobody said anything of is never promised.
    ...(free.length === 0
      ? [
          say('can-eat-none-sure', {
            person: person.name,
            allergens: watched,
            count: not.length + byName.length,
          }),
        ]
      : []),
    ...risk.parts,
    ...(rest > 0
      ? [
          strange.length <= fewNamed
            ? say('rest-unknown-these', { items: list(strange), allergens: watched })
            : say('rest-unknown', { count: rest, allergens: watched }),
        ]
      : []),
    ...andMore(left),
  ];
  return {
    parts,
    more,
    details: [say('check-the-label')],
    memory: {
      ...memory,
      ...about(
        turn,
        free.flatMap(({ items }) => items),
      ),
    },
    names: free.map((group) => group.first.name),
    count: free.length,
  };
};
