/**
 * "What temp do I cook the thighs to, and what about a pork loin and a meatloaf": how hot, asked of several foods in one
 * breath. Each has a figure of its own, and one figure for all of them would be some other food's.
 */
import { emptyMention, itMention, type Act, type Mention } from '../intents.js';
import { foodOf } from './food.js';
import { figuresIn, spansIn } from './figures.js';
import { between, foodsIn, has, isWord, ordersIn, spotsOf, type Sentence } from './sentence.js';
import { temperaturesIn } from './temperatures.js';

interface Heated {
  readonly mention: Mention;
  readonly from: number;
  readonly to: number;
  /** Heated again, which wants its own figure. */
  readonly again: boolean;
}

/** Asked of food beside its heat: how long it keeps, whether it may be frozen. Then it is no matter of figures alone. */
const besides: ReadonlySet<string> = new Set([
  ...['keep', 'still', 'freeze', 'refreeze', 'thaw', 'power', 'cool', 'roast', 'boil', 'chill'],
]);

const heatsIn = (sentence: Sentence) => spotsOf(sentence, 'ask').filter(({ value }) => value === 'cook');

/** Foods, each with the words around it that are of its name; two that follow each other are one: "beef curry". */
const namedIn = (sentence: Sentence): readonly Omit<Heated, 'again'>[] => {
  const asked = [...spotsOf(sentence, 'ask'), ...spansIn(sentence), ...figuresIn(sentence)];
  const spans: { from: number; to: number }[] = [];
  for (const { from, to } of foodsIn(sentence, asked)) {
    const last = spans.at(-1);
    if (last?.to === from) last.to = to;
    else spans.push({ from, to });
  }
  return spans.flatMap((span, at) => {
    const start = spans[at - 1]?.to ?? 0;
    const within = between(sentence, start, spans[at + 1]?.from ?? sentence.tokens.length);
    const found = foodOf(within, [...spansIn(within), ...figuresIn(within)]);
    return found ? [{ mention: found.mention, from: span.from, to: span.to }] : [];
  });
};

/** "Cook them to": what was just spoken of, beside what is named. */
const pointedIn = (sentence: Sentence, from: number): readonly Omit<Heated, 'again'>[] =>
  sentence.tokens.flatMap((word, at) =>
    at >= from && isWord(sentence, 'pointer', word) && isWord(sentence, 'heatsto', sentence.tokens[at - 1])
      ? [
          {
            mention: isWord(sentence, 'several', word)
              ? { ...itMention, pointer: 'them' as const }
              : itMention,
            from: at,
            to: at + 1,
          },
        ]
      : [],
  );

/** "Reheating leftovers": of whatever dish, they have a row of their own. */
const leftoversIn = (sentence: Sentence): readonly Omit<Heated, 'again'>[] =>
  spotsOf(sentence, 'leftovers')
    .filter(({ to }) => !foodsIn(sentence).some(({ from }) => from === to))
    .map(({ from, to }) => ({
      mention: { ...emptyMention, words: sentence.tokens.slice(from, to).join(' ') },
      from,
      to,
    }));

/** Of what the heat is asked: what is named from the first question on, and what stands right before one. */
const heatedIn = (sentence: Sentence): readonly Heated[] => {
  const heats = heatsIn(sentence);
  const first = heats[0]?.from ?? Number.POSITIVE_INFINITY;
  const agains = [
    ...spotsOf(sentence, 'reheating'),
    ...spotsOf(sentence, 'ask').filter(({ value }) => value === 'reheat'),
  ];
  const inOrder = [...pointedIn(sentence, first), ...namedIn(sentence), ...leftoversIn(sentence)].sort(
    (one, other) => one.from - other.from,
  );
  // "The chicken and the meatloaf, what temp for them": they are what is pointed to.
  const before = inOrder.filter(({ to }) => to <= first).length > 0;
  const pointed = before && inOrder.some(({ mention, from }) => from > first && mention.words === null);
  const all = pointed ? inOrder.filter(({ mention }) => mention.words !== null) : inOrder;
  const asked = all.filter(
    ({ from, to }) =>
      pointed || from > first || heats.some((heat) => heat.from - to <= linking && heat.from >= to),
  );
  return asked.map((one, at) => {
    const start = asked[at - 1]?.to ?? 0;
    return { ...one, again: agains.some(({ from, to }) => from >= start && to <= one.to) };
  });
};
/** "Meatloaf, what temperature": so many words between a name and its question. */
const linking = 1;

/** One act of all that is cooked, one of what is heated again; null unless several are asked about, and nothing else. */
export const severalHeated = (sentence: Sentence): readonly Act[] | null => {
  if (heatsIn(sentence).length === 0 || has(sentence, 'askselse') || ordersIn(sentence)) return null;
  if (temperaturesIn(sentence).probe !== null) return null;
  if (spotsOf(sentence, 'ask').some(({ value }) => besides.has(value))) return null;
  const all = heatedIn(sentence);
  // What is heated again wants its own figure, of one food as of several.
  if (all.length === 0 || (all.length === 1 && !all[0]!.again)) return null;
  const act = (items: readonly Heated[], asked?: 'again'): readonly Act[] =>
    items.length === 0
      ? []
      : [
          {
            intent: 'cook-temperature',
            slots: {
              items: items.map(({ mention }) => ({ ...emptyMention, ...mention })),
              ...(asked ? { asked } : {}),
            },
          },
        ];
  return [
    ...act(all.filter(({ again }) => !again)),
    ...act(
      all.filter(({ again }) => again),
      'again',
    ),
  ];
};
