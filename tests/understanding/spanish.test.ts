/** Latin American Spanish, heard: the same understander with the grammars and words of `grammars/es`. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadGrammar } from '../../src/grammar/index.js';
import { projectFile } from '../../src/project-files.js';
import { createUnderstander, type Expectation } from '../../src/understanding/index.js';
import { rulesFor } from '../../src/understanding/grammar-files.js';
import { normalise } from '../../src/understanding/words/index.js';
import { JUEVES, spanishKitchen, spanishNames } from '../support/spanish-kitchen.js';

const locale = 'es-MX';
const names = spanishNames();
const understander = createUnderstander(locale);
const { items, places } = spanishKitchen();

const hear = (text: string, expecting: Expectation = 'anything') =>
  understander.understand([{ text }], names, { ...JUEVES, locale, expecting });
const best = (text: string, expecting: Expectation = 'anything') => {
  const { readings } = hear(text, expecting);
  const act = readings[0]?.acts[0];
  const mention = act?.slots.item ?? act?.slots.items?.[0];
  const id = mention?.candidates[0]?.id;
  const at = act?.slots.place?.candidates[0]?.id ?? mention?.at?.candidates[0]?.id;
  return {
    intent: act?.intent ?? null,
    ...(id ? { item: items.get(id)?.name } : {}),
    ...(at ? { at: places.get(at)?.name } : {}),
  };
};

describe('every example in the Spanish grammar files', () => {
  const folder = projectFile('grammars', 'es');
  const rules = rulesFor(names, locale, JUEVES);
  const files = readdirSync(folder).filter((name) => name.endsWith('.gram'));
  const examplesIn = (file: string) =>
    [
      ...readFileSync(`${folder}/${file}`, 'utf8').matchAll(
        /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*public \$(\w+)\s*=/g,
      ),
    ].flatMap(([, comment, rule]) =>
      [...comment!.matchAll(/@example (.+)/g)].map(([, text]) => ({
        rule: rule!,
        text: text!.replace(/\*\/?$/, '').trim(),
      })),
    );
  it.each(files.filter((file) => examplesIn(file).length > 0))('%s', (file) => {
    const grammar = loadGrammar(`${folder}/${file}`, { roots: [folder] });
    const failing = examplesIn(file).filter(
      ({ rule, text }) =>
        grammar.parse(normalise(text, locale).tokens, { rules: [rule], dynamic: rules }).length === 0,
    );
    expect(failing).toEqual([]);
  });
});

describe('finding', () => {
  it.each([
    ['¿Dónde está el guiso de lentejas?', { intent: 'find', item: 'guiso de lentejas' }],
    ['oye, ¿dónde dejé la salsa verde, por favor?', { intent: 'find', item: 'salsa verde' }],
    ['¿En qué repisa está el arroz?', { intent: 'find', item: 'arroz blanco' }],
    ['no encuentro la salsa', { intent: 'find', item: 'salsa verde' }],
    ['¿Qué hay en la segunda repisa?', { intent: 'find', at: 'segunda repisa' }],
    ['léeme todo lo que hay en el congelador', { intent: 'find', at: 'congelador' }],
    ['¿qué hay en la puerta del refri?', { intent: 'find', at: 'puerta' }],
    ['¿Hay leche?', { intent: 'find', item: 'leche' }],
    [
      '¿todavía tengo frijoles en el congelador?',
      { intent: 'find', item: 'frijoles negros', at: 'congelador' },
    ],
    ['¿me queda arroz?', { intent: 'find', item: 'arroz blanco' }],
    ['¿Cuántos huevos quedan?', { intent: 'count', item: 'huevos' }],
    ['cuánta leche tengo', { intent: 'count', item: 'leche' }],
    ['cuántos envases de guiso de lentejas hay', { intent: 'count', item: 'guiso de lentejas' }],
    ['¿Qué es esto?', { intent: 'whats-this' }],
    ['qué es lo de la cuenta de madera', { intent: 'whats-this' }],
    ['cuéntame del guiso de lentejas', { intent: 'tell-about', item: 'guiso de lentejas' }],
    ['cómo llego a la salsa', { intent: 'how-to-reach', item: 'salsa verde' }],
    ['qué repisas hay en el refrigerador', { intent: 'places', at: 'refrigerador' }],
  ])('%s', (text, wanted) => expect(best(text)).toEqual(wanted));

  it('hears one name for another that sounds the same', () => {
    expect(best('donde esta el guizo de lentejas')).toEqual({ intent: 'find', item: 'guiso de lentejas' });
  });
});

describe('age', () => {
  it.each([
    ['¿Todavía está bueno el arroz?', { intent: 'keeps', item: 'arroz blanco' }],
    ['¿cuánto dura la leche en el refrigerador?', { intent: 'guidance', item: 'leche' }],
    ['¿se echó a perder la salsa verde?', { intent: 'keeps', item: 'salsa verde' }],
    ['puedo comer el arroz todavía', { intent: 'keeps', item: 'arroz blanco' }],
    ['¿hay que tirar el guiso de lentejas?', { intent: 'keeps', item: 'guiso de lentejas' }],
    ['¿Cuánto tiempo tiene el guiso de lentejas?', { intent: 'how-old', item: 'guiso de lentejas' }],
    ['qué tan viejo está el arroz', { intent: 'how-old', item: 'arroz blanco' }],
    ['¿cuándo abrí la leche?', { intent: 'item-date', item: 'leche' }],
    ['cuándo vence el atún', { intent: 'item-date', item: 'atún' }],
    ['¿Qué uso primero?', { intent: 'use-first' }],
    ['qué debo comer esta semana', { intent: 'use-first' }],
    ['¿qué es lo más viejo del congelador?', { intent: 'use-first', at: 'congelador' }],
    ['hay algo por vencer en el refri', { intent: 'use-first', at: 'refrigerador' }],
    ['qué no tiene fecha', { intent: 'no-date' }],
  ])('%s', (text, wanted) => expect(best(text)).toEqual(wanted));

  it('hears a food this house never had', () => {
    const { readings } = hear('¿cuánto dura el caldo de pollo en el refrigerador?');
    expect(readings[0]?.acts[0]).toMatchObject({
      intent: 'guidance',
      slots: { item: { words: 'caldo de pollo' }, guidance: { asked: 'keep', where: 'fridge' } },
    });
  });
});

describe('reheating', () => {
  it.each([
    ['¿Cómo recaliento el guiso de lentejas?', { intent: 'reheat', item: 'guiso de lentejas' }],
    ['cómo lo caliento', { intent: 'reheat' }],
    ['quiero calentar el arroz', { intent: 'reheat', item: 'arroz blanco' }],
  ])('%s', (text, wanted) => expect(best(text)).toEqual(wanted));

  it('takes the method and the portions', () => {
    expect(
      hear('cómo caliento el guiso de lentejas en el microondas para dos personas').readings[0]?.acts[0]
        ?.slots,
    ).toMatchObject({
      method: 'microwave',
      amount: { value: 2, unit: 'portion' },
    });
  });
});

describe('the talk itself', () => {
  it.each<[string, string, Expectation?]>([
    ['sí', 'yes', 'yes-no'],
    ['claro que sí', 'yes', 'yes-no'],
    ['creo que sí', 'yes', 'yes-no'],
    ['no gracias', 'no', 'yes-no'],
    ['no sé', 'maybe', 'yes-no'],
    ['olvídalo', 'cancel'],
    ['ya basta', 'stop'],
    ['espera un momento', 'wait'],
    ['sigue', 'continue'],
    ['repite por favor', 'repeat'],
    ['no te oí bien', 'repeat'],
    ['siguiente', 'next', 'step'],
    ['¿qué sigue?', 'next', 'step'],
    ['regresa un paso', 'back', 'step'],
    ['desde el principio', 'start-over', 'step'],
    ['cuál era el paso dos', 'skip-to', 'step'],
    ['¿cuántos pasos faltan?', 'steps-left', 'step'],
    ['ya terminé', 'done', 'step'],
    ['más corto', 'shorter'],
    ['dame más detalles', 'longer'],
    ['habla más rápido', 'faster'],
    ['un poco más despacio', 'slower'],
    ['más fuerte', 'louder'],
    ['baja la voz', 'quieter'],
    ['susurra', 'whisper'],
    ['deletréalo', 'spell'],
    ['solo los nombres', 'just-names'],
    ['¿qué oíste?', 'what-heard'],
    ['¿por qué?', 'why'],
    ['¿quién lo dice?', 'why'],
    ['ayuda', 'help'],
    ['¿qué te puedo preguntar?', 'help'],
    ['muchas gracias', 'thanks'],
    ['buenos días', 'greeting'],
    ['hasta luego', 'goodbye'],
    ['deshaz eso', 'undo'],
    ['me equivoqué', 'undo'],
    ['el segundo', 'choose', 'choice'],
    ['el del congelador', 'choose', 'choice'],
    ['el frasco grande', 'choose', 'choice'],
    ['los dos', 'choose', 'choice'],
  ])('%s is %s', (text, intent, expecting) => expect(best(text, expecting).intent).toBe(intent));
});

describe('what is not ours', () => {
  it.each([
    'pon música de mariachi',
    '¿cómo va a estar el clima mañana?',
    'transfiere mil pesos a mi hermana',
    'cuéntame un chiste',
    'cuál es la capital de Francia',
    'despiértame a las siete',
    'reserva una mesa para dos en el restaurante',
    'cuánto cuesta un vuelo a Lima',
    'apaga la luz de la sala',
    'llama a mi mamá',
  ])('%s', (text) =>
    expect(['out-of-scope', 'not-understood', 'ask-again', 'decline']).toContain(hear(text).verdict),
  );
});
