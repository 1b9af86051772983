/**
 * What an utterance can mean: the contract between understanding (which fills it)
 * and dialogue (which acts on it). Grammar files name these intents in their tags.
 */
import type { Amount, Share } from '../terms/amount.js';
import type { Mention, PersonMention, PlaceMention, SaidDate } from '../protocol/mentions.js';
import type { SaidEater, SaidManner, SaidWhole } from '../protocol/first-day.js';
import type { Beside } from '../protocol/beside.js';
import type { Qualifier } from '../protocol/qualifiers.js';
import type { Quote } from '../terms/quote.js';
import type { Edit, Query } from '../protocol/query.js';
import type { GuidanceFacts } from './guidance/facts.js';
import type { Touch } from '../terms/touch.js';

export type { SaidEater, SaidManner, SaidWhole } from '../protocol/first-day.js';
export type { Candidate, Mention, PlaceMention, Pointer, SaidDate } from '../protocol/mentions.js';

/** Intents that, carried out, change the kitchen. */
export const CHANGING_INTENTS = [
  'put-away', // "put the lentil stew on the second shelf", "I made eight tubs of chilli", "I bought milk"
  'take', // "took two out", "used half the milk", "about half left"
  'finish', // "finish the rice", "the milk is gone", "throw away the cream"
  'move', // "move the soup to the freezer", "the milk is on the door now"
  'amend', // a fact about an item: dates, diets, allergens, maker, owner, amount, name, reheating, note
  'open', // "I opened the sauerkraut today"
  'freeze', // "freeze the chicken", "I froze the stew yesterday"
  'thaw', // "I took the turkey out to thaw"
  'reheated', // "I reheated the soup"
  'put-back', // "the soup is back in the fridge"
  'split', // "split the stew into three tubs"
  'merge', // "put the two soups together"
  'mark', // "put the wooden bead on the pesto"
  'unmark', // "take the bead off the pesto"
  'add-marker', // "I have a new rubber ring"
  'define-dots', // "one knot means for Auntie"
  'marker-note', // "the glass bead is washed by hand"
  'build-place', // "the chest freezer has three baskets"
  'rename-place', // "call the top basket the bread basket"
  'remove-place',
  'buy-add', // "put oats on the list"
  'buy-remove', // "take bread off the list"
  'buy-clear',
  'buy-got', // "got everything but the eggs"
  'add-person', // "Dele eats here", "Dele is allergic to peanuts"
  'leave-note', // "tell Dele the soup is hers"
  'set-timer', // "timer for ten minutes", "rice timer twelve minutes"
  'change-timer', // "add a minute to the rice timer"
  'cancel-timer',
  'set-reminder', // "remind me tomorrow to freeze the chicken"
  'cancel-reminder',
  'change-reminder', // "push the dentist back to half ten"
  'set-household', // "my microwave is eight hundred watts", "use UK guidance", "summary at eight"
  'let-in', // "let in the device with code …": devices are no records of the kitchen, but losing one is a change
  'rename-device', // "call the kitchen speaker the window speaker"
  'remove-device', // "remove Dele's phone"
  'undo',
  'redo',
  'tell', // one or more statements, each with its roles: "two pints of milk in the door and the eggs are gone"
] as const;

/** Intents that only ask. */
export const ASKING_INTENTS = [
  'find', // by food, place, marker, diet, maker, any mixture
  'count', // "how many tubs of chilli are left"
  'whats-this', // "what's this", "what's the rough one"
  'tell-about', // "tell me about the stew": everything recorded
  'how-old',
  'item-date', // "when does the yogurt expire", "say the date again"
  'keeps', // "how long does chicken keep in the fridge", "is the rice still good"
  'use-first', // "what's old", "what should I use this week", "what goes bad tomorrow"
  'no-date',
  'reheat', // "how do I reheat the stew", "how many minutes at eight hundred watts"
  'thaw-plan', // "I want the turkey for Thursday dinner"
  'cook-temperature', // "what temperature for chicken", "how long do I cook chicken"
  'guidance', // "how long can cooked rice stay out", with all that was told: slots.guidance
  'urgent', // "my throat is swelling": slots.asked emergency, ill, medicine, illness
  'danger', // "this tin is bulging": slots.asked container, nameless, dented, mould, smell, sniff, taste, allergy
  'left-out', // "the soup has been out since noon"
  'power-cut', // "the power went out at six"
  'power-back',
  'who-did', // "what did Peter put in", "who finished the hummus"
  'what-changed', // "what changed since yesterday"
  'contains', // "does the chilli have peanuts", "anything with peanuts"
  'can-eat', // "what can Dele eat"
  'who-allergic',
  'how-to-reach', // "how do I get to the sauerkraut"
  'place-state', // "what place is empty", "is the top shelf full"
  'marker-care',
  'markers', // "which markers are spare", "what do two knots mean"
  'places', // "what places do I have"
  'buy-read', // "what's on the list", "is milk on the list"
  'timers', // "how long left"
  'reminders',
  'notes', // "any messages"
  'summary', // "read me the summary"
  'lesson-report', // "how did we do"
  'household', // "what guidance do you use"
  'people',
  'ask', // a question put together from its parts: see protocol/query.ts
] as const;

