/** Cuts what was said into sentences, where a recogniser or a keyboard marked their ends. */

/** A full stop after one letter ends no sentence ("a.m.", "p.m."). */
const end = /(?<!\b\p{L})[.!?…]+["'”’)\]]*(?=\s+\S)/gu;

/** The sentences of `text` in order, each with its mark; one for a text without marks inside it. */
export const sentencesOf = (text: string): readonly string[] => {
  const sentences: string[] = [];
  let from = 0;
  for (const { index, 0: mark } of text.matchAll(end)) {
    sentences.push(text.slice(from, index + mark.length).trim());
    from = index + mark.length;
  }
  const last = text.slice(from).trim();
  return [...sentences, ...(last === '' ? [] : [last])];
};
