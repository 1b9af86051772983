/**
 * What a sentence says beside its request and its things: which of several, how much of an answer, which half of the
 * day. Each is a list of `grammars/<language>/qualifiers.json`, and is given to dialogue by its name alone.
 */
export const QUALIFIERS = [
  // Which of several is meant.
  'older', // "the old tub of chilli"
  'newer',
  'by-age', // old or new, of whatever
  'all', // "all the chilli"
  'one', // "the one on the top shelf"
  'loose', // "just in the drawer": in no part of it
  'just', // begins so: "just in the freezer"
  'of-those', // "which ones are the oldest"
  'oldest',
  'either', // "either one", "whichever": no one of several rather than another
  'hers', // the, my, this: of what is here, and not of such food in general
  'definite', // "the" anywhere
  'more', // "more milk"
  'another',
  'come-new', // "more", "a fresh one", "I bought": not what was here before
  'new', // "a new sticker"
  'as-well', // "the carrots too"
  'other-freezer', // "the other freezer"
  'other-fridge',
  'other-shelf',
  'other-drawer',
  'other-basket',
  'other-cupboard',
  // What is asked.
  'whether', // "do I have any …"
  'has-been', // "has it been opened"
  'set-asked', // "anything spicy", "which are vegan"
  'about', // "what about butter"
  'goes-on', // "and the pickle", "what about …": no bare answer
  'how-long-keeps',
  'how-long-takes',
  'clock-named', // "how long is left on the timer"
  'heat-alone',
  'in-celsius',
  'in-fahrenheit', // "what was the temperature again", and nothing else
  'amount', // "how much is left"
  'past', // "what's old", "what must go"
  'to-use', // "what should I use"
  'full', // "which shelf is full"
  'whose-word', // "who says so"
  // How much of an answer.
  'everything',
  'details',
  'short',
  'usual',
  'tell',
  'go-on-elsewhere', // "where were we with the check"
  'that-is-all',
  // What was done with it.
  'throw',
  'got', // "I got the vinegar"
  'called', // "a shelf called bread"
  'usual-place', // "the same place as last time"
  'changed',
  'practise',
  'gone', // "it isn't there"
  'there',
  // Which question of the set-up is gone to.
  'question-wholes',
  'question-eaters',
  'question-manner',
  'question-parts',
  'question-markers',
  'question-dots',
  'question-watts',
  'question-region',
  'question-summary',
  // When.
  'morning',
  'afternoon',
  'evening',
  'night',
  'this-day', // "for tonight", "today"
  'by-day', // from noon, after lunch
  'half-of-day', // "five in the morning", "since lunch", "17:00": no other half is meant
  'meal', // "since breakfast"
  'evening-meal', // "for supper": an hour said with it is of the evening
  'morning-meal',
  'length-of-time', // "three hours", and not three o'clock
  // Which of its dates a day is.
  'date-useBy',
  'date-bestBefore',
  'date-bought',
  'date-made',
  'date-opened',
  'date-frozen',
  // How much was said.
  'few-words',
] as const;
export type Qualifier = (typeof QUALIFIERS)[number];
