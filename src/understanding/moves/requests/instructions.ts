/**
 * How a dish is got ready, step by step, as somebody told it: read out, asked whether it is told at all, told anew,
 * or one step of it put in, changed or taken out.
 */
import type { Mention, SaidPreparation } from '../../intents.js';
import { itMention } from '../../intents.js';
import { asks } from './last.js';
import {
  classed,
  is,
  ofKind,
  some,
  wordsIn,
  type Bit,
  type BitOf,
  type Frame,
  type Made,
  type Request,
} from './bits.js';
import { methodIn, portionsIn } from './reheating.js';

interface Named {
  readonly mention: Mention;
  readonly from: number;
  readonly to: number;
}

const hersIn = ({ anywhere }: Request): readonly BitOf<'thing'>[] =>
  anywhere('thing').filter(({ source }) => source === 'hers');

/** The dish: named right after what it is of, or before it, or pointed at. */
const dishIn = (request: Request, at: number): Named | null => {
  const { tokens, beside } = request;
  const things = hersIn(request);
  const [after] = things.filter(({ from }) => from >= at);
  const named = after ?? things.filter(({ to }) => to <= at).at(-1);
  if (named) return named;
  const points = tokens.findIndex((word, index) => index >= at && beside(word, 'points'));
  return points < 0 ? null : { mention: itMention, from: points, to: points + 1 };
};

/** Of what is told in one breath, act by act: a pause or "then" begins the next. */
const actsIn = (request: Request, from: number): readonly string[] => {
  const { tokens, pauses, beside } = request;
  const all: string[][] = [[]];
  for (let at = from; at < tokens.length; at += 1) {
    const word = tokens[at]!;
    const joins = beside(word, 'step-joins');
    if ((pauses.has(at) || joins) && all.at(-1)!.some((one) => !beside(one, 'step-joins'))) all.push([]);
    all.at(-1)!.push(word);
  }
  return all
    .map((words) =>
      words
        .slice(
          Math.max(
            0,
            words.findIndex((word) => !beside(word, 'step-joins')),
          ),
        )
        .join(' '),
    )
    .filter((words) => words.split(' ').some((word) => !beside(word, 'step-joins')));
};

/** In what it is heated, by what its steps speak of. */
const methodOf = ({ beside }: Request, words: readonly string[]): string | null =>
  ['microwave', 'oven', 'hob', 'air fryer', 'toaster', 'steamer'].find((method) =>
    words.some((word) => beside(word, `speaks-of-${method.replace(' ', '-')}`)),
  ) ?? null;

const preparation = (steps: readonly string[], method: string | null): SaidPreparation => ({
  method,
  minutes: null,
  watts: null,
  standMinutes: null,
  degrees: null,
  scale: null,
  words: null,
  steps,
});

/** "Add a last step to the waffles: …", "change the second step of it to …", "take out the third step of it". */
const edited = (request: Request): Made | null => {
  const { bits, tokens, beside, anywhere } = request;
  const noun = tokens.findIndex((word) => beside(word, 'step-noun'));
  const verb = tokens.findIndex(
    (word, at) =>
      at < noun && ['step-in', 'step-change', 'step-out', 'step-takes'].some((list) => beside(word, list)),
  );
  if (noun < 0 || verb < 0 || asks(bits.filter(({ to }) => to <= noun))) return null;
  const dish = dishIn(request, noun);
  if (!dish) return null;
  const says = (list: string): boolean => tokens.slice(verb, noun).some((word) => beside(word, list));
  const taken = tokens.slice(dish.to).every((word) => beside(word, 'step-out'));
  const kind =
    says('step-out') || (taken && dish.to < tokens.length) ? 'drop' : says('step-change') ? 'put' : 'add';
  const [nth] = anywhere('ordinal').filter(({ from, to }) => from >= verb && to <= noun);
  // A step that is put in comes last, where no other place is named.
  const at = nth?.ordinal ?? (says('step-first') ? 1 : -1);
  const rest = tokens.slice(dish.to);
  const lead = rest.findIndex((word) => !beside(word, 'step-leads'));
  const words = lead < 0 || kind === 'drop' ? '' : rest.slice(lead).join(' ');
  if ((kind === 'drop') !== (words === '')) return null;
  return {
    acts: [
      {
        intent: 'amend',
        slots: {
          item: dish.mention,
          preparation: {
            ...preparation(words === '' ? [] : [words], methodIn(bits).slots.method ?? null),
            edit: { kind, at },
          },
        },
      },
    ],
    used: new Set(tokens.keys()),
  };
};