/** Longer pieces of talk that one sentence starts. */
export const STARTING_INTENTS = [
  'start-shop', // "I'm putting away the shopping"
  'start-count', // "let's check the freezer"
  'start-setup', // "help me set up"
  'start-practice', // "let me practise"
  'share-lessons', // "my teacher may see how I did", "stop sharing my lessons"
  'start-lesson', // "start a lesson", "lesson two", "which lessons are there"
  'end-session', // "that's everything", "finish the count", "stop practising"
] as const;

/** Intents about the talk itself. */
export const CONTROL_INTENTS = [
  'yes',
  'no',
  'maybe',
  'cancel', // never mind: drop the open question or procedure
  'stop', // be quiet
  'wait', // "wait a moment": pause the procedure
  'continue', // "go on", "carry on", "more"
  'repeat',
  'next',
  'back',
  'start-over',
  'skip-to', // guided steps
  'steps-left', // "how many are left", "what was the third step"
  'done', // "done", "ready": the step is finished
  'ask-step', // of the steps being followed: "how long", "how do I know", "which step", "is it done"
  'shorter',
  'longer', // slots.lasting tells this answer from a setting
  'faster',
  'slower',
  'louder',
  'quieter',
  'whisper',
  'spell',
  'just-names',
  'how-many',
  'details',
  'what-heard',
  'why', // "what did you hear", "why", "who says so"
  'help', // "what can I ask you"
  'hint', // in a lesson: "hint", "what was I to do", "skip this one"
  'thanks',
  'greeting',
  'goodbye',
  'choose', // the small one, the second, the other, all of them, neither
  'follow-up', // "what about the milk", "and the butter": the same again of something else
  'correct', // "no, the top shelf", "no, harissa, h a r i s s a", "I meant the other one"
  'answer', // a bare answer to the open question
] as const;

export const INTENTS = [
  ...CHANGING_INTENTS,
  ...ASKING_INTENTS,
  ...STARTING_INTENTS,
  ...CONTROL_INTENTS,
] as const;
export type Intent = (typeof INTENTS)[number];

/** Readings of a name and nothing else. */
export const BARE_INTENTS: ReadonlySet<Intent> = new Set<Intent>(['choose', 'answer', 'follow-up']);

/** Changes that lose something if the hearing was wrong: these need more confidence, or a yes. */
export const DESTRUCTIVE_INTENTS: ReadonlySet<Intent> = new Set<Intent>([
  'finish',
  'buy-clear',
  'buy-remove',
  'remove-place',
  'merge',
  'cancel-timer',
  'cancel-reminder',
  'remove-device',
]);

/** Nothing said of it: what a mention made by the program starts from. */
export const emptyMention: Mention = {
  words: null,
  candidates: [],
  pointer: null,
  touch: null,
  ordinal: null,
  maker: null,
  diet: null,
  at: null,
};

/** "It": the one thing just spoken of. */
export const itMention: Mention = { ...emptyMention, pointer: 'it' };

