/** Examples for the description: a body to try each operation with, and what the demo kitchen answered to it. */
import { readFileSync } from 'node:fs';
import { projectFile } from '../project-files.js';

/** By operation, then by type. */
export type Answers = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

/** Recorded by `npm run answers`: lists cut to one, keys and ids put for others. */
export const readAnswers = (): Answers =>
  JSON.parse(readFileSync(projectFile('shared', 'wire', 'answers.json'), 'utf8')) as Answers;

/** Ids are of the demo kitchen's kind. */
export const EXAMPLES: Readonly<Record<string, unknown>> = {
  'POST /v1/turns': {
    id: 't1',
    hypotheses: [
      { text: 'where is the caraway sauerkraut', confidence: 0.91 },
      { text: 'where is the caraway sour kraut', confidence: 0.05 },
    ],
  },
  'POST /v1/pairings': { name: 'speaker by the door' },
  'POST /v1/pairings/confirm': { code: '1234 5678', scope: 'speak' },
  'POST /v1/invitations': { name: 'tablet by the window', scope: 'help', personId: null },
  'POST /v1/invitations/withdraw': { invitation: 'eyJ….c2VjcmV0' },
  'POST /v1/invitations/accept': { invitation: 'eyJ….c2VjcmV0' },
  'PUT /v1/notices': {
    endpoint: 'https://push.kitchen.example/one',
    p256dh: 'B'.repeat(87),
    auth: 'a'.repeat(22),
  },
  'PATCH /v1/devices/{id}': { name: 'window speaker', scope: 'help' },
  'POST /v1/session': { token: 'tsf_…' },
  'POST /v1/kitchen/places': { name: 'egg shelf', kind: 'shelf', parentId: null },
  'POST /v1/kitchen/items': {
    name: 'chickpea curry',
    shares: [{ count: 2, unit: 'tub', placeId: null }],
    dates: { made: '2026-05-13' },
    maker: 'Dele',
    contains: ['sesame'],
  },
  'POST /v1/kitchen/markers': {
    touch: { texture: 'wooden', fastening: 'bead', dots: 2, counted: 'knot', spot: 'neck' },
    care: 'hand wash only',
  },
  'PATCH /v1/kitchen/markers/{id}': { touch: { texture: 'cork', fastening: 'disc' }, care: null },
  'PATCH /v1/kitchen/items/{id}': { dates: { opened: '2026-05-14' }, contains: ['milk'] },
  'POST /v1/kitchen/list': {
    name: 'oats',
    amount: { value: 2, unit: 'bag' },
    note: 'rolled',
    shop: 'corner shop',
  },
  'POST /v1/kitchen/items/{id}/take': { count: 1 },
  'POST /v1/kitchen/items/{id}/move': { placeId: 'place.fridge' },
  'POST /v1/kitchen/items/{id}/finish': { how: 'thrown out' },
  'POST /v1/kitchen/undo': { version: 12 },
  'POST /v1/kitchen/people': { name: 'Amara', allergens: ['sesame'] },
  'PATCH /v1/kitchen/people/{id}': {
    allergens: ['sesame', 'milk'],
    needs: ['cut up small'],
    comesOn: '2026-05-17',
  },
  'PATCH /v1/household': { microwaveWatts: 900, summaryAt: '20:00' },
  'DELETE /v1/household': { name: 'Kitchen of the household' },
  'POST /v1/household/import': {
    form: 'csv',
    text: 'Item,Location,Quantity,Expiry\nOats,Pantry,2 bags,30/11/2026\n',
    dryRun: true,
  },
  'POST /v1/labels': { kind: 'pdf', items: [], markers: ['marker.1'] },
  'POST /v1/hooks/{household}/{device}/turns': { text: 'what should I use first', conversation: 'call-17' },
};
