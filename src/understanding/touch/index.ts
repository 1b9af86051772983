export { fitTouch } from './fit.js';
export { touchRules } from './rules.js';
