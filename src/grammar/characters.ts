/** Character classes of XML 1.0, which the ABNF productions are built on (SRGS 1.0 appendix D). */

// Ranges of combining marks are meant as such here.
/* eslint-disable no-misleading-character-class */
const nameStart =
  /[:A-Z_a-z\u00C0-\u00D6\u00D8-\u00F6\u00F8-\u02FF\u0370-\u037D\u037F-\u1FFF\u200C-\u200D\u2070-\u218F\u2C00-\u2FEF\u3001-\uD7FF\uF900-\uFDCF\uFDF0-\uFFFD\u{10000}-\u{EFFFF}]/u;
const nameMore = /[-.0-9\u00B7\u0300-\u036F\u203F-\u2040]/u;
/* eslint-enable no-misleading-character-class */

/** A character that may begin an XML Name. */
export const isNameStart = (char: string): boolean => nameStart.test(char);
/** A character of an XML Nmtoken. */
export const isNameChar = (char: string): boolean => nameStart.test(char) || nameMore.test(char);
/** White space of the ABNF form: space, tab and line ends (section 2.1). */
export const isSpace = (char: string): boolean =>
  char === ' ' || char === '\t' || char === '\n' || char === '\r' || char === '\u0085' || char === '\u2028';

/** Trimmed, runs of white space made one space: how a quoted token is read (section 2.1). */
export const collapse = (text: string): string => text.trim().replace(/\s+/gu, ' ');

/** How tokens are compared: NFC and lower case, since neither is heard. */
export const foldToken = (token: string): string => token.normalize('NFC').toLowerCase();
