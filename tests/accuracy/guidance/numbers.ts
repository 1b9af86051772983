/** Numbers as an answer speaks them: words or digits. */
const ONES =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = '_ _ twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');

const below100 = (words: readonly string[], at: number): { value: number; end: number } | null => {
  const word = words[at] ?? '';
  const ten = TENS.indexOf(word);
  if (ten > 1) {
    const one = ONES.indexOf(words[at + 1] ?? '');
    return one > 0 && one < 10 ? { value: ten * 10 + one, end: at + 2 } : { value: ten * 10, end: at + 1 };
  }
  const one = ONES.indexOf(word);
  return one < 0 ? null : { value: one, end: at + 1 };
};

/** A number at a place, and where it ends; "an" and "a" count as one. */
export const parseSpokenNumber = (
  words: readonly string[],
  at: number,
): { readonly value: number; readonly end: number } | null => {
  const word = words[at] ?? '';
  if (/^\d+(\.\d+)?$/u.test(word)) return { value: Number(word), end: at + 1 };
  if (/^(an?)$/u.test(word) && words[at + 1] !== 'hundred') return { value: 1, end: at + 1 };
  const small = /^an?$/u.test(word) ? { value: 1, end: at + 1 } : below100(words, at);
  if (!small) return null;
  if (words[small.end] !== 'hundred') {
    if (words[small.end] !== 'point') return small;
    const after = below100(words, small.end + 1);
    return after && after.value < 10 ? { value: small.value + after.value / 10, end: after.end } : small;
  }
  let from = small.end + 1;
  if (words[from] === 'and') from += 1;
  const rest = below100(words, from);
  return rest
    ? { value: small.value * 100 + rest.value, end: rest.end }
    : { value: small.value * 100, end: small.end + 1 };
};