export interface SaidPreparation {
  readonly method: string | null;
  readonly minutes: number | null;
  readonly watts: number | null;
  readonly standMinutes: number | null;
  readonly degrees: number | null;
  readonly scale: 'fahrenheit' | 'celsius' | null;
  /** As said, when it is more than figures. */
  readonly words: string | null;
  /** One act a step, where they were told one by one. */
  readonly steps?: readonly string[];
  /** One step put in, put in the place of another, or taken out; `at` counts from one, or from the last as -1. */
  readonly edit?: { readonly kind: 'add' | 'put' | 'drop'; readonly at: number };
}

/** What was done, or that a fact is told. */
export type Deed =
  | 'stored'
  | 'made'
  | 'bought'
  | 'given-in'
  | 'opened'
  | 'froze'
  | 'thawing'
  | 'moved'
  | 'took'
  | 'finished'
  | 'threw'
  | 'gave'
  | 'reheated'
  | 'put-back'
  | 'listed'
  | 'unlisted'
  /** It stays as it is: nothing is to be done to it. */
  | 'kept'
  /** Nothing was done: something is so. */
  | 'fact';

/** A part of it, and where that part is: "the other five are in the big freezer". */
export interface SaidPart {
  readonly amount: Amount | null;
  /** "Half of them", or 'rest' for all that is left. */
  readonly share: number | 'rest' | null;
  readonly place: PlaceMention;
}

/**
 * An event or a fact with its roles, as it was told. One sentence may hold several. What is left out was
 * not said: a partial statement is about what was last spoken of.
 */
export interface Statement {
  readonly deed: Deed;
  /** Null: what was last spoken of or done. */
  readonly thing: Mention | null;
  /** "The", "my", "it", rather than "a", "some", "two". */
  readonly definite: boolean;
  /** "Another", "new", "more": not one that is here. */
  readonly fresh: boolean;
  readonly amount?: Amount;
  readonly share?: Share;
  readonly place?: PlaceMention;
  /** "Up to the top shelf": it went there from elsewhere. */
  readonly moved?: boolean;
  readonly from?: PlaceMention;
  readonly parts?: readonly SaidPart[];
  readonly dates?: NonNullable<Slots['dates']>;
  /** A day without a word that says what was on it. */
  readonly when?: SaidDate;
  /** As said, or 'me'. */
  readonly maker?: string;
  readonly owner?: PersonMention;
  readonly marker?: Mention;
  readonly container?: Touch;
  readonly contains?: readonly string[];
  readonly freeFrom?: readonly string[];
  /** What is in it that is no allergen of the tables. */
  readonly ingredients?: readonly string[];
  readonly diets?: readonly string[];
  /** "Very peppery": what whoever eats it should know. */
  readonly cautions?: readonly string[];
  readonly notes?: readonly string[];
  /** Who did it, as said; whoever speaks where it is left out. */
  readonly by?: string;
  /** "Everything in the drawer except the zucchini": what it is not said of. */
  readonly except?: readonly Mention[];
  /** "Call it stewed plums": another name for it. */
  readonly name?: string;
  /** "So there's two left". */
  readonly left?: Amount | Share;
  /** "Eight altogether": over every place. */
  readonly total?: Amount;
  /** Only said to be somewhere: nobody said that it was put there. */
  readonly stands?: true;
  /** "There's no marker on it". */
  readonly unmarked?: true;
  /** "The eggs I just put away": the lot that came last. */
  readonly newest?: true;
  /** "No, …": it puts right what was last done. */
  readonly corrects: boolean;
}

/** One line of the list to buy, as it was said. */
export interface SaidLine {
  readonly item: Mention;
  readonly amount?: Amount;
  /** "Two more": so many beside those that stand there. */
  readonly more?: true;
  /** "From the fish market". */
  readonly shop?: string;
  /** "In juice", "for the cake", as said. */
  readonly note?: string;
  readonly person?: PersonMention;
}

/** What was found of one thing, or of the one asked about, while a place is checked. */
export interface Finding {
  /** Null: what was asked about. */
  readonly thing: Mention | null;
  /** Gone: used up. Missing: not found, and nobody said why. Null where only a figure or a place was told. */
  readonly seen: 'there' | 'gone' | 'missing' | 'unsure' | null;
  /** How much of it there is. */
  readonly amount?: Amount;
  /** Where it is instead. */
  readonly place?: PlaceMention;
}

