/**
 * Talk of lessons, by whoever learns and by whoever teaches her: one begun or left, a hint, how it went. Of whom it is
 * said makes no difference: "how did she get on" is of whoever practised.
 */
import type { Act } from '../../intents.js';
import { figureOf, is, ofKind, some, type Frame, type Made } from './bits.js';

const made = (act: Act, tokens: readonly string[]): Made => ({
  acts: [act],
  used: new Set(tokens.keys()),
  whole: true,
  ours: true,
});

const surelyHers = 0.8;

export const lessonsFrame: Frame = ({ bits, tokens, beside }) => {
  const has = (list: string, from = 0): boolean => tokens.slice(from).some((word) => beside(word, list));
  const lesson = some(bits, 'lesson-word');
  if (
    some(bits, 'remind', 'if', 'lesson-shared') ||
    ofKind(bits, 'thing').some(({ fit, source }) => fit >= surelyHers && source === 'hers')
  )
    return null;
  if (!lesson && some(bits, 'hint-word')) return made({ intent: 'hint', slots: {} }, tokens);
  const how = tokens.findIndex((word) => beside(word, 'how-word'));
  if (how >= 0 && has('went-so', how)) {
    // With no lesson named, nothing else may be said: "how did she get on with the soup" is of the soup.
    const alone = bits.every(
      (bit) =>
        is(bit, 'fill', 'aside', 'opener', 'wh', 'did') ||
        bit.kind === 'person' ||
        tokens
          .slice(bit.from, bit.to)
          .every((word) => ['learner', 'how-word', 'went-so'].some((list) => beside(word, list))),
    );
    const ofWhom = tokens.slice(how).some((word) => beside(word, 'learner'));
    if (lesson || (alone && ofWhom)) return made({ intent: 'lesson-report', slots: {} }, tokens);
  }
  if (!lesson || some(bits, 'not') || has('how-word')) return null;
  if (has('lesson-stop')) return made({ intent: 'end-session', slots: { asked: 'lesson' } }, tokens);
  if (!has('lesson-do') || some(bits, 'wh')) return null;
  const figure = bits.map(figureOf).find((one) => one !== null);
  const [ordinal] = ofKind(bits, 'ordinal');
  // Which of them by its name, the next one: the rules know them.
  if (some(bits, 'lesson-named')) return null;
  return made(
    {
      intent: 'start-lesson',
      slots: {
        ...(figure !== undefined && figure !== null ? { number: figure } : {}),
        ...(ordinal ? { ordinal: ordinal.ordinal } : {}),
        ...(some(bits, 'again') ? { asked: 'again' } : {}),
      },
    },
    tokens,
  );
};
