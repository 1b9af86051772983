/**
 * Product numbers: GTIN-8, 12, 13 and 14.
 * Source: GS1 General Specifications, section 7.9.1 (standard check digit calculation).
 */

/** The check digit that belongs behind these digits: weights 3, 1, 3, … from the right. */
export const checkDigit = (body: string): number => {
  let sum = 0;
  for (let at = 0; at < body.length; at += 1) {
    sum += Number(body[body.length - 1 - at]) * (at % 2 === 0 ? 3 : 1);
  }
  return (10 - (sum % 10)) % 10;
};

const LENGTHS: ReadonlySet<number> = new Set([8, 12, 13, 14]);

/** Digits of a length a GTIN can have, whether or not the check digit is right. */
export const looksLikeGtin = (text: string): boolean => /^\d+$/.test(text) && LENGTHS.has(text.length);

/** As fourteen digits, the form in which equal products are equal; null when it is none or the check digit is wrong. */
export const gtin14 = (text: string): string | null => {
  const digits = text.replace(/[\s-]/g, '');
  if (!looksLikeGtin(digits)) return null;
  return checkDigit(digits.slice(0, -1)) === Number(digits.at(-1)) ? digits.padStart(14, '0') : null;
};

/** Whether these digits are a product number that ends in its check digit. */
export const isGtin = (digits: string): boolean => gtin14(digits) !== null;

/**
 * Numbers a shop gives out itself (a weighed cheese): they name no product elsewhere, and may hold a price.
 * Prefixes 020–029, 040–049 and 200–299: GS1 General Specifications, section 1.4 (from memory).
 */
export const isInStore = (gtin: string): boolean => /^0(?:02|04|2)/.test(gtin);
