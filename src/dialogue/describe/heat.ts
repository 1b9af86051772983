/** How hot, in the scale it was asked in. */
import { inScale } from '../../safety/index.js';
import type { Value } from '../../speech/answer.js';
import type { Turn } from '../handler.js';

interface Heat {
  readonly degrees: number;
  readonly scale: 'fahrenheit' | 'celsius';
}

/** As it was told or published; "in Celsius" and "in Fahrenheit" are heard, and come out to the degree. */
export const heatSaid = ({ qualifiers }: Pick<Turn, 'qualifiers'>, heat: Heat): Value => {
  const asked = qualifiers.has('in-celsius')
    ? 'celsius'
    : qualifiers.has('in-fahrenheit')
      ? 'fahrenheit'
      : null;
  return asked === null || asked === heat.scale
    ? { kind: 'temperature', ...heat }
    : { kind: 'temperature', degrees: Math.round(inScale(heat, asked)), scale: asked };
};
