/** The evening's summary, on request. */
import { rankUseFirst } from '../../safety/index.js';
import type { Kitchen } from '../../kitchen/model.js';
import type { Surroundings } from '../api.js';
import type { Handler, Turn } from '../handler.js';
import type { Memory, State } from '../state.js';
import { whyOf } from '../age/why.js';
import { summaryHeardSince } from './heard.js';
import { nightlySummary, type Summary } from './nightly.js';

/** "It" is the first thing that can still be used; "the second" the next. */
const spokenOf = (
  { about, counted }: Summary,
  { memory, state }: Pick<Turn, 'memory' | 'state'>,
): Partial<Memory> => ({
  ...(about[0] ? { items: about[0], before: memory.items } : {}),
  offered: counted.flatMap((ids) => ids.slice(0, 1)),
  them: about.flat(),
  themTold: state.turns,
});

/** Why, of what was said, in the order it was said. */
const whySaid = (
  { counted, about }: Summary,
  ranked: ReturnType<typeof rankUseFirst>,
): ReturnType<typeof whyOf> => {
  const firsts = new Set([...counted, ...about].flatMap((ids) => ids.slice(0, 1)));
  return whyOf([...firsts].flatMap((id) => ranked.find(({ item }) => item.id === id) ?? []));
};

const namesOf = ({ about }: Summary, kitchen: Kitchen): string[] => [
  ...new Set(about.flat().flatMap((id) => kitchen.items.get(id)?.name ?? [])),
];

export const summary: Handler = (act, turn) => {
  const weekly = act.slots.setting === 'weekly' || act.slots.asked === 'week';
  const ranked = rankUseFirst(turn.kitchen, turn.clock);
  const made = nightlySummary(turn.kitchen, ranked, turn.clock, {
    weekly,
    asked: true,
  });
  const names = namesOf(made, turn.kitchen);
  return {
    parts: made.answer.parts,
    more: made.answer.more ?? [],
    ...whySaid(made, ranked),
    memory: spokenOf(made, turn),
    names,
    count: names.length,
  };
};

/** A summary that this household heard unasked since the conversation last spoke is what is talked about now. */
export const recallSummary = (
  state: State,
  lastAt: string | null,
  { kitchen, clock }: Surroundings,
): State => {
  const heard = summaryHeardSince(kitchen, lastAt, clock, rankUseFirst);
  if (heard === null) return state;
  const names = namesOf(heard, kitchen);
  return {
    ...state,
    memory: { ...state.memory, ...spokenOf(heard, { memory: state.memory, state }) },
    told: {
      answer: heard.answer,
      rest: heard.answer.more ?? [],
      ...whySaid(heard, rankUseFirst(kitchen, clock)),
      names,
      count: names.length,
      quote: null,
      cut: [],
    },
  };
};
