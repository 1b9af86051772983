/** Household names and sentences for the measurements: made up, repeatable. */

const KINDS = ['', 'red', 'spicy', 'mild', 'green', 'white', 'old', 'plain', 'sweet', 'smoked'];
const FOODS = ['lentil', 'chicken', 'beef', 'bean', 'pea', 'carrot', 'rice', 'corn', 'leek', 'fish'];
const FORMS = ['soup', 'stew', 'pie', 'salad', 'sauce', 'curry', 'roast', 'bake', 'chilli', 'broth'];
const COOKS = ['', 'dele', 'marta', 'ada', 'ife', 'tunde', 'kemi', 'bola', 'sade', 'femi'];

/** `count` different names of one to four words, the first 100 the same whatever the count. At most 10,000. */
export const names = (count: number): string[][] => {
  const found: string[][] = [];
  for (const cook of COOKS) {
    for (const kind of KINDS) {
      for (const food of FOODS) {
        for (const form of FORMS) {
          if (found.length === count) return found;
          found.push([cook, kind, food, form].filter((word) => word !== ''));
        }
      }
    }
  }
  return found;
};

/** What people say; every one is in the language of kitchen.gram with 100 names. */
export const sentences = [
  'where is the lentil soup',
  'find the chicken curry in the chest freezer',
  'can you look for my bean chilli please',
  'do we have carrot salad',
  'how many tubs of beef stew are left',
  'how much rice salad do we have',
  'put the leek pie on the second shelf',
  'i put two fish pie in the freezer',
  'store the pea soup in the upright freezer please',
  'take two portions of beef stew out',
  'i took some corn broth out of the top basket',
  'finish the rice bake',
  'could you please throw away the fish sauce',
  'move the chicken roast from the freezer to the fridge',
  'how old is the bean soup',
  'how do i reheat the chicken pie',
  'thaw the beef roast for dinner',
  'add carrot soup and leek soup to the list',
  'remove corn salad from the list',
  'set a timer for twelve minutes',
].map((sentence) => sentence.split(' '));
