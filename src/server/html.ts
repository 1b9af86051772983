/** Text in HTML pages that the service makes. */
const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Safe as content and as an attribute's value. */
export const htmlText = (raw: string): string => raw.replace(/[&<>"']/g, (char) => ENTITIES[char] ?? char);
