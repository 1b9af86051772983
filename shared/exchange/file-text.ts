/**
 * The words of a table as a spreadsheet saves it: UTF-8; UTF-16 with its mark, as "Unicode text" is saved; else the
 * code page of Western Windows, which "CSV" is saved in where nothing else was chosen. What is in no other code is
 * read in that one, so nothing is refused: what was read is shown before it is taken.
 */
export const textOfFile = (bytes: Uint8Array): string => {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
};
