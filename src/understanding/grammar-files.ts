/** The compiled grammar of a language, and the rules that are the same for every household. */
import { readdirSync } from 'node:fs';
import {
  compileGrammar,
  grammarOf,
  type DynamicRule,
  type DynamicRules,
  type Grammar,
} from '../grammar/index.js';
import { prepared } from '../prepared.js';
import { projectFile } from '../project-files.js';
import { wallTime, type Clock } from '../terms/dates.js';
import { dateRules } from './dates/index.js';
import { foodRules } from './foods.js';
import type { HouseholdNames } from './names/api.js';
import { foodsHeld } from './names/foods-held.js';
import { numberRules, timeRules } from './numbers/index.js';
import { touchRules } from './touch/index.js';
import { lexiconFor } from './words/index.js';

const loaded = new Map<string, Grammar>();

/** `grammars/<language>/<name>.gram`, compiled once. Throws `GrammarError` when a file has mistakes. */
export const grammarFor = (language: string, name = 'main'): Grammar => {
  const key = `grammar-${language}-${name}`;
  let grammar = loaded.get(key);
  if (!grammar) {
    const folder = projectFile('grammars', language);
    const files = readdirSync(folder).filter((file) => file.endsWith('.gram'));
    grammar = grammarOf(
      prepared(
        key,
        files.sort().map((file) => projectFile('grammars', language, file)),
        () => compileGrammar(projectFile('grammars', language, `${name}.gram`), { roots: [folder] }),
      ),
    );
    loaded.set(key, grammar);
  }
  return grammar;
};

interface RulesAsOf {
  readonly now: string;
  readonly timeZone: string;
  readonly locale: string;
  readonly rules: DynamicRules;
}
/** Of each household those made last: all readers of a turn ask for the same, and what one read the next need not. */
const lastRules = new WeakMap<HouseholdNames, RulesAsOf>();

/** Everything grammars may refer to, as of now, in this household. */
export const rulesFor = (names: HouseholdNames, locale: string, clock: Clock): DynamicRules => {
  const last = lastRules.get(names);
  if (last?.now === clock.now && last.timeZone === clock.timeZone && last.locale === locale)
    return last.rules;
  const rules = makeRules(names, locale, clock);
  lastRules.set(names, { now: clock.now, timeZone: clock.timeZone, locale, rules });
  return rules;
};

const makeRules = (names: HouseholdNames, locale: string, clock: Clock): DynamicRules => {
  const lexicon = lexiconFor(locale);
  const rules = new Map<string, DynamicRule>(names.rules);
  for (const part of [
    numberRules(lexicon),
    timeRules(lexicon, wallTime(clock)),
    dateRules(lexicon, clock, locale),
    touchRules(lexicon),
    // After the household's names: foods everybody knows are the same list for all.
    foodRules(lexicon.language),
  ])
    for (const [uri, rule] of part) rules.set(uri, rule);
  const [foods, items] = [rules.get('kitchen:food'), rules.get('kitchen:item')];
  if (foods && items) rules.set('kitchen:food', foodsHeld(foods, items));
  return rules;
};