/** The parts of what was said. Which can be set depends on the intent. */
export interface Slots {
  /** Who did it, as said, where it was not whoever speaks. */
  readonly by?: string;
  /** Only said to be somewhere, which one that is on record may be. */
  readonly stands?: true;
  readonly item?: Mention;
  /** Put away as it was before: another batch, more containers of one batch, or its own container filled anew. */
  readonly again?: 'new' | 'copy' | 'refill';
  /** What was not meant: "not the sorghum, the other one". */
  readonly not?: Mention;
  /** More than one thing in one sentence: "the rice and the black beans". */
  readonly items?: readonly Mention[];
  /** What guidance is asked of is nothing to eat. */
  readonly noFood?: boolean;
  readonly place?: PlaceMention;
  /** Where it was, for moves that say both. */
  readonly from?: PlaceMention;
  /** What a part just named is part of: "in the fridge", of the top shelf. */
  readonly within?: PlaceMention;
  /** How a batch is shared out: "two on the top shelf, six in the chest freezer". */
  readonly shares?: readonly { readonly amount: Amount; readonly place: PlaceMention }[];
  /** A marker, as felt. */
  readonly marker?: Mention;
  /** The container the food is in, as felt. */
  readonly container?: Touch;
  readonly amount?: Amount;
  /** What is left after taking: "about half left". */
  readonly left?: Amount | Share;
  readonly share?: Share;
  readonly dates?: Readonly<
    Partial<
      Record<
        'made' | 'bought' | 'opened' | 'frozen' | 'thawed' | 'bestBefore' | 'useBy',
        SaidDate | 'unknown'
      >
    >
  >;
  /** A date without a kind: a window to ask about, or a bare answer. */
  readonly when?: SaidDate | 'unknown';
  /** Time of day, household wall time `HH:MM`, where one was said. */
  readonly time?: string;
  /** And the end of it, where both were said: "from two till half past seven". */
  readonly until?: string;
  /** Seconds. */
  readonly duration?: number;
  /** No figure, but longer than any that is allowed: "overnight", "all day". */
  readonly overnight?: true;
  readonly person?: PersonMention;
  readonly maker?: string;
  readonly diet?: string;
  readonly allergens?: readonly string[];
  /** "free from peanuts", "no peanuts in it". */
  readonly free?: boolean;
  readonly caution?: string;
  readonly preparation?: SaidPreparation;
  readonly method?: string;
  readonly from_state?: 'fridge' | 'freezer' | 'room' | 'pantry';
  readonly how?: 'used' | 'thrown out' | 'given away';
  readonly number?: number;
  readonly ordinal?: number;
  readonly dots?: number;
  /** What is counted: "knot", "ridge", "notch", "dot". */
  readonly counted?: string;
  /** Free words: a dot's meaning, a note, a new name, a label, a section. */
  readonly words?: string;
  /** The free words as they were written where they were heard: "for Auntie". */
  readonly written?: string;
  /** Which device, as said: "dele's phone". */
  readonly device?: string;
  /** Digits said one by one, joined. */
  readonly code?: string;
  /** Which of the steps being followed says to put it in there, counted from one. */
  readonly into?: number;
  /** Letters said one by one, joined. */
  readonly spelled?: string;
  /** Kind of place to build: "shelf", "basket". */
  readonly placeKind?: string;
  readonly placeNames?: readonly string[];
  /** More parts told in the same breath: "… four shelves, two drawers and a door". */
  readonly alsoParts?: readonly { readonly kind: string; readonly count: number }[];
  /** Whose guidance. */
  readonly region?: 'uk' | 'us';
  /** Measures in grams and litres. */
  readonly metric?: boolean;
  /** What a reminder says before and after the name of the thing it points at. */
  readonly aroundThing?: readonly [string, string];
  /** For a setting: "length", "rate", "region", "watts", "summary", "quiet". */
  readonly setting?: string;
  readonly lasting?: boolean;
  readonly negated?: boolean;
  /** Said with a report that the step is done: "it's browned, is that it?" */
  readonly reported?: boolean;
  /** Door shut or open, freezer full or half, for power cuts. */
  readonly doors?: 'shut' | 'open';
  /** The freezer's, where it was otherwise than the fridge's. */
  readonly freezerDoors?: 'shut' | 'open';
  /** The duration is that of the whole cut, from its beginning to its end. */
  readonly inAll?: boolean;
  readonly fullness?: 'full' | 'half';
  readonly pounds?: number;
  readonly degrees?: { readonly value: number; readonly scale: 'fahrenheit' | 'celsius' | null };
  /** What to tell: "when was it", "who made it": "made" | "frozen" | "useBy" | ... */
  readonly asked?: string;
  /** What was done, in a question about when: "what did I freeze in April". */
  readonly deed?: string;
  /** What keeps food, as told on the first day. */
  readonly wholes?: readonly SaidWhole[];
  /** Who eats here, as told on the first day. */
  readonly eaters?: readonly SaidEater[];
  /** How she likes to be talked to. */
  readonly manner?: SaidManner;
  /** A question of guidance, with every fact told with it. */
  readonly guidance?: GuidanceFacts;
  /** What puts somebody at higher risk: "pregnant", "older", "weakened", "infant". */
  readonly risks?: readonly string[];
  /** How somebody's food is to be, in the words it was told in. */
  readonly needs?: readonly string[];
  /** The day somebody comes. */
  readonly visit?: SaidDate;
  readonly reason?: 'stopword' | 'smell' | 'mould' | null;
  /** What else was told of what is put away: kept once it is on record, whatever is asked before. */
  readonly besides?: Statement;
  /** What was told, in the order it was said. */
  readonly statements?: readonly Statement[];
  /** Lines of the list to buy, each with what was said of it. */
  readonly lines?: readonly SaidLine[];
  /** Only if there is less of that here, or none where no amount is said: "if we have fewer than two bags". */
  readonly ifShort?: { readonly item: Mention; readonly below: Amount | null };
  /** What was found while a place is checked, in the order it was said. */
  readonly findings?: readonly Finding[];
  /** Words that say something and that no part of the meaning took. */
  readonly unused?: readonly string[];
  /** With `ask`: a whole question … */
  readonly query?: Query;
  /** … or a change to the question before it. */
  readonly edit?: Edit;
}

