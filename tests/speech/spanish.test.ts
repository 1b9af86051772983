/** Latin American Spanish, spoken: numbers, amounts, days, agreement, and the phrase files as a whole. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../../src/project-files.js';
import { createVoice, type Say, type Value } from '../../src/speech/index.js';

const voice = createVoice('es-MX');
const english = createVoice('en-US');
/** Thursday 14 May 2026, five in the afternoon. */
const around = {
  clock: { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Mexico_City' },
  locale: 'es-MX',
  measures: 'metric',
} as const;
const say = (phrase: string, args: Say['args'] = {}): Say => ({ kind: 'say', phrase, args });
const amount = (value: number, unit: string): Value => ({ kind: 'amount', amount: { value, unit } });

describe('values', () => {
  it.each<[string, Value]>([
    ['veintiuno', 21],
    ['dos tazas y media', amount(2.5, 'cup')],
    ['medio kilo', amount(0.5, 'kilogram')],
    ['media taza', amount(0.5, 'cup')],
    ['veintiún gramos', amount(21, 'gram')],
    ['veintiuna latas', amount(21, 'can')],
    ['doscientas onzas', amount(200, 'ounce')],
    ['ninguna bolsa', amount(0, 'bag')],
    ['un frasco', amount(1, 'jar')],
    ['la mitad', { kind: 'amount', amount: { fraction: 0.5 } }],
    ['ayer', { kind: 'date', day: '2026-05-13' }],
    ['el martes pasado', { kind: 'date', day: '2026-05-12' }],
    ['el sábado', { kind: 'date', day: '2026-05-16' }],
    ['el primero de marzo', { kind: 'date', day: '2026-03-01' }],
    ['el dos de enero de dos mil veinticinco', { kind: 'date', day: '2025-01-02' }],
    ['tres semanas', { kind: 'days', days: 21 }],
    ['como un año y medio', { kind: 'days', days: 500 }],
    ['la una de la tarde', { kind: 'time', at: '2026-05-14T19:00:00.000Z' }],
    ['las ocho y cinco de la noche', { kind: 'time', at: '2026-05-15T02:05:00.000Z' }],
    ['tres minutos y medio', { kind: 'duration', seconds: 210 }],
    ['una hora y cuarenta minutos', { kind: 'duration', seconds: 6000 }],
    ['hace diez minutos', { kind: 'ago', at: '2026-05-14T22:50:00.000Z' }],
    ['ciento sesenta y cinco grados Fahrenheit', { kind: 'temperature', degrees: 165, scale: 'fahrenheit' }],
    ['uno a dos días', { kind: 'span', low: 1, high: 2, unit: 'days' }],
    ['una a dos semanas', { kind: 'span', low: 1, high: 2, unit: 'weeks' }],
    ['arroz, huevo e higos', { kind: 'list', of: ['arroz', 'huevo', 'higos'] }],
    ['siete u ocho', { kind: 'list', of: ['siete', 'ocho'], or: true }],
  ])('%s', (words, value) => expect(voice.valueText(value, around)).toBe(words));
});

describe('agreement', () => {
  const found = (item: string): string =>
    voice.phraseText(say('found-one', { item, where: 'aquí' }), around).replace(/ aquí$/, '');
  it.each([
    ['el guiso de lentejas está', 'guiso de lentejas'],
    ['la leche está', 'leche'],
    ['los frijoles negros están', 'frijoles negros'],
    ['las tortillas están', 'tortillas'],
    ['el agua de jamaica está', 'agua de jamaica'],
    ['el arroz está', 'arroz'],
    ['la sal está', 'sal'],
    ['las nueces están', 'nueces'],
    ['los limones están', 'limones'],
    ['mi salsa está', 'mi salsa'],
  ])('%s', (said, name) => expect(found(name)).toBe(said));

  it('contracts "de el" and "a el", but not in the household’s own names', () => {
    const within = say('place-within', {
      name: 'puerta',
      parent: say('place-whole', { name: 'refrigerador' }),
    });
    expect(voice.phraseText(within, around)).toBe('puerta del refrigerador');
  });

  it('says what hands find in Spanish order, and unknown words as they were recorded', () => {
    const feel = (container: string): string =>
      voice.phraseText(say('feel-container', { container }), around);
    expect(feel('large glass jar')).toBe('un frasco grande de vidrio');
    expect(feel('small plastic bag')).toBe('una bolsa chica de plástico');
    expect(feel('old biscuit tin')).toContain('old biscuit tin');
  });
});

describe('the phrase files', () => {
  const folder = projectFile('grammars', 'es', 'phrases');
  const text = readdirSync(folder)
    .map((file) => readFileSync(`${folder}/${file}`, 'utf8'))
    .join('\n');
  const spoken = text
    .split('\n')
    .filter((line) => !line.startsWith('#'))
    .join('\n');
  const shared = [...voice.phrases].filter((phrase) => english.phrases.has(phrase));

  it('need nothing that the English phrases are not given', () => {
    const wrong = shared.flatMap((phrase) =>
      [...voice.takes(phrase)!].flatMap(([name, optional]) => {
        const given = english.takes(phrase)!;
        if (phrase === 'part-of-day') return []; // only within the hour it belongs to
        return !given.has(name) || (given.get(name) && !optional) ? [`${phrase} $${name}`] : [];
      }),
    );
    expect(wrong).toEqual([]);
    expect(shared.length).toBeGreaterThan(450);
  });

  it('never call anything safe, and hold no figures', () => {
    expect(spoken.match(/\bsegur[oa]s?\b/giu)).toBeNull();
    expect(
      spoken
        .replace(/\[\d+\]/g, '')
        .split('\n')
        .filter((line) => /^\s|=/.test(line))
        .map((line) => line.replace(/^[\w-]+ = /, ''))
        .filter((line) => /\d/.test(line)),
    ).toEqual([]);
  });

  it('know every code of a refusal, a verdict, a caution and a step of heating', () => {
    const missing = [...english.phrases].filter(
      (phrase) =>
        /^(refused|refusal|verdict|caution|step|safety|match)-/.test(phrase) && !voice.phrases.has(phrase),
    );
    expect(missing).toEqual([]);
  });
});
