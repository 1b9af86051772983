export type { GuidanceQuestion, PowerCutQuestion, Temperature } from '../../src/safety/index.js';
export type { Region } from '../../src/kitchen/model.js';