/** What could be made out of a sentence that made no sense as a whole. */
export interface Caught {
  readonly kind: 'item' | 'place' | 'verb';
  /** The record named; null for a verb. */
  readonly id: string | null;
  /** As said. */
  readonly words: string;
}

/** One thing meant. */
export interface Act {
  readonly intent: Intent;
  readonly slots: Slots;
}

/** One reading of what was heard. Compound sentences hold several acts, in order. */
export interface Reading {
  readonly acts: readonly Act[];
  /** 0 to 1, calibrated: of readings at 0.8, four in five are right. */
  readonly confidence: number;
  /** Put together by a frame that knows by its words what it is about: no other way of reading stands against it. */
  readonly framed?: true;
  /** And it accounts for every word: nothing else was said. */
  readonly whole?: true;
  /** Known by a phrase, wherever it stood: what else was said may be another matter. */
  readonly byPhrase?: true;
  /** All that was said, read as what the check or the set-up that is going on asks for. */
  readonly agenda?: true;
  /** A length of time was said, by its unit: see qualifiers.ts. */
  readonly tellsLength?: true;
  /** What the confidence was reckoned from; absent where cue words alone spoke. See confidence.ts. */
  readonly evidence?: { readonly score: number; readonly part: number; readonly mended: boolean };
}

/** A reading with the words it is of. */
export interface Interpretation extends Reading {
  /** The hypothesis it came from, as heard, and as normalised for parsing. */
  readonly heard: string;
  readonly normalised: string;
}

/** How a move is meant: it gates what may be done, whatever the words are. */
export type Mood = 'told' | 'asked' | 'wished' | 'ordered' | 'supposed' | 'denied' | 'reported' | 'doubted';

/** One way to take the whole utterance. */
export interface Proposal {
  readonly acts: readonly Act[];
  readonly mood: Mood;
  /** Words that carry some part of the meaning, by index. */
  readonly used: ReadonlySet<number>;
  /** Words that say something and that no part of the meaning took, by index. */
  readonly left: readonly number[];
  /** Natural logarithm, at most 0: how likely it is that this was meant. */
  readonly score: number;
  /** Who proposed it: the name of the reader's file. */
  readonly by: string;
}

