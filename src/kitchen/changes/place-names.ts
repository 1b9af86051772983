/** What counted places are called. English; a household may rename any of them. */
const ORDINALS = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
] as const;

/** Names for `count` places of a kind counted from the top (sides: from the left). */
export const namesCounted = (
  kind: string,
  count: number,
): readonly { readonly name: string; readonly aliases: readonly string[] }[] => {
  if (count === 1) return [{ name: kind, aliases: [] }];
  const [start, end] = kind === 'side' || kind === 'door' ? ['left', 'right'] : ['top', 'bottom'];
  return Array.from({ length: count }, (_, index) => ({
    name: `${ORDINALS[index] ?? `number ${index + 1}`} ${kind}`,
    aliases: [
      ...(index === 0 ? [`${start} ${kind}`] : []),
      ...(index === count - 1 ? [`${end} ${kind}`] : []),
      ...(count % 2 === 1 && index === (count - 1) / 2 ? [`middle ${kind}`] : []),
    ],
  }));
};
