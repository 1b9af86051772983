/** Functions that phrases of any language may call, beyond what Fluent has: grammar around a value. */
import { FluentNumber, type FluentFunction, type FluentValue } from '@fluent/bundle';
import type { Amount, Share } from '../terms/amount.js';
import type { Value } from './answer.js';
import type { Language } from './language.js';
import { CLOSE, OPEN, unmark } from './marks.js';
import { sourceOf, SpokenNumber } from './spoken-value.js';

/** What functions need from the phrase being said: how values of its household are worded. */
export interface FunctionContext {
  readonly language: Language;
  /** A value's words in the form an attribute of `values.ftl` names ("on", "by"), or plain. */
  readonly words: (value: Value, form?: 'on' | 'by') => string;
  /** A message of `values.ftl`. */
  readonly wording: (id: string, args?: Readonly<Record<string, string>>) => string;
}

export const print = (value: FluentValue | undefined): string => (value === undefined ? '' : String(value));

/** More than one: by count for numbers, amounts and lists, by the noun for names. */
export const isMany = (value: FluentValue | undefined, isPlural: Language['isPlural']): boolean => {
  const source = sourceOf(value);
  if (typeof source === 'object' && source.kind === 'list') return source.of.length > 1 && source.or !== true;
  if (value instanceof FluentNumber) return value.value !== 1;
  return isPlural(print(value));
};

const capital = (text: string): string =>
  text.replace(/^(\uE000*)(\p{Ll})/u, (_, marks: string, letter: string) => marks + letter.toUpperCase());

export const FUNCTION_NAMES = [
  'A', 'THE', 'MANY', 'OF', 'PLURAL', 'ORDINAL', 'TIMES', 'ON', 'BY', 'AT', 'CAP', 'COUNT', 'REGION',
  'NUMBER', 'DATETIME',
] as const; // prettier-ignore

/** @param context read at each call, so that one bundle serves many households. */
export const phraseFunctions = (context: () => FunctionContext): Record<string, FluentFunction> => ({
  A: ([value]) => context().language.withArticle(print(value)),
  THE: ([value]) => context().language.withThe(print(value)),
  MANY: ([value]) => (isMany(value, context().language.isPlural) ? 'many' : 'one'),
  OF: ([amount, name]) => {
    const source = sourceOf(amount);
    const { amountOf } = context().language;
    if (typeof source === 'object' && source.kind === 'amount')
      return amountOf(source.amount as Amount | Share, print(name));
    if (typeof source === 'number') return amountOf({ value: source, unit: 'piece' }, print(name));
    throw new TypeError('OF takes an amount first');
  },
  PLURAL: ([noun, count]) => {
    const text = print(noun);
    if (count instanceof FluentNumber && count.value === 1) return text;
    const marked = text.startsWith(OPEN);
    const plural = context().language.plural(unmark(text));
    return marked ? OPEN + plural + CLOSE : plural;
  },
  ORDINAL: ([n]) => {
    if (!(n instanceof FluentNumber)) throw new TypeError('ORDINAL takes a number');
    return context().language.ordinal(n.value);
  },
  TIMES: ([n]) => {
    if (!(n instanceof FluentNumber)) throw new TypeError('TIMES takes a number');
    const { wording, words } = context();
    if (n.value === 1) return wording('times-one');
    if (n.value === 2) return wording('times-two');
    return wording('times-many', { number: words(n.value) });
  },
  ON: ([date]) => {
    const source = sourceOf(date);
    return source === undefined ? print(date) : context().words(source, 'on');
  },
  BY: ([date]) => {
    const source = sourceOf(date);
    const words = source === undefined ? print(date) : context().words(source, 'by');
    return context().wording('date-by', { date: words });
  },
  AT: ([time]) => context().wording('time-at', { time: print(time) }),
  CAP: ([text]) => capital(print(text)),
  COUNT: ([list]) => {
    const source = sourceOf(list);
    if (typeof source !== 'object' || source.kind !== 'list') throw new TypeError('COUNT takes a list');
    const n = source.of.length;
    return new SpokenNumber(n, n, () => context().words(n));
  },
  REGION: () => context().language.region,
});
