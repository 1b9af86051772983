/** Food names as they are compared: lower case, without accents, apostrophes and plurals. */

const IRREGULAR: ReadonlyMap<string, string> = new Map(
  Object.entries({
    loaves: 'loaf',
    leaves: 'leaf',
    halves: 'half',
    knives: 'knife',
    geese: 'goose',
    fries: 'fry',
    chile: 'chili',
    chilli: 'chili',
    chillies: 'chili',
    chilies: 'chili',
    yoghurt: 'yogurt',
    yoghurts: 'yogurt',
    lasagna: 'lasagne',
    barbeque: 'barbecue',
    barbequed: 'barbecued',
    omelet: 'omelette',
    grey: 'gray',
  }),
);

/** Plural to singular, the same way for table and speech, so that both meet. Not meant to be read. */
export const singular = (word: string): string => {
  const known = IRREGULAR.get(word);
  if (known !== undefined) return known;
  if (word.length > 4 && word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  if (word.length > 4 && word.endsWith('ie')) return `${word.slice(0, -2)}y`;
  if (/(oes|ches|shes|sses|xes)$/.test(word) && word.length > 4) return word.slice(0, -2);
  if (word.length > 3 && word.endsWith('s') && !/(ss|us|is)$/.test(word)) return word.slice(0, -1);
  return word;
};

/** "Amara's White Beans" is `['amara', 'white', 'bean']`. */
export const foodWords = (name: string): string[] =>
  name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/['’]/g, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .map(singular);
