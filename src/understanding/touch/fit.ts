import { type Touch, sameCounted } from '../../terms/touch.js';

const keys = ['size', 'container', 'texture', 'shape', 'fastening', 'spot'] as const;

/**
 * 0 to 1: how well what was said fits what is recorded. What was not said does not count; what was
 * said and is not recorded counts half; what is recorded otherwise makes it 0 for dots and
 * fastening, which nobody mixes up by hand, and lowers it for the rest.
 * Several touches make one thing: a container's own and its marker's.
 */
export const fitTouch = (said: Touch, ...recorded: readonly Touch[]): number => {
  let parts = 0;
  let sum = 0;
  const score = (
    value: string | number,
    on: readonly (string | number | undefined)[],
    firm: boolean,
  ): boolean => {
    parts += 1;
    const known = on.filter((other) => other !== undefined);
    if (known.includes(value)) sum += 1;
    else if (known.length === 0) sum += 0.5;
    else if (firm) return false;
    return true;
  };
  for (const key of keys) {
    const value = said[key];
    if (value === undefined) continue;
    if (key === 'fastening' && value === 'marker') continue;
    if (
      !score(
        value,
        recorded.map((touch) => touch[key]),
        key === 'fastening',
      )
    )
      return 0;
  }
  if (said.counted !== undefined && said.dots === undefined) {
    parts += 1;
    if (!recorded.some(({ dots, counted }) => (dots ?? 0) > 0 && sameCounted(said.counted, counted)))
      return 0;
    sum += 1;
  }
  if (said.dots !== undefined) {
    const dots = recorded
      .filter(({ counted }) => sameCounted(said.counted, counted))
      .map((touch) => touch.dots);
    // A marker without recorded dots has none.
    const known = dots.some((many) => many !== undefined) ? dots : [0];
    if (!score(said.dots, known, true)) return 0;
  }
  if (said.fastenings !== undefined) {
    if (
      !score(
        said.fastenings,
        recorded.map((touch) => touch.fastenings),
        true,
      )
    )
      return 0;
  }
  return parts === 0 ? 0 : sum / parts;
};
