/**
 * Statements: what was done and what is so, several in one breath, with their roles in any order. Proposes
 * nothing for questions, wishes and what is only supposed.
 */
import type { DynamicRules } from '../../../grammar/api.js';
import type { Deed, Proposal, Statement } from '../../intents.js';
import { believed, worthNaming } from '../../gate/index.js';
import type { Chunk } from '../api.js';
import { type Draft, saysSomething, statementOf } from '../draft.js';
import type { MovesLexicon } from '../lexicon.js';
import { wordsAside } from './asides.js';
import { assemble, leftover } from './assemble.js';

/** What went into a dish is told before it, so that "it", said next, is the dish. */
const dishLast = (all: readonly Statement[]): readonly Statement[] => {
  const [dish, ...used] = all;
  return dish?.deed === 'made' && used.length > 0 && used.every(({ deed }) => deed === 'took')
    ? [...used, dish]
    : all;
};

const isGone: ReadonlySet<Deed> = new Set<Deed>(['threw', 'finished', 'took']);
const sure = 0.78;

export const statementsProposal = (
  chunks: readonly Chunk[],
  cost: number,
  tokens: readonly string[],
  pauses: ReadonlySet<number>,
  rules: DynamicRules,
  lexicon: MovesLexicon,
  /** Something was done or asked just before. */
  goesOn = true,
  /** The place she stands before and tells what is there. */
  standing: string | null = null,
): Proposal | null => {
  const made = assemble({ chunks, tokens, pauses, rules, lexicon });
  if (!made) return null;
  if (standing !== null) for (const draft of made.drafts) standsThere(draft, standing);
  const told = made.drafts.filter((draft) => !draft.fine || draft.deed !== null);
  const { language } = lexicon;
  // "I have chicken thighs, milk and eggs, the milk's in the door": one of several that came in.
  const others = (draft: Draft): boolean =>
    told.some((one) => one !== draft && one.deed === draft.deed && (one.place ?? one.amount) !== undefined);
  const isBelieved = (draft: Draft): boolean =>
    saysSomething(draft) &&
    !guessedName(draft, others(draft)) &&
    believed([statementOf(draft)], rules, language).length > 0;
  const all = dishLast(told.filter(isBelieved).map(statementOf));
  // Several things told one after the other are what was brought in.
  const statements = all.length > 1 ? all.map(({ stands: _stands, ...one }): Statement => one) : all;
  if (statements.length === 0) return null;
  // Of nothing that was named or pointed at: not of this kitchen, unless it goes on with what was said before.
  // What is in food is never passed over: it is of what was spoken of last.
  const inFood = statements.some(({ contains }) => contains !== undefined);
  if (!goesOn && !inFood && statements.every(({ thing }) => thing === null)) return null;
  // A bare name with nothing said of it is no part of what is told, nor is a word that only might be a name.
  const bare = told.filter((draft) => !isBelieved(draft));
  const reasons = statements.every(
    ({ deed, thing }) =>
      (isGone.has(deed) && (thing?.candidates[0]?.fit ?? 0) > sure) ||
      // Why it comes off the list says nothing of what.
      (deed === 'unlisted' && thing?.pointer === 'last-added'),
  );
  const aside = wordsAside({ chunks, tokens, pauses, rules, lexicon });
  const left = [...made.left, ...bare.flatMap((draft) => wordsOf(draft, tokens))].filter(
    // Why it was thrown out says nothing of what.
    (at) => !aside.has(at) && !(reasons && lexicon.isOrdinary(tokens[at]!)),
  );
  return {
    acts: [
      {
        intent: 'tell',
        slots: {
          statements,
          ...(left.length > 0
            ? {
                unused: worthNaming(
                  left.map((at) => tokens[at]!),
                  rules,
                  lexicon.language,
                ),
              }
            : {}),
        },
      },
    ],
    mood: 'told',
    used: made.used,
    left,
    score: -cost / 2 - made.cost / 2 - leftover * left.length,
    by: 'statements',
  };
};

/** "Butter, two jars of jam", said standing before a shelf: they are there. A fact of what is hers is a fact. */
const standsThere = (draft: Draft, standing: string): void => {
  const { thing, place, parts, from, deed, dates, definite } = draft;
  if (!thing?.words || place || from || parts.length > 0) return;
  if (deed !== null && deed !== 'stored') return;
  if (Object.keys(dates).length > 0 && (definite || (thing.candidates[0]?.fit ?? 0) >= sure)) return;
  draft.deed = 'stored';
  draft.place = { words: null, candidates: [{ id: standing, fit: 1 }], pointer: null, spot: null };
};

/** Nobody's word for a food, with nothing that foods are told with: an amount, a place, that it was made or bought. */
const guessedName = (
  { thing, open, amount, place, parts, deed, definite, needed }: Draft,
  /** Others of the same breath have a place or an amount. */
  among: boolean,
): boolean => {
  if (thing === null || thing.words === null) return false;
  const placed = place !== undefined || parts.length > 0;
  if (open && deed === null && amount === undefined && !definite) return true;
  if (open && needed) return true;
  if (open) return !placed && deed !== 'made' && deed !== 'bought' && deed !== 'listed';
  return !placed && amount === undefined && deed === 'stored' && !among;
};

const wordsOf = ({ thing }: Draft, tokens: readonly string[]): readonly number[] => {
  const words = thing?.words?.split(' ') ?? [];
  return tokens.flatMap((token, at) => (words.includes(token) ? [at] : []));
};
