/** Where the time of a turn goes, for whoever wants to know. Nobody listens unless a transport says so. */

/** The parts of a turn that are timed. `turn` holds the others. */
export type SpanName = 'turn' | 'understand' | 'decide' | 'speak' | 'commit';

/** Facts about a part: never ids of people, never words. */
export type SpanFacts = Readonly<Record<string, string | number | boolean>>;

export interface Tracing {
  /** Does the work within a span; what it throws or rejects with marks the span and goes on. */
  span<T>(name: SpanName, work: (tell: (facts: SpanFacts) => void) => T): T;
}

const nothing = (): void => undefined;

export const noTracing: Tracing = { span: (_name, work) => work(nothing) };
