/**
 * Every yes-or-no question the dialogue can ask, kind by kind, with another thing in focus: "yes, <the deed> it"
 * does what a plain "yes" does, and nothing to the other thing. The kinds come from the types: a new kind of change
 * without a case here does not compile, and does not pass.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/dialogue/index.js';
import { demoKitchen, livingItems } from '../../src/kitchen/index.js';
import type { Item, Kitchen } from '../../src/kitchen/model.js';
import {
  type Act,
  CHANGING_INTENTS,
  type PlaceMention,
  type Slots,
  emptyMention,
  itMention,
} from '../../src/understanding/intents.js';
import { clock, itemsIn, named, talkOn } from './decided.js';

/** The demo kitchen, with a rack that holds nothing yet. */
const demo: Kitchen = (() => {
  const kitchen = demoKitchen(clock);
  const counter = kitchen.places.get('place.counter')!;
  const rack = { ...counter, id: 'place.rack', name: 'wire rack', aliases: [] };
  return { ...kitchen, places: new Map(kitchen.places).set(rack.id, rack) };
})();
type Changing = (typeof CHANGING_INTENTS)[number];

const words = (said: string) => ({ ...emptyMention, words: said });
const place = (id: string, fit = 1): PlaceMention => {
  const { name } = demo.places.get(id)!;
  return { words: name, candidates: [{ id, fit }], pointer: null, spot: null };
};
const itemCalled = (word: string): Item => livingItems(demo).find(({ name }) => name.includes(word))!;
const markerWith = (used: boolean) => {
  const on = new Set(livingItems(demo).flatMap(({ markerId }) => markerId ?? []));
  const id = [...demo.markers.keys()].find((one) => on.has(one) === used)!;
  return { ...emptyMention, words: 'marker', candidates: [{ id, fit: 1 }] };
};

const talk = () => talkOn(demo);

/** What is asked: of a thing, its slots beside the thing; of nothing named, all slots. */
type Case =
  | { readonly of: 'item'; readonly slots: Slots; readonly subject?: string }
  | { readonly of: 'none'; readonly slots: Slots }
  /** Why no yes-or-no question is asked of it; that none is asked is checked. */
  | { readonly of: 'unasked'; readonly slots: Slots; readonly why: string };

const item = (slots: Slots = {}, subject?: string): Case => ({
  of: 'item',
  slots,
  ...(subject ? { subject } : {}),
});
const none = (slots: Slots): Case => ({ of: 'none', slots });
const unasked = (why: string, slots: Slots = {}): Case => ({ of: 'unasked', slots, why });
const day = { day: '2026-05-13' };
const person = (name: string) => ({ words: name, candidates: [] });

