/**
 * Foods heard as other words: "leaks" for leeks, "chikin" for chicken. A word that English has counts only
 * where it sounds just like a food; one it has not, where it nearly does.
 */
import { createSoundIndex } from './names/sound-index.js';
import { alternativesFor } from './names/confusables.js';
import { alike, hasPronunciation, soundsOf } from './names/sounds.js';
import { joiningWords } from './names/stems.js';
import type { Lexicon } from './words/index.js';

/** So alike that no other word is meant. */
const nearly = 0.9;
/** Words that recognisers are known to mistake for each other need not sound the same. */
const mistaken = 0.85;
const shortest = 4;

export interface FoodHeard {
  readonly food: string;
  /** Only a spelling of it: no other word is written so. */
  readonly misspelt: boolean;
  /** Does not sound quite the same: only where a food must be meant. */
  readonly doubtful: boolean;
}

/** `foods`: names of one word, singular; `others`: words that may be bought and are no food. Looks up one word, singular; null for what sounds like no food. */
export const createFoodSounds = (
  foods: ReadonlySet<string>,
  others: ReadonlySet<string>,
  lexicon: Lexicon,
): ((word: string) => FoodHeard | null) => {
  const exact = new Map<string, string>();
  const index = createSoundIndex();
  for (const food of foods) {
    const sounds = soundsOf(food, lexicon);
    // The list holds misspellings too; what is said back is spelt as English spells it.
    const spelt = hasPronunciation(food, lexicon);
    if (spelt || !exact.has(sounds)) exact.set(sounds, food);
    if (spelt) index.add({ sounds, stems: [food] });
  }
  const { stops, articles, inside, counting } = joiningWords(lexicon);
  const known = new Map<string, FoodHeard | null>();
  const look = (word: string): FoodHeard | null => {
    const small = stops.has(word) || articles.has(word) || inside.has(word) || counting.has(word);
    if (small || word.length < shortest || foods.has(word) || others.has(word) || !/^\p{L}+$/u.test(word))
      return null;
    const sounds = soundsOf(word, lexicon);
    if (hasPronunciation(word, lexicon)) {
      const same = exact.get(sounds);
      if (same !== undefined) return { food: same, misspelt: false, doubtful: false };
      const food = alternativesFor(word, lexicon).find(
        (meant) => foods.has(meant) && alike(soundsOf(meant, lexicon), sounds) >= mistaken,
      );
      return food === undefined ? null : { food, misspelt: false, doubtful: true };
    }
    const [best] = index.like(sounds);
    return best && best.likeness >= nearly
      ? { food: best.entry.stems[0]!, misspelt: true, doubtful: false }
      : null;
  };
  return (word) => {
    let found = known.get(word);
    if (found === undefined) {
      if (known.size > 20_000) known.clear();
      known.set(word, (found = look(word)));
    }
    return found;
  };
};