/** A question put together from its parts: see questions.ts. */
export interface AskProposal extends Proposal {
  /** It names something of its own: a thing, a place, a feel. */
  readonly ownSubject: boolean;
  /** Begins or ends as only a question does. */
  readonly outright: boolean;
  /** It names a thing or place of this kitchen for certain. */
  readonly hers: boolean;
  /** Nothing but pieces that could follow a question: "and in the garage", "the other one". */
  readonly fragment: boolean;
  /** It holds more of what was named than the reading beside it: see holds-more.ts. */
  readonly holdsMore?: boolean;
}

/** What was made of what was said, whoever reads it. */
interface Heeded {
  /** Confidence of the best less the next that means something else; 1 when alone. */
  readonly margin: number;
  /** What to do with it, by the thresholds in `thresholds.ts`. */
  readonly verdict: 'act' | 'confirm' | 'ask-again' | 'out-of-scope' | 'nothing-heard';
  /** The speaker was unsure: "I think the milk is gone". What would lose something is asked first. */
  readonly hedged?: boolean;
  /** The recogniser's guesses do not agree on what would be lost: it is asked first. */
  readonly disputed?: boolean;
  /** A question put together from its parts, of the best guess; see moves/questions.ts. */
  readonly question?: AskProposal;
  /** With `ask-again`: it was longer than is read; see too-long.ts. */
  readonly tooLong?: boolean;
  /** With `ask-again`: what was made out, in the order it was said. */
  readonly caught?: readonly Caught[];
  /** The language it was heard in. */
  readonly locale?: string;
  /** What all of it says beside its requests and things; see qualifiers.ts. */
  readonly qualifiers?: readonly Qualifier[];
  /** What was going on was left for this: no question of before waits any longer. See moves/turning-away.ts. */
  readonly leaves?: boolean;
}

/** A yes or no to the open question with something after it: see moves/settling.ts. */
interface Settling<Rest> {
  readonly intent: 'yes' | 'no';
  /** A pause or a joining word stood between. */
  readonly parted: boolean;
  /** What was said after it, heard by itself. */
  readonly rest: Rest;
  /** Where it says nothing but parts of what was asked about. */
  readonly narrows?: { readonly not: boolean; readonly things: readonly Mention[]; readonly slots: Slots };
}

/** With the words: for this room and for whoever tells what was heard. */
export interface Understanding extends Heeded {
  /** Best first; empty when nothing fits. */
  readonly readings: readonly Interpretation[];
  /** Pieces of it that tell something and that nothing above holds; see account.ts. */
  readonly left?: readonly string[];
  /** What was heard without what says nothing around it, where that made an answer of it. */
  readonly said?: string;
  /** With the words after the yes or no. */
  readonly settles?: Settling<Understanding> & { readonly said: string };
}

/** As dialogue is given it: what it comes to, and no words but to say them back. See given.ts. */
export interface Understood extends Heeded {
  /** Best first; empty when nothing fits. */
  readonly readings: readonly (Reading & {
    /** Of which of the recogniser's guesses, counted from nought. */
    readonly guess?: number;
  })[];
  /** Pieces of it that tell something and that nothing above holds. */
  readonly left?: Quote;
  readonly settles?: Settling<Understood>;
  /** Absent where nothing was said. */
  readonly beside?: Beside;
}

/** One guess of a recogniser. */
export interface Hypothesis {
  readonly text: string;
  /** 0 to 1; recognisers without one leave it out. */
  readonly confidence?: number | undefined;
}

/** What the dialogue is waiting for, so that a bare answer can be understood. */
export type Expectation =
  | 'anything'
  | 'yes-no'
  /** A yes or no, or how things stand, was asked of a power cut. */
  | 'allergen' // which of the allergens a word may mean
  | 'outage-state'
  /** Nothing was asked, but a power cut is talked of: how fridge and freezer stand would be about that. */
  | 'outage'
  | 'item'
  | 'place'
  | 'amount'
  | 'date'
  | 'marker'
  | 'person'
  | 'choice'
  | 'words'
  /** What a food or a thing to buy is called. */
  | 'name'
  | 'step'
  | 'method'
  | 'time'
  | 'spelling'
  | 'code'
  | 'count-answer'
  /** The questions of the first day: what keeps food, who eats here, how to talk. */
  | 'wholes'
  | 'eaters'
  | 'manner'
  /** Nothing was asked, but a bare place or date would be about what was just told. */
  | 'detail'
  /** As `detail`, of a reminder or a timer set just now. */
  | 'day-or-hour'
  | 'length';