const cases: Readonly<Record<Changing, readonly Case[]>> = {
  'put-away': [none({ item: words('gumbo'), place: place('place.fridge.shelf2') })],
  take: [item({ amount: { value: 1, unit: 'portion' } }, 'lentil stew')],
  finish: [item({ how: 'used' }), item({ how: 'thrown out' }), item({ how: 'given away' })],
  move: [item({ place: place('place.counter') })],
  amend: [item({ dates: { opened: day } }), item({ caution: 'very hot pepper' })],
  open: [item({}, 'sauerkraut')],
  freeze: [item({ place: place('place.upright.basket1') }, 'spinach')],
  thaw: [item({ place: place('place.fridge.shelf3') }, 'salmon')],
  reheated: [item({}, 'lentil stew')],
  'put-back': [unasked('nothing of the demo is out')],
  split: [item({ number: 2 }, 'lentil stew')],
  merge: [unasked('two things are named, and it asks which where one is')],
  mark: [item({ marker: markerWith(false) }), item({ marker: markerWith(true) })],
  unmark: [item({}, 'pesto'), none({ asked: 'lost', marker: markerWith(true) })],
  'add-marker': [none({ marker: { ...emptyMention, touch: { fastening: 'ring', texture: 'rubber' } } })],
  'define-dots': [none({ dots: 6, counted: 'knot', words: 'for the neighbours' })],
  'marker-note': [none({ marker: markerWith(true), words: 'washed by hand' })],
  'build-place': [none({ placeKind: 'basket', number: 4, place: place('place.chest') })],
  'rename-place': [none({ place: place('place.pantry.bin', 0.8), words: 'onion bin' })],
  'remove-place': [none({ place: place('place.rack') })],
  'buy-add': [none({ items: [words('oats')] })],
  'buy-remove': [unasked('what stands on the list is named')],
  'buy-clear': [none({})],
  'buy-got': [none({})],
  'add-person': [none({ person: person('Sade') }), none({ person: person('Sade'), allergens: ['sesame'] })],
  'leave-note': [none({ person: person('Dele'), words: 'the soup is hers' })],
  'set-timer': [none({ duration: 600 })],
  'change-timer': [unasked('no timer runs')],
  'cancel-timer': [unasked('no timer runs')],
  'set-reminder': [none({ when: { day: '2026-05-15' }, time: '09:00', words: 'freeze the chicken' })],
  'cancel-reminder': [unasked('none is set')],
  'change-reminder': [unasked('none is set')],
  'set-household': [none({ setting: 'watts', number: 1000 })],
  'let-in': [unasked('nobody waits at the door')],
  'rename-device': [unasked('this household has no devices')],
  'remove-device': [unasked('this household has no devices')],
  undo: [unasked('nothing was done yet')],
  redo: [unasked('nothing was undone')],
  tell: [unasked('a statement is put to the cook by the deeds it comes to')],
};

const other = itemCalled('salmon');
const comesTo = ({ changes, effects }: Outcome): unknown => ({
  ops: changes.map(({ verb, ops }) => ({ verb, ops })),
  effects,
});

const ask = (intent: Changing, one: Case) => {
  const subject = one.of === 'item' ? itemCalled(one.subject ?? 'spinach') : null;
  const focus = subject && subject.id === other.id ? itemCalled('milk') : other;
  const { say } = talk();
  say('act', { intent: 'tell-about', slots: { item: named(focus) } });
  const question = say('confirm', {
    intent,
    slots: { ...one.slots, ...(subject ? { item: named(subject) } : {}) },
  });
  return { say, question, subject, focus };
};

const kinds = Object.entries(cases) as [Changing, readonly Case[]][];
const all = kinds.flatMap(([intent, of]) => of.map((one, at) => ({ intent, one, at })));

describe('every kind of change', () => {
  it('has a case', () => {
    expect(Object.keys(cases).sort()).toEqual([...CHANGING_INTENTS].sort());
  });

  it.each(all.filter(({ one }) => one.of !== 'unasked'))(
    '$intent $at: "yes, <the deed>" is the yes that was asked for',
    ({ intent, one }) => {
      const plain = ask(intent, one);
      expect(plain.question.conversation.expecting).toBe('yes-no');
      expect(plain.question.changes).toEqual([]);
      const yes = plain.say('act', { intent: 'yes', slots: {} });
      expect(yes.changes.length + yes.effects.length).toBeGreaterThan(0);
      const pointers = plain.subject ? (['it', 'that', 'this'] as const) : [null];
      for (const pointer of pointers) {
        const again = ask(intent, one);
        const slots: Slots = pointer ? { item: { ...itMention, pointer } } : {};
        const done = again.say('act', { intent, slots });
        expect(comesTo(done)).toEqual(comesTo(yes));
        if (again.subject) {
          expect(itemsIn(done)).toContain(again.subject.id);
          expect(itemsIn(done)).not.toContain(again.focus.id);
        }
      }
    },
  );

  it.each(all.filter(({ one }) => one.of === 'unasked'))(
    '$intent: nothing to say yes to',
    ({ intent, one }) => {
      const { question } = ask(intent, one);
      expect(question.conversation.expecting).not.toBe('yes-no');
      expect(question.changes).toEqual([]);
    },
  );
});

