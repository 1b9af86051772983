/**
 * How words sound, and how alike two sound. English words are looked up in the CMU pronouncing
 * dictionary; others are read by the language's letter rules (`sounds.json`).
 * A sound is one letter; the letters are listed in `sounds.json`.
 */
import { LRUCache } from 'lru-cache';
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { pronunciationOf } from './pronunciations.js';

/** CMU's symbols to ours. ER is an unstressed vowel and an r. */
const symbols: Readonly<Record<string, string>> = {
  AA: 'a',
  AE: 'A',
  AH: 'u',
  AO: 'o',
  AW: 'W',
  AY: 'Y',
  EH: 'e',
  ER: 'ur',
  EY: 'E',
  IH: 'i',
  IY: 'I',
  OW: 'O',
  OY: 'Q',
  UH: 'V',
  UW: 'U',
  B: 'b',
  CH: 'C',
  D: 'd',
  DH: 'D',
  F: 'f',
  G: 'g',
  HH: 'h',
  JH: 'J',
  K: 'k',
  L: 'l',
  M: 'm',
  N: 'n',
  NG: 'G',
  P: 'p',
  R: 'r',
  S: 's',
  SH: 'S',
  T: 't',
  TH: 'T',
  V: 'v',
  W: 'w',
  Y: 'y',
  Z: 'z',
  ZH: 'Z',
};

const fromDictionary = (word: string): string | null =>
  pronunciationOf(word)
    ?.split(' ')
    .map((symbol) => symbols[symbol.replace(/\d/, '')] ?? '')
    .join('') ?? null;

const byFirstLetter = perLexicon(({ sounds }) => {
  const rules = new Map<string, (typeof sounds.letters)[number][]>();
  for (const rule of sounds.letters) {
    const first = rule[0][0]!;
    const there = rules.get(first);
    if (there) there.push(rule);
    else rules.set(first, [rule]);
  }
  return rules;
});

const byLetters = (word: string, lexicon: Lexicon): string => {
  const rules = byFirstLetter(lexicon);
  let spoken = '';
  for (let at = 0; at < word.length;) {
    const rule = rules.get(word[at]!)?.find(([letters, , where]) => {
      if (!word.startsWith(letters, at)) return false;
      const next = word[at + letters.length] ?? '';
      if (where === 'start') return at === 0;
      if (where === 'end') return next === '' && at > 0;
      if (where === 'front') return /[eiyéè]/.test(next);
      return where === undefined || /[aeiou]/.test(next);
    });
    const sound = rule?.[1] ?? '';
    // Doubled letters are one sound.
    spoken += sound.startsWith(spoken.at(-1) ?? '-') ? sound.slice(1) : sound;
    at += rule?.[0].length ?? 1;
  }
  return spoken;
};

/** Inflections and prefixes that the dictionary leaves out ("reheat", "lasagnas"). */
const derived = (word: string): string | null => {
  if (word.endsWith("'s")) {
    const owner = fromDictionary(word.slice(0, -2));
    return owner === null ? null : `${owner}z`;
  }
  if (word.length > 4 && word.endsWith('s')) {
    const single = fromDictionary(word.slice(0, -1));
    if (single !== null) return `${single}z`;
  }
  if (word.length > 4 && word.startsWith('re')) {
    const rest = fromDictionary(word.slice(2));
    if (rest !== null) return `rI${rest}`;
  }
  return null;
};

const remembered = perLexicon(() => new LRUCache<string, string>({ max: 20_000 }));

