/** `talk --why`: under each answer, what its moves were heard as, who took them and which phrases said so. */
import type { WhyMove } from '../../turn/index.js';

/** What is told of a thing, without what is empty and the records it may be. */
const told = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(told);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key, part]) => key !== 'candidates' && part !== null && part !== false)
      .filter(([, part]) => !(Array.isArray(part) && part.length === 0))
      .map(([key, part]) => [key, told(part)]),
  );
};
const inShort = (value: unknown): string => JSON.stringify(told(value));

const linesOf = (move: WhyMove): readonly (readonly [string, string])[] => [
  ['move', `"${move.words}"${move.passedOver ? ' (passed over)' : ''}`],
  ['kind', `${move.kinds.join(', ') || 'none'} (${move.verdict}, ${move.confidence.toFixed(2)})`],
  ['mood', move.mood ? `${move.mood.name} ${move.mood.share.toFixed(2)}` : ''],
  ['left', move.left.join(', ')],
  ['says', move.qualifiers.join(', ')],
  ...move.slots.map((slots) => ['slots', inShort(slots)] as const),
  ...move.queries.map((query) => ['query', inShort(query)] as const),
  ...move.statements.map((statement) => ['told', inShort(statement)] as const),
  ['by', move.by.join(' > ')],
  ['phrases', move.phrases.join(' | ')],
];

export const asWhyLines = (moves: readonly WhyMove[]): string =>
  moves
    .flatMap(linesOf)
    .filter(([, text]) => text !== '')
    .map(([name, text]) => `  ${name.padEnd(8)}${text}`)
    .join('\n');
