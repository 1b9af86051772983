export { dateRules } from './rules.js';
