/**
 * "Ponlo en la nevera", "las metí al congelador", "se me acabó la crema": what leans on the verb stands after it by
 * itself, what only says for whom is left out, who does it is said where the ending tells ("metí" is "yo metí"), and
 * "no" before a verb is told apart from the "no" that puts right.
 */
import type { DynamicRules } from '../../../grammar/api.js';
import { namedMention } from '../../meaning-parts.js';
import type { Spelled } from '../api.js';
import { verbs, type VerbForm } from './verbs.js';

/** For whom, or to oneself: nothing that is done to. */
const forWhom: ReadonlySet<string> = new Set(['me', 'te', 'se', 'nos', 'os', 'le', 'les']);
const doneTo: ReadonlyMap<string, string> = new Map([
  ['lo', 'ello'],
  ['la', 'ello'],
  ['los', 'ellos'],
  ['las', 'ellos'],
]);
const speakers: ReadonlySet<string> = new Set(['yo', 'nosotros', 'nosotras']);
const mine: ReadonlySet<string> = new Set(['he', 'hemos']);
const others: ReadonlySet<string> = new Set([
  'ha',
  'han',
  'has',
  'había',
  'habían',
  'habíamos',
  'hayan',
  'haya',
]);
const justNow: ReadonlyMap<string, boolean> = new Map([
  ['acabo', true],
  ['acabamos', true],
  ['acaba', false],
  ['acaban', false],
]);
const bare = (word: string): string =>
  word
    .normalize('NFD')
    .replace(/\u0301/gu, '')
    .normalize('NFC');

interface Leaning {
  readonly verb: string;
  readonly objects: readonly string[];
}

const enclitics = /^(.{2,}?)(me|te|se|nos|os)?(lo|la|los|las|le|les)?$/u;

/** "Guárdalo", "pónmelas", "meterlos": the verb and what leans on it; null for any other word. */
export const leaningOn = (word: string): Leaning | null => {
  const { formOf, isShort } = verbs();
  if (word.length < 4 || formOf(word)) return null;
  const [, rest = '', whom, object] = enclitics.exec(word) ?? [];
  if (whom === undefined && object === undefined) return null;
  const plain = bare(rest);
  const form = formOf(plain) ?? formOf(rest);
  const bidden = form?.person === 'bid' || form?.kind === 'infinitive' || form?.kind === 'gerund';
  if (!form || !bidden) return null;
  // "Tomate", "cebolla": without an accent only a short imperative or an infinitive takes a pronoun.
  const marked = plain !== rest || isShort(plain) || form.kind === 'infinitive';
  if (!marked && !(object !== undefined && doneTo.has(object) && plain.length > 3)) return null;
  const to = object !== undefined ? doneTo.get(object) : undefined;
  return { verb: plain, objects: to ? [to] : [] };
};

/** The verb that pronouns at `at` lean on; undefined where none follows at once. */
const verbAt = (said: readonly string[], at: number): VerbForm | 'has' | undefined => {
  const word = said[at] ?? '';
  if (mine.has(word) || others.has(word) || (justNow.has(word) && said[at + 1] === 'de')) return 'has';
  const form = verbs().formOf(word);
  return form?.kind === 'finite' ? form : undefined;
};

/** "Lo hizo Lucía", "trajo la tía Rosario": who did it, said after the verb; how many words, with an article. */
const whoAt = (said: readonly string[], at: number, rules: DynamicRules): number => {
  const article = beforeNames.has(said[at] ?? '') ? 1 : 0;
  const found = rules.get('kitchen:person')?.matchesAt(said, at + article) ?? [];
  const sure = found.filter(({ value }) => (namedMention(value).candidates[0]?.fit ?? 0) >= surelyThem);
  return sure.length === 0 ? 0 : article + Math.max(...sure.map(({ length }) => length));
};
const beforeNames: ReadonlySet<string> = new Set(['el', 'la', 'mi']);
const surelyThem = 0.9;

/** The same of what had to be done. */
const hadTo: ReadonlyMap<string, boolean> = new Map([
  ['tuve', true],
  ['tuvimos', true],
  ['tuvo', false],
  ['tuvieron', false],
]);

const participleOf = (verb: string): string | undefined =>
  [...verbs().forms(verb)].find(([, { kind }]) => kind === 'participle')?.[0];

export const spelledOut = (
  said: readonly string[],
  pauses: ReadonlySet<number>,
  rules: DynamicRules,
): Spelled => {
  const tokens: string[] = [];
  const kept = new Set<number>();
  let waiting: string[] = [];
  let isDone = false;
  // "Acabo de tirar", "tuve que tirar": it is done, where "voy a tirar" is not.
  const asDone = (word: string): string => {
    const form = isDone ? verbs().formOf(word) : undefined;
    if (form?.kind !== 'infinitive') return word;
    isDone = false;
    return participleOf(form.verb) ?? word;
  };
  const push = (...words: readonly string[]): void => {
    tokens.push(...words);
  };
  const speaker = (): void => {
    if (!speakers.has(tokens.at(-1) ?? '')) push('yo');
  };
  for (let at = 0; at < said.length; at += 1) {
    const word = said[at]!;
    if (pauses.has(at)) kept.add(tokens.length);
    // Pronouns before their verb.
    let to = at;
    const objects: string[] = [];
    while (to - at < 3 && (forWhom.has(said[to] ?? '') || doneTo.has(said[to] ?? ''))) {
      const object = doneTo.get(said[to]!);
      if (object) objects.push(object);
      to += 1;
      if (pauses.has(to)) break;
    }
    if (to > at && verbAt(said, to) !== undefined && !pauses.has(to)) {
      waiting = objects;
      at = to - 1;
      continue;
    }
    if (word === 'no' && !pauses.has(at + 1)) {
      let next = at + 1;
      while (forWhom.has(said[next] ?? '') || doneTo.has(said[next] ?? '')) next += 1;
      if (verbAt(said, next) !== undefined || verbs().formOf(said[at + 1] ?? '')?.kind === 'infinitive') {
        push('nunca');
        continue;
      }
    }
    const done = justNow.get(word);
    if (done !== undefined && said[at + 1] === 'de') {
      if (done) speaker();
      isDone = true;
      at += 1;
      continue;
    }
    const had = hadTo.get(word);
    if (had !== undefined && said[at + 1] === 'que') {
      if (had) speaker();
      isDone = true;
      at += 1;
      continue;
    }
    if (mine.has(word)) {
      speaker();
      continue;
    }
    if (others.has(word)) {
      push(word);
      continue;
    }
    const leaning = leaningOn(word);
    if (leaning) {
      push(asDone(leaning.verb), ...leaning.objects);
      waiting = [];
      continue;
    }
    const form = verbs().formOf(word);
    if (form?.person === 'first') speaker();
    const doer = form?.person === 'third' && !pauses.has(at + 1) ? whoAt(said, at + 1, rules) : 0;
    if (doer > 0) push(...said.slice(at + 1, at + 1 + doer));
    push(asDone(word));
    if (form && waiting.length > 0) {
      push(...waiting);
      waiting = [];
    }
    at += doer;
  }
  push(...waiting);
  return { tokens, pauses: kept };
};

const noPauses: ReadonlySet<number> = new Set();
const nobody: DynamicRules = new Map();

/** "No están" and "nunca están": a list is looked up in either. */
export const asSpelled = (phrase: string): readonly string[] => [
  ...new Set([phrase, spelledOut(phrase.split(' '), noPauses, nobody).tokens.join(' ')]),
];
