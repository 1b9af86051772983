/** Values as Fluent takes them: they print as spoken words and can be chosen by number. */
import { FluentNumber, FluentType } from '@fluent/bundle';
import type { Value } from './answer.js';

/** A value that is words once printed, and only then, with what it was, for the functions of phrases. */
export interface HasSource {
  readonly source: Value;
}

export class SpokenNumber extends FluentNumber implements HasSource {
  constructor(
    count: number,
    readonly source: Value,
    private readonly words: () => string,
  ) {
    super(count);
  }
  override toString(): string {
    return this.words();
  }
}

export class SpokenWords extends FluentType<Value> implements HasSource {
  constructor(
    readonly source: Value,
    private readonly words: () => string,
  ) {
    super(source);
  }
  toString(): string {
    return this.words();
  }
}

export const sourceOf = (value: unknown): Value | undefined =>
  value instanceof SpokenNumber || value instanceof SpokenWords
    ? value.source
    : typeof value === 'string'
      ? value
      : value instanceof FluentNumber
        ? value.value
        : undefined;