/** "New instructions for the broth: tip it into the big pot, …". */
const told = (request: Request, dish: Named, noun: Bit): Made | null => {
  const { bits, tokens, pauses, beside } = request;
  const before = bits.filter(({ to }) => to <= noun.from);
  const shown = !is(noun, 'steps-word', 'ways-word');
  if (!shown && (some(before, 'steps-give', 'through-lead', 'heat-lead') || asks(before))) return null;
  const end = Math.max(dish.to, noun.to);
  const method = methodIn(bits.filter(({ from }) => from >= end));
  const [said] = method.bits.filter(({ from }) => from <= end + 1);
  const from = said?.to ?? end;
  const lead = tokens.findIndex((word, at) => at >= from && !beside(word, 'step-leads'));
  const anew = tokens.slice(0, noun.from).some((word) => beside(word, 'steps-new'));
  if (lead < 0 || tokens.length - lead < fewestTold) return null;
  if (!anew && lead === from && !pauses.has(from)) return null;
  const steps = actsIn(request, lead);
  return {
    acts: [
      {
        intent: 'amend',
        slots: {
          item: dish.mention,
          preparation: preparation(
            steps,
            (said ? method.slots.method : undefined) ?? methodOf(request, tokens.slice(lead)),
          ),
        },
      },
    ],
    used: new Set(tokens.keys()),
  };
};
/** "Here's how to heat the chili, in the microwave: …": what is shown is the way of it. */
const taught = ({ bits, tokens, beside }: Request): Bit | undefined => {
  const verb = bits.find((bit) => is(bit, 'heat-it', 'cook-it', 'do-it'));
  const before = tokens.slice(0, verb?.from ?? 0);
  const shown = before.some((word) => beside(word, 'steps-new'));
  return shown && before.some((word) => beside(word, 'steps-how')) ? verb : undefined;
};
/** Fewer words than that tell no step. */
const fewestTold = 3;

export const instructionsFrame: Frame = (request) => {
  const { bits, tokens, beside } = request;
  if (some(bits, 'timer', 'remind', 'topic-list')) return null;
  const change = edited(request);
  if (change) return change;
  const ways = bits.find((bit) => is(bit, 'ways-word'));
  const noun = bits.find((bit) => is(bit, 'steps-word')) ?? ways ?? taught(request);
  const through = bits.find((bit) => is(bit, 'through-lead'));
  const dish = dishIn(request, (through ?? noun)?.to ?? tokens.length);
  if (!dish || (!noun && !through)) return null;
  const anew = noun && !through ? told(request, dish, noun) : null;
  if (anew) return anew;
  if (some(bits, 'not', 'if') || hersIn(request).length > 1) return null;
  const give = noun && bits.find((bit) => is(bit, 'steps-give') && bit.to <= Math.min(noun.from, dish.from));
  const before = noun ? bits.filter(({ to }) => to <= noun.from) : [];
  const first = bits.find((bit) => !is(bit, 'opener', 'aside'));
  // "What are they" has them read out; "have we got any" asks no more than that.
  const opening = tokens[first?.from ?? 0] ?? '';
  const what = beside(opening, 'steps-what');
  const asked = noun !== undefined && !give && !through && (what || beside(opening, 'steps-asks'));
  const bare = noun !== undefined && (first === noun || noun.from <= dish.to + 1);
  if (!asked && !through && !give && !bare) return null;
  // "Take me through thawing it": another matter.
  const lead = (through ?? give ?? noun!).to;
  const between = bits.filter(({ from, to }) => through && from >= lead && to <= dish.from);
  if (between.some((bit) => !is(bit, 'fill', 'heat-it', 'cook-it', 'steps-word') && !portion(bit)))
    return null;
  const method = methodIn(bits);
  const portions = portionsIn(bits);
  const whole = classed(bits, 'steps-all');
  const place = ofKind(bits, 'place').filter(({ from }) => from >= dish.from);
  const how = asked && (!what || noun === ways) ? 'told' : whole.length > 0 && !through ? 'all' : null;
  const [at] = place;
  return {
    acts: [
      {
        intent: 'reheat',
        slots: {
          item: at ? { ...dish.mention, at: at.place } : dish.mention,
          ...method.slots,
          ...portions.slots,
          ...(how ? { asked: how } : {}),
        },
      },
    ],
    used: wordsIn([
      ...[through, give, noun].flatMap((bit) => bit ?? []),
      ...(asked ? before : []),
      ...classed(bits, 'steps-all', 'steps-one', 'heat-it', 'cook-it', 'heat-lead'),
      dish,
      ...place,
      ...method.bits,
      ...portions.bits,
    ]),
  };
};
const portion = ({ kind }: Bit): boolean => kind === 'amount' || kind === 'number';