/** Offers by their phrases, as the phrase files hold them: what leads to each, and its deed said back. */
const offers: Readonly<
  Record<string, { readonly lead: Act; readonly back: Act; readonly to: string } | { readonly why: string }>
> = {
  'offer-buy': {
    lead: { intent: 'finish', slots: { item: named(itemCalled('milk')), how: 'used' } },
    back: { intent: 'buy-add', slots: { item: itMention } },
    to: itemCalled('milk').name,
  },
  'offer-throw-out': {
    lead: {
      intent: 'left-out',
      slots: { item: named(itemCalled('lentil stew')), duration: 5 * 3600 },
    },
    back: { intent: 'finish', slots: { item: itMention, how: 'thrown out' } },
    to: itemCalled('lentil stew').name,
  },
  'offer-note-out': {
    lead: {
      intent: 'left-out',
      slots: { item: named(itemCalled('lentil stew')), duration: 5 * 3600, asked: 'reported' },
    },
    back: { intent: 'left-out', slots: { item: itMention, duration: 5 * 3600 } },
    to: itemCalled('lentil stew').name,
  },
  'offer-older-date': { why: 'asks what was in it, and "yes" is no deed that could be said back' },
  'offer-begin': { why: 'begins a session' },
  'offer-parts': { why: 'begins a session' },
  'offer-markers': { why: 'begins a session' },
  'offer-declined': { why: 'the answer to a no' },
  'offer-missing': { why: 'several foods at once, none of them "it"' },
  'offer-remind': { why: 'of a plan: no thing is done anything to' },
  'offer-shop': { why: 'begins a session' },
  'offer-tell-place': { why: 'asks only' },
  'offer-undo': { why: 'of the last change, whatever it was about' },
};

describe('every offer', () => {
  it('has a case', () => {
    const phrases = readdirSync('grammars/en/phrases').flatMap((file) =>
      [...readFileSync(`grammars/en/phrases/${file}`, 'utf8').matchAll(/^(offer-[a-z-]+) =/gm)].map(
        ([, name]) => name!,
      ),
    );
    expect(Object.keys(offers).sort()).toEqual(phrases.sort());
  });

  it.each(Object.entries(offers).flatMap(([name, one]) => ('lead' in one ? [{ name, ...one }] : [])))(
    '$name: the deed said back is done to what was offered',
    ({ lead, back, to }) => {
      const offered = () => {
        const { say } = talk();
        say('act', { intent: 'tell-about', slots: { item: named(other) } });
        const asked = say('act', lead);
        expect(asked.conversation.expecting).toBe('yes-no');
        return say;
      };
      const done = offered()('act', back);
      expect(comesTo(done)).toEqual(comesTo(offered()('act', { intent: 'yes', slots: {} })));
      expect(JSON.stringify(done.changes)).toContain(to);
      expect(itemsIn(done)).not.toContain(other.id);
    },
  );
});

/** A question by its phrase: what was said before, what leads to it, and its deed said back with "it". */
interface Question {
  readonly before?: readonly Act[];
  readonly lead: Act;
  readonly heard?: 'act' | 'confirm';
  readonly back: Slots;
  /** What could hurt somebody wants a plain yes: the deed said back changes nothing, and is asked again. */
  readonly plainYes?: true;
}
const stew = named(itemCalled('lentil stew'));
const spinach = named(itemCalled('spinach'));
const reminder: Act = { intent: 'set-timer', slots: { duration: 600, words: 'rice' } };
const dele = { words: 'dele', candidates: [{ id: 'person.dele', fit: 1 }] };
const both = [named(itemCalled('lentil stew')), named(itemCalled('carrot soup'))];

