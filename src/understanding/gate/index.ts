/**
 * The one gate of the record: every reading that would make or change a record passes through it, whichever
 * reader proposed it. It looks at what would be written, and at nothing of how it was said.
 */
import type { DynamicRules } from '../../grammar/api.js';
import { type Act, type Intent, type Mention, type Slots, type Statement, emptyMention } from '../intents.js';
import type { Reader } from '../readings.js';
import { type Worth, worthOf } from './names.js';

export { isNoFood, neverNames, worthNaming, worthOf, type Worth } from './names.js';

/** What a name may be that becomes the name of a record, by what is done with it. */
const putsAway: ReadonlySet<Worth> = new Set<Worth>(['hers', 'food', 'goods', 'unknown']);
/** What is bought may be anything that has a name. */
const buys: ReadonlySet<Worth> = new Set<Worth>([...putsAway, 'everyday']);

/** Intents that write the name they are given, and what it may be. */
const writes: Partial<Record<Intent, ReadonlySet<Worth>>> = {
  'put-away': putsAway,
  'buy-add': buys,
  answer: buys,
  correct: buys,
};

const named = ({ intent, slots: { item, items, words } }: Act): readonly Mention[] =>
  items ?? (item ? [item] : intent === 'answer' && words ? [{ ...emptyMention, words }] : []);

/** A food told of that is not on record, and what may be its name. */
const mayTell = ({ deed, thing }: Statement, rules: DynamicRules, language: string): boolean =>
  thing === null || (deed === 'listed' ? buys : putsAway).has(worthOf(thing, rules, language));

/** Of what was told, whatever would make no record of a name that is none. */
export const believed = (
  statements: readonly Statement[],
  rules: DynamicRules,
  language: string,
): readonly Statement[] => statements.filter((statement) => mayTell(statement, rules, language));

/** "The marker", of which nothing was said that a hand could find: none to be put on anything. */
const nondescript = ({ marker }: Slots): boolean =>
  marker !== undefined &&
  marker.touch !== null &&
  Object.entries(marker.touch).every(([part, value]) => part === 'fastening' && value === 'marker');

/** True where all names it would write may be names. */
export const mayWrite = (
  acts: readonly Act[],
  { rules, language, expecting }: Pick<Reader, 'rules' | 'language' | 'expecting'>,
): boolean =>
  acts.every((act) => {
    // Other answers are no names.
    const names = act.intent !== 'answer' || expecting === 'name' ? writes[act.intent] : undefined;
    const told = act.slots.statements ?? [];
    if (act.intent === 'correct' && nondescript(act.slots)) return false;
    return (
      (!names || named(act).every((mention) => names.has(worthOf(mention, rules, language)))) &&
      believed(told, rules, language).length === told.length
    );
  });
