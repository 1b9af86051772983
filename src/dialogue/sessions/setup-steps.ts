/** The questions of the set-up, in order. */
import type { Session } from '../state.js';

/** The first day's, then what is offered later: one answer to the first two leads to the first food. */
export const steps = [
  'wholes',
  'eaters',
  'manner',
  'parts',
  'markers',
  'dots',
  'watts',
  'region',
  'summary',
] as const;

/** The questions of the first day. */
export const firstDay = 3;

/** The name of the question it stands at. */
export const setupStep = ({ step }: Extract<Session, { kind: 'setup' }>): string => steps[step] ?? 'none';