/** The sounds of one lower-case word; empty for a word without letters. */
export const soundsOf = (word: string, lexicon: Lexicon): string => {
  const memory = remembered(lexicon);
  const known = memory.get(word);
  if (known !== undefined) return known;
  const looked = lexicon.sounds.dictionary === 'cmu' ? (fromDictionary(word) ?? derived(word)) : null;
  const spoken = looked ?? byLetters(word.replace(/'/g, ''), lexicon);
  memory.set(word, spoken);
  return spoken;
};

/** True for a word whose sounds are known, and not read off its letters. */
export const hasPronunciation = (word: string, lexicon: Lexicon): boolean =>
  lexicon.sounds.dictionary === 'cmu' && (fromDictionary(word) ?? derived(word)) !== null;

/** Every way a word may sound: one that no dictionary has may sound an ending that English leaves silent. */
export const waysToSay = (word: string, lexicon: Lexicon): readonly string[] => {
  const usual = soundsOf(word, lexicon);
  if (hasPronunciation(word, lexicon)) return [usual];
  const sounded = lexicon.sounds.sounded.flatMap(([ending, sound]) =>
    word.length > ending.length + 2 && word.endsWith(ending)
      ? [byLetters(word.slice(0, -ending.length), lexicon) + sound]
      : [],
  );
  return [...new Set([usual, ...sounded])];
};

const vowels = 'AauoWYeEiIOQVU';
const classes: Readonly<Record<string, string>> = {
  p: 'P',
  b: 'P',
  t: 'T',
  d: 'T',
  T: 'T',
  D: 'T',
  k: 'K',
  g: 'K',
  f: 'F',
  v: 'F',
  s: 'S',
  z: 'S',
  S: 'S',
  Z: 'S',
  C: 'S',
  J: 'S',
  m: 'N',
  n: 'N',
  G: 'N',
  l: 'L',
  r: 'R',
};

/** Consonants by class, without vowels and glides: what survives most mishearings. "time", "thyme" and "dine" are TN. */
export const skeletonOf = (spoken: string): string => {
  let skeleton = '';
  for (const sound of spoken) {
    const kind = classes[sound];
    if (kind !== undefined && kind !== skeleton.at(-1)) skeleton += kind;
  }
  return skeleton;
};

// Costs of one sound heard for another. Our own, by shared voice, place and manner of
// articulation; not fitted to any recogniser.
const same = 0;
const unlike = 1;
const close: readonly (readonly [number, string])[] = [
  [0.2, 'iI eE ei aA ao oO uA ua ue ui uo uV uU UV OU Wa Wo Yi Ya QO IE'],
  [0.3, 'pb td kg sz SZ CJ fv TD nG yI wU'],
  [0.4, 'Tf Tt Ts Dd Dv Dz sS zZ CS JZ nm Ct Jd rw'],
  [0.6, 'lr lw mG tk pt pk bd dg bv hf kC gJ bm dn'],
];
const costs = new Float32Array(128 * 128);
const cost = (a: string, b: string): number => {
  if (a === b) return same;
  const [first, second] = [vowels.includes(a), vowels.includes(b)];
  if (first && second) return 0.35;
  if (first !== second) return 'rlwyh'.includes(first ? b : a) ? 0.9 : 1.2;
  return unlike;
};
const losses = new Float32Array(128).fill(0.8);
const sounds = Object.values(symbols).join('');
for (const a of new Set(sounds)) {
  losses[a.charCodeAt(0)] =
    a === 'u'
      ? 0.25
      : vowels.includes(a)
        ? 0.4
        : a === 'h'
          ? 0.3
          : 'tdryw'.includes(a)
            ? 0.4
            : 'szn'.includes(a)
              ? 0.5
              : 0.7;
  for (const b of new Set(sounds)) costs[a.charCodeAt(0) * 128 + b.charCodeAt(0)] = cost(a, b);
}
for (const [price, pairs] of close) {
  for (const [a, b] of pairs.split(' ').map((pair) => [pair.charCodeAt(0), pair.charCodeAt(1)] as const)) {
    costs[a * 128 + b] = price;
    costs[b * 128 + a] = price;
  }
}

/** Longer than any name spoken in a breath; beyond it the rest is not compared. */
const longest = 60;
const rows = [new Float32Array(longest + 1), new Float32Array(longest + 1)] as const;

/** 0 to 1: how alike two strings of sounds are, by weighted edit distance. */
export const alike = (a: string, b: string): number => {
  const [rowsA, rowsB] = [Math.min(a.length, longest), Math.min(b.length, longest)];
  if (rowsA === 0 || rowsB === 0) return 0;
  let [above, row] = rows as readonly [Float32Array, Float32Array];
  above[0] = 0;
  for (let j = 1; j <= rowsB; j += 1) above[j] = above[j - 1]! + losses[b.charCodeAt(j - 1)]!;
  for (let i = 1; i <= rowsA; i += 1) {
    const soundA = a.charCodeAt(i - 1);
    const lossA = losses[soundA]!;
    row[0] = above[0]! + lossA;
    for (let j = 1; j <= rowsB; j += 1) {
      const soundB = b.charCodeAt(j - 1);
      const swap = above[j - 1]! + costs[soundA * 128 + soundB]!;
      const drop = above[j]! + lossA;
      const add = row[j - 1]! + losses[soundB]!;
      row[j] = swap < drop ? (swap < add ? swap : add) : drop < add ? drop : add;
    }
    [above, row] = [row, above];
  }
  return Math.max(0, 1 - above[rowsB]! / ((rowsA + rowsB) / 2));
};

/** The sounds of several words said as one: doubled sounds at the joints are said once. */
export const joinedSounds = (words: readonly string[], lexicon: Lexicon): string => {
  let spoken = '';
  for (const word of words) {
    const next = soundsOf(word, lexicon);
    spoken += next.startsWith(spoken.at(-1) ?? '-') ? next.slice(1) : next;
  }
  return spoken;
};

/**
 * 0 to 1: how alike two words or phrases sound, spaces aside ("lean till stew" and "lentil stew").
 * 1 for the same sounds.
 */
export const soundsLike = (a: string, b: string, lexicon: Lexicon): number =>
  alike(joinedSounds(a.toLowerCase().split(' '), lexicon), joinedSounds(b.toLowerCase().split(' '), lexicon));
