export { numberRules, timeRules } from './rules.js';
export { joinLetters, spellOut } from './spelling.js';