/** Phrases of questions that the kinds of change above do not come to; the rest are asked there. */
const further: Readonly<Record<string, Question | { readonly why: string }>> = {
  'confirm-add-marker': {
    lead: { intent: 'add-marker', slots: { marker: { ...emptyMention, touch: { fastening: 'star' } } } },
    back: {},
  },
  'confirm-at-risk': { lead: { intent: 'add-person', slots: { person: dele, asked: 'risk' } }, back: {} },
  'confirm-no-allergen': {
    lead: { intent: 'add-person', slots: { person: dele, allergens: ['peanut stew'] } },
    heard: 'act',
    back: { person: dele, allergens: ['peanut stew'] },
    plainYes: true,
  },
  'confirm-person-eats': { lead: { intent: 'add-person', slots: { person: dele, diet: 'vegan' } }, back: {} },
  'confirm-person-no-longer': {
    lead: { intent: 'add-person', slots: { person: dele, allergens: ['peanuts'], negated: true } },
    heard: 'act',
    back: { person: dele, allergens: ['peanuts'], negated: true },
    plainYes: true,
  },
  'confirm-left': {
    lead: { intent: 'take', slots: { item: stew, left: { value: 1, unit: 'portion' } } },
    back: { left: { value: 1, unit: 'portion' } },
  },
  'confirm-finished-all': {
    lead: { intent: 'finish', slots: { items: both, how: 'used' } },
    back: { how: 'used' },
  },
  'confirm-thrown-out-all': {
    lead: { intent: 'finish', slots: { items: both, how: 'thrown out' } },
    back: { how: 'thrown out' },
  },
  'confirm-given-away-all': {
    lead: { intent: 'finish', slots: { items: both, how: 'given away' } },
    back: { how: 'given away' },
  },
  'confirm-freeze-past': {
    lead: {
      intent: 'freeze',
      slots: { item: named(itemCalled('sliced ham')), place: place('place.upright.basket1') },
    },
    heard: 'act',
    back: {},
  },
  'confirm-dots-replace': {
    before: [{ intent: 'define-dots', slots: { dots: 4, counted: 'knot', words: 'peanuts' } }],
    lead: { intent: 'define-dots', slots: { dots: 4, counted: 'knot', words: 'for guests' } },
    heard: 'act',
    back: { dots: 4, counted: 'knot', words: 'for guests' },
    plainYes: true,
  },
  'confirm-dots-none': {
    before: [{ intent: 'define-dots', slots: { dots: 5, counted: 'knot', words: 'for guests' } }],
    lead: { intent: 'define-dots', slots: { asked: 'none', dots: 5, counted: 'knot' } },
    heard: 'act',
    back: { asked: 'none', dots: 5, counted: 'knot' },
    plainYes: true,
  },
  'confirm-unmark-other': {
    lead: {
      intent: 'unmark',
      slots: {
        item: named(itemCalled('lentil stew')),
        marker: { ...emptyMention, words: 'rubber ring', touch: { fastening: 'ring', texture: 'rubber' } },
      },
    },
    heard: 'act',
    back: {},
  },
  'confirm-unbuy': {
    before: [{ intent: 'buy-add', slots: { items: [words('oats')] } }],
    lead: { intent: 'buy-remove', slots: { items: [words('oats')] } },
    back: {},
  },
  'confirm-cancel-timer': { before: [reminder], lead: { intent: 'cancel-timer', slots: {} }, back: {} },
  'confirm-put-back': {
    before: [{ intent: 'left-out', slots: { item: spinach, duration: 600 } }],
    lead: { intent: 'put-back', slots: { item: spinach } },
    back: {},
  },
  'confirm-another': {
    why: 'whether it is more of the same, and no is an answer too: tests/conversations/talks/102-said-twice.talk',
  },
  'confirm-second': {
    why: 'whether it is more of what is on record, and no is an answer too: tests/dialogue/put-away-second.test.ts',
  },
  'confirm-sharing': { why: 'of how lessons went; no thing is done anything to' },
  'confirm-out': {
    why: 'that a food stood out is noted also when heard in doubt, which errs on the safe side',
  },
  'confirm-free': { why: 'of what is recorded as containing it, after confirm-said-free had its plain yes' },
  'confirm-said-free': {
    lead: { intent: 'amend', slots: { item: stew, allergens: ['sesame'], free: true } },
    heard: 'act',
    back: { allergens: ['sesame'], free: true },
    plainYes: true,
  },
  'near-one': {
    lead: { intent: 'finish', slots: { item: { ...stew, maker: 'amara' }, how: 'used' } },
    heard: 'act',
    back: { how: 'used' },
  },
  'near-person': {
    lead: {
      intent: 'add-person',
      slots: {
        person: { words: 'delly', candidates: [{ id: 'person.dele', fit: 0.7 }] },
        allergens: ['sesame'],
      },
    },
    heard: 'act',
    back: { person: dele, allergens: ['sesame'] },
  },
  'near-several': { why: 'asks which, and no yes answers it' },
  'confirm-build-parts': { why: 'the parts of several places in one breath, none of them "it"' },
  'confirm-merge': { why: 'two things, and which is asked first: see its talk, 33-split-merge' },
  'confirm-merge-different': { why: 'as confirm-merge' },
  'confirm-drop-note': { why: 'of a message; no thing is done anything to' },
  'confirm-practice': { why: 'begins practice; no thing is done anything to' },
  'confirm-let-in': { why: 'of a device: tests/turn/devices.test.ts' },
  'confirm-rename-device': { why: 'of a device: tests/turn/devices.test.ts' },
  'confirm-remove-device': { why: 'of a device: tests/turn/devices.test.ts' },
  'confirm-remove-device-here': { why: 'of a device: tests/turn/devices.test.ts' },
};

