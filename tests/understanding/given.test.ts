/** What dialogue is given of a sentence: fields in place of its words. */
import { describe, expect, it } from 'vitest';
import { wordsOf } from '../../src/terms/quote.js';
import { createUnderstander, given } from '../../src/understanding/index.js';
import type { Act, HearingContext, Understood } from '../../src/understanding/intents.js';
import { asToldIn } from '../../src/understanding/as-told.js';
import { emptyMention } from '../../src/understanding/intents.js';
import { clock, hearing, martasNames } from './household.js';

const names = martasNames();
const understander = createUnderstander('en-US');
const heard = (text: string, context: HearingContext = hearing()): Understood =>
  given(understander.understand([{ text }], names, context), text, names, context);
const namedIn = (text: string, id: string) => heard(text).beside?.named.find((one) => one.id === id);

const spanish: HearingContext = { ...clock, locale: 'es-MX', expecting: 'anything' };
const told = (act: Act, text: string, context: HearingContext = hearing()): Act['slots'] =>
  asToldIn(act, text, context).slots;
const food = (words: string) => ({ ...emptyMention, words });

describe('beside the acts', () => {
  it('is the sentence, to be said back', () =>
    expect(wordsOf(heard('where is the jollof').beside!.quote)).toBe('where is the jollof'));

  it('is nothing where nothing was said', () => expect(heard('').beside).toBeUndefined());

  it('names what is here, whole or by a word of it', () => {
    expect(namedIn('where are the jollof rice and the eggs', 'item.jollof')?.whole).toBe(true);
    expect(namedIn('where is the jollof', 'item.jollof')?.whole).toBe(false);
    expect(namedIn('please the freezer', 'place.chest')?.alone).toBe(true);
    expect(namedIn('the freezer and some eggs', 'place.chest')?.alone).toBe(false);
    expect(namedIn('some eggs', 'place.chest')).toBeUndefined();
  });

  it('is free words only where a name or words of her own were asked for', () => {
    expect(heard('for Auntie', hearing('words')).beside?.free).toBe('for Auntie');
    expect(heard('for Auntie', hearing('place')).beside?.free).toBeNull();
  });

  it('says whose guidance is named', () => {
    expect(heard('the british one').beside?.region).toBe('uk');
    expect(heard('the big one').beside?.region).toBeNull();
  });

  it('says which meanings of marks are named', () => {
    const meanings = ['spicy', 'for guests'];
    expect(heard('anything spicy', { ...hearing(), meanings }).beside?.meanings).toEqual(['spicy']);
    expect(heard('anything spiced', { ...hearing(), meanings }).beside?.meanings).toEqual([]);
  });
});

describe('in the acts', () => {
  const put = (text: string): boolean =>
    told({ intent: 'put-away', slots: { item: food('ham') } }, text).item?.definite === true;

  it('a thing is definite by what stands before it, past one word and no pause', () => {
    expect(put('put the ham on the shelf')).toBe(true);
    expect(put('put my sliced ham on the shelf')).toBe(true);
    expect(put('put ham on the shelf')).toBe(false);
    expect(put('butter on the door, ham on the shelf')).toBe(false);
    expect(put('the very thin ham')).toBe(false);
  });

  it('is one of several by what stands after it', () => {
    const one = (text: string) => told({ intent: 'find', slots: { item: food('beef') } }, text).item?.oneOf;
    expect(one('where is the beef one')).toBe(true);
    expect(one('where is the beef, one of them')).toBeUndefined();
    expect(one('where is the beef stew')).toBeUndefined();
  });

  it('somebody pointed at is no name', () => {
    const points = (words: string, context?: HearingContext) =>
      told({ intent: 'add-person', slots: { person: { words, candidates: [] } } }, words, context).person
        ?.points;
    expect(points('me')).toBe('speaker');
    expect(points('she')).toBe('other');
    expect(points('Dele')).toBeUndefined();
    expect(points('ella', spanish)).toBe('other');
  });

  it('a message is all that follows the name, without what leads to it', () => {
    const act: Act = {
      intent: 'leave-note',
      slots: { person: { words: 'dele', candidates: [] }, words: 'the soup is hers' },
    };
    expect(told(act, 'Tell Dele that the soup is hers').words).toBe('the soup is hers');
    expect(told(act, 'Tell Dele the soup is hers, and no other').words).toBe(
      'the soup is hers, and no other',
    );
    expect(told(act, 'Tell Dele no').words).toBe('the soup is hers');
  });

  it('a meaning keeps its capitals', () => {
    const act: Act = { intent: 'define-dots', slots: { dots: 1, words: 'for auntie' } };
    expect(told(act, 'One knot means for Auntie').written).toBe('for Auntie');
    expect(told(act, 'One knot').written).toBe('for auntie');
  });

  it('a step is found by its code, its own words, or as the last', () => {
    const stepNames = [
      { code: 'step-stir', words: null },
      { code: 'step-stand', words: null },
      { code: 'step-own-words', words: 'Shake the pan' },
    ];
    const at = (words: string, context = hearing()) =>
      told({ intent: 'skip-to', slots: { words } }, words, { ...context, stepNames }).ordinal;
    expect(at('standing')).toBe(2);
    expect(at('stirring')).toBe(1);
    expect(at('shaking')).toBe(3);
    expect(at('the end')).toBe(-1);
    expect(at('frying')).toBeUndefined();
    expect(at('reposar', spanish)).toBe(2);
  });

  it('a caution is without what it is of', () => {
    const caution = (text: string, context = hearing()) =>
      told({ intent: 'amend', slots: { item: food('pepper sauce'), caution: text } }, text, context).caution;
    expect(caution('the pepper sauce is very spicy')).toBe('very spicy');
    expect(caution('very spicy')).toBe('very spicy');
    expect(caution('eso está picante', spanish)).toBe('picante');
  });

  it('a reminder names what it points at, where the language can', () => {
    const act: Act = {
      intent: 'set-reminder',
      slots: { words: 'move it down', item: { ...emptyMention, pointer: 'it' } },
    };
    expect(told(act, 'remind me to move it down').aroundThing).toEqual(['move the', 'down']);
    expect(told(act, 'recuérdame bajarlo', spanish).aroundThing).toBeUndefined();
  });

  it('a setting says whose guidance and which measures', () => {
    const set = (words: string, setting: string) =>
      told({ intent: 'set-household', slots: { words, setting } }, words);
    expect(set('uk', 'region').region).toBe('uk');
    expect(set('france', 'region').region).toBeUndefined();
    expect(set('metric', 'measures').metric).toBe(true);
    expect(set('cups', 'measures').metric).toBeUndefined();
  });
});
