/** Cuts text into words. Punctuation goes, but a comma is remembered: it marks hesitation. */

/** A word of a sentence being tidied. */
export interface Word {
  readonly text: string;
  /** A pause was written before it. */
  readonly pause: boolean;
}

const keepsItsMarks = /^(\d+([.:/]\d+)+|\d{4}-\d{1,2}-\d{1,2}|\d{1,2}-\d{1,2}-\d{2,4})$/;

/** "½" is "1/2", "1½" is "1 1/2". */
const openFractions = (text: string): string =>
  text.replace(
    /[\u00BC-\u00BE\u2150-\u215E]/g,
    (sign) => ` ${sign.normalize('NFKD').replace('\u2044', '/')} `,
  );

const spreadSigns = (text: string, signs: Readonly<Record<string, string>>): string => {
  let spread = text;
  for (const [sign, said] of Object.entries(signs)) {
    if (spread.includes(sign)) spread = spread.replaceAll(sign, ` ${said} `);
  }
  return spread;
};

/**
 * Lower-case words of `text` in Unicode NFC. Hyphens part words ("best-before"), except in dates;
 * figures part from the letters after them ("200g", "6pm"), except ordinals ("9th").
 */
export const wordsOf = (text: string, signs: Readonly<Record<string, string>>): Word[] => {
  const plain = spreadSigns(
    openFractions(text.normalize('NFC').toLowerCase())
      .normalize('NFC')
      .replace(/[\u2018\u2019\u02BC\u0060\u00B4]/g, "'")
      // "Nooo", "sooo": drawn out.
      .replace(/([aeiou])\1{2,}/g, '$1')
      .replace(/(\d),(\d{3})(?!\d)/g, '$1$2')
      .replace(/\b([ap])\. ?m\b\.?/g, '$1m')
      .replace(/[\u2010\u2011]/g, '-')
      .replace(/[\u2012-\u2015]|--+/g, ' , '),
    signs,
  );
  const words: Word[] = [];
  let pause = false;
  for (const chunk of plain.split(/\s+/)) {
    const core = chunk.replace(/^[^\p{L}\p{M}\p{N}'-]+|[^\p{L}\p{M}\p{N}'-]+$/gu, '');
    const before = chunk.slice(0, chunk.indexOf(core));
    if (/[,;.…:!?]/.test(before)) pause = true;
    // A word broken off ("fr- freezer") was never finished.
    if (/^\p{L}{1,4}-$/u.test(core)) continue;
    const parts = keepsItsMarks.test(core)
      ? [core]
      : core
          .split(/[^\p{L}\p{M}\p{N}'.:/]+|(?<!\d)[.:/]+|[.:/]+(?!\d)/u)
          .flatMap((part) => part.replace(/^([\d.:/]*\d)(?!(?:st|nd|rd|th)$)(\p{L}+)$/u, '$1 $2').split(' '))
          .map((part) => part.replace(/^'+(?!s$|m$|d$|em$|cause$)|'+$/g, ''))
          .filter((part) => /[\p{L}\p{N}]/u.test(part));
    for (const part of parts) {
      words.push({ text: part, pause });
      pause = false;
    }
    if (/[,;.…!?]/.test(chunk.slice(before.length + core.length))) pause = true;
  }
  return rejoined(words);
};

/** Some recognisers part an ending from its word: "what 's", "do n't". */
const rejoined = (words: readonly Word[]): Word[] => {
  const out: Word[] = [];
  for (const word of words) {
    const last = out.at(-1);
    if (last && /^('s|'m|'d|'ll|'re|'ve|n't)$/.test(word.text) && !/\d/.test(last.text)) {
      out[out.length - 1] = { text: last.text + word.text, pause: last.pause };
    } else if (word.text === 'em' || !word.text.startsWith("'")) out.push(word);
    else
      out.push({
        text: word.text.slice(word.text === "'em" || word.text === "'cause" ? 0 : 1),
        pause: word.pause,
      });
  }
  return out;
};
