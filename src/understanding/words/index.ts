export { longestInput, normalise, type Normalised, type Note } from './normalise.js';
export { lexiconFor, perLexicon, type Lexicon } from './lexicon.js';