const phrasesIn = (of: unknown): readonly string[] => [
  ...new Set(
    [...JSON.stringify(of).matchAll(/"phrase":"((?:confirm|near)-[a-z-]+)"/g)].map(([, name]) => name!),
  ),
];

describe('every question by its phrase', () => {
  it('has a case', () => {
    const written = readdirSync('grammars/en/phrases').flatMap((file) =>
      [
        ...readFileSync(`grammars/en/phrases/${file}`, 'utf8').matchAll(/^((?:confirm|near)-[a-z-]+) =/gm),
      ].map(([, name]) => name!),
    );
    const byKind = all.flatMap(({ intent, one }) => phrasesIn(ask(intent, one).question));
    expect([...new Set([...byKind, ...Object.keys(further)])].sort()).toEqual([...written].sort());
  });

  it.each(Object.entries(further).flatMap(([name, one]) => ('lead' in one ? [{ name, ...one }] : [])))(
    '$name: the deed said back does what a yes does, and nothing to what was in focus',
    ({ name, before = [], lead, heard: how = 'confirm', back, plainYes }) => {
      const asked = () => {
        const { say } = talk();
        for (const act of before) say('act', act);
        say('act', { intent: 'tell-about', slots: { item: named(other) } });
        const question = say(how, lead);
        expect(phrasesIn(question)).toContain(name);
        expect(question.changes).toEqual([]);
        return say;
      };
      const yes = asked()('act', { intent: 'yes', slots: {} });
      expect(yes.changes.length + yes.effects.length).toBeGreaterThan(0);
      const ofThing = lead.slots.item !== undefined || lead.slots.items !== undefined;
      const pointer = lead.slots.items ? ('them' as const) : ('it' as const);
      const slots: Slots = ofThing ? { ...back, item: { ...itMention, pointer } } : back;
      const done = asked()('act', { intent: lead.intent, slots });
      expect(comesTo(done)).toEqual(plainYes ? { ops: [], effects: [] } : comesTo(yes));
      expect(itemsIn(done)).not.toContain(other.id);
    },
  );
});