/** What understanding needs besides the words. */
export interface HearingContext {
  readonly now: string;
  readonly timeZone: string;
  readonly locale: string;
  readonly expecting: Expectation;
  /** Steps being followed, when talk of them may be meant. */
  readonly steps?: StepsAtHand | null;
  /** A place is being checked against the record: what is said of things may be about that. */
  readonly checking?: boolean;
  /** She stands before that place and tells what is there: a food named with no place is in it. */
  readonly standing?: string | null;
  /** How dishes here are got ready, as somebody told it: what is asked of one may be about that. Made when asked for. */
  readonly dishes?: () => readonly DishSteps[];
  /** Timers and reminders that are running: what they are called is a name. */
  readonly clocks?: readonly ClockAtHand[];
  /** What was done in the turn before: it may be put right, taken back or added to. */
  readonly last?: LastDone | null;
  /** What the answer before was to. */
  readonly answered?: Answered | null;
  /** The list to buy, and whether the talk is of it. */
  readonly list?: ListAtHand | null;
  /** The turn before told of food that is here. */
  readonly told?: boolean;
  /** It goes on with what was said before in the same turn: a role alone is of that. */
  readonly goesOn?: boolean;
  /** What the steps being followed may be called, whether or not talk of them may be meant. */
  readonly stepNames?: readonly StepCalled[];
  /** What marks mean in this household, and the diets its food is marked with. */
  readonly meanings?: readonly string[];
  /** What the answer before was about besides food: "can it be washed" is asked of the marker. */
  readonly talkedOf?: TalkedOf | null;
}

/** One marker; markers at large; what a count on them means; a place, its parts and how full it is. */
export type TalkedOf = 'marker' | 'markers' | 'meaning' | 'place' | 'felt';

/** A step by its code, and as the cook told it. */
export interface StepCalled {
  readonly code: string;
  readonly words: string | null;
}

/** The change made last, by what the next sentence may say of it. */
export interface LastDone {
  readonly intent: Intent;
  /** How it went, of what is gone. */
  readonly how: Slots['how'] | null;
  /** What it was done to, by name. */
  readonly names: readonly string[];
  /** What the place it ended up in is called by its kind: "shelf", so that "the bottom one" is one. */
  readonly part: string | null;
}

/** The list to buy, for whoever hears talk of it. */
export interface ListAtHand {
  /** What its lines are called. */
  readonly lines: readonly string[];
  /** The sections they stand under. */
  readonly sections: readonly string[];
  /** The answer before was of the list. */
  readonly talk: boolean;
  /** What the talk before was about, whether or not it stands on the list. */
  readonly about: readonly string[];
}

/** A timer that runs or a reminder that is to come. */
export interface ClockAtHand {
  readonly id?: string;
  readonly kind: 'timer' | 'reminder';
  readonly label: string;
  /** It stands still. */
  readonly held?: true;
}

/** What the answer before was to. */
export interface Answered {
  readonly intent: Intent;
  /** Of a question about the household, which setting. */
  readonly setting: string | null;
  /** Of a question of guidance or of how long something keeps, what was asked and told, and of which food. */
  readonly guidance?: Slots;
}

/** One way of getting a dish ready that somebody told, as it is spoken. */
export interface DishSteps {
  readonly dish: { readonly id: string; readonly name: string };
  readonly method: string;
  readonly texts: readonly string[];
  /** It is what was last spoken of. */
  readonly spokenOf: boolean;
}

/** Guided steps, as they are spoken. */
export interface StepsAtHand {
  /** What they are called: "lentil stew in the microwave". */
  readonly title: string;
  /** The one thing they are of. */
  readonly dish: { readonly id: string; readonly name: string } | null;
  readonly texts: readonly string[];
  /** The step just read; 0 is the first. */
  readonly at: number;
  /** That step was not read yet: a timer runs for the one before. */
  readonly waiting: boolean;
  /** Asked to wait a moment. */
  readonly held: boolean;
}
