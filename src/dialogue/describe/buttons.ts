/** What a screen's button says for one of several things: only what tells it from the others. */
import type { Say, Value } from '../../speech/answer.js';
import { say } from '../handler.js';

const isSay = (value: Value | undefined): value is Say => typeof value === 'object' && 'phrase' in value;

/** The place itself out of "in the left basket of the chest freezer"; by its own name alone where that will do. */
const placeIn = (label: Say, whole: boolean): Say => {
  const { phrase, args } = label;
  if (phrase === 'place-at-spot' && isSay(args?.at)) return placeIn(args.at, whole);
  if (phrase === 'place-at' && isSay(args?.place)) return placeIn(args.place, whole);
  if (phrase === 'the-place' && isSay(args?.place)) return placeIn(args.place, whole);
  if (phrase === 'place-within' && !whole && args?.name !== undefined)
    return say('button-name', { name: args.name });
  return label;
};

const brief = (label: Say, whole: boolean): Say => {
  const { phrase, args = {} } = label;
  if ((phrase === 'apart-place' || phrase === 'apart-loose') && isSay(args.at))
    return placeIn(args.at, whole);
  if (phrase === 'apart-two' && isSay(args.first) && isSay(args.second))
    return say('button-two', { first: brief(args.first, whole), second: brief(args.second, whole) });
  if (phrase.startsWith('apart-')) return { ...label, phrase: phrase.replace('apart-', 'button-') };
  return placeIn(label, whole);
};

/** Labels for buttons, in the order the question names them; no two alike where the kitchen tells them apart. */
export const buttonLabels = (labels: readonly Say[]): readonly Say[] => {
  const short = labels.map((label) => brief(label, false));
  const keys = short.map((label) => JSON.stringify(label));
  return labels.map((label, at) =>
    keys.filter((key) => key === keys[at]).length > 1 ? brief(label, true) : short[at]!,
  );
};
