/** Which handler answers which intent. Complete by type: an intent without one does not compile. */
import { tell } from './tell/tell.js';
import type { Intent } from '../understanding/intents.js';
import { howOld } from './age/how-old.js';
import { itemDate } from './age/item-date.js';
import { keeps } from './age/keeps.js';
import { noDate } from './age/no-date.js';
import { useFirst } from './age/use-first.js';
import { ask } from './ask/ask.js';
import { canEat, contains } from './allergens/allergens.js';
import { askingFree } from './allergens/proven-free.js';
import { count } from './find/count.js';
import { find } from './find/find.js';
import { howToReach, tellAbout, whatsThis } from './find/whats-this.js';
import { letIn, removeDevice, renameDevice } from './devices/guests.js';
import { danger } from './guidance/danger.js';
import { guidance, keepsSpoken } from './guidance/guidance.js';
import { urgent } from './guidance/urgent.js';
import type { Handler } from './handler.js';
import { redo, whatChanged, whoDid } from './history/history.js';
import { undoOrKeep } from './history/kept.js';
import { defineDots } from './markers/dots.js';
import { addMarker, mark, markerCare, markerNote, markers, unmark } from './markers/markers.js';
import { standsThere } from './move/stands.js';
import { freeze, merge, move, open, putBack, reheated, split, thaw } from './move/move.js';
import { leftOut } from './outages/left-out.js';
import { powerBack, powerCut } from './outages/power-cut.js';
import { hint, lessonReport, startLesson } from './lessons/lesson.js';
import { shareLessons } from './lessons/sharing.js';
import { addPerson, leaveNote, notes, people, whoAllergic } from './people/people.js';
import { buildPlace, placeState, places, removePlace, renamePlace } from './places/places.js';
import { amend } from './put-away/amend.js';
import { makingPlace } from './places/new-place.js';
import { putAway } from './put-away/put-away.js';
import { cookTemperature } from './reheat/cook.js';
import { reheat } from './reheat/reheat.js';
import { thawPlan } from './reheat/thaw-plan.js';
import { startCount } from './sessions/count.js';
import { beginWith, startSetup } from './sessions/setup.js';
import { startShop } from './sessions/shop.js';
import { endSession, startPractice } from './sessions/start-end.js';
import { household, setHousehold } from './settings/household.js';
import { buyRead } from './shopping/read.js';
import { buyAdd, buyClear, buyGot, buyRemove } from './shopping/shopping.js';
import { summary } from './summary/told.js';
import { askStep } from './talk/ask-step.js';
import * as talk from './talk/controls.js';
import { sessionAnswer } from './sessions/session.js';
import { goOn, unasked } from './talk/go-on.js';
import { back, done, next, skipTo, startOver, stepsLeft } from './talk/steps.js';
import {
  cancelReminder,
  changeReminder,
  cancelTimer,
  changeTimer,
  reminders,
  setReminder,
  setTimer,
  timers,
} from './timers/timers.js';
import { finish, take } from './use/use.js';

export const handlers: Readonly<Record<Intent, Handler>> = {
  'put-away': makingPlace(putAway),
  take,
  finish,
  move: makingPlace(standsThere(move)),
  amend: makingPlace(standsThere(askingFree(amend))),
  tell,
  open,
  freeze,
  thaw,
  reheated,
  'put-back': putBack,
  split,
  merge,
  mark,
  unmark,
  'add-marker': addMarker,
  'define-dots': defineDots,
  'marker-note': markerNote,
  'build-place': buildPlace,
  'rename-place': renamePlace,
  'remove-place': removePlace,
  'buy-add': buyAdd,
  'buy-remove': buyRemove,
  'buy-clear': buyClear,
  'buy-got': buyGot,
  'add-person': addPerson,
  'leave-note': leaveNote,
  'set-timer': setTimer,
  'change-timer': changeTimer,
  'cancel-timer': cancelTimer,
  'set-reminder': setReminder,
  'cancel-reminder': cancelReminder,
  'change-reminder': changeReminder,
  'set-household': setHousehold,
  'let-in': letIn,
  'rename-device': renameDevice,
  'remove-device': removeDevice,
  undo: undoOrKeep,
  redo,

  find,
  count,
  'whats-this': whatsThis,
  'tell-about': tellAbout,
  'how-old': howOld,
  'item-date': itemDate,
  keeps: (act, turn) => keepsSpoken(act, turn) ?? keeps(act, turn),
  'use-first': useFirst,
  'no-date': noDate,
  reheat,
  'thaw-plan': thawPlan,
  'cook-temperature': cookTemperature,
  'left-out': leftOut,
  guidance,
  urgent,
  danger,
  'power-cut': powerCut,
  'power-back': powerBack,
  'who-did': whoDid,
  'what-changed': whatChanged,
  contains,
  'can-eat': canEat,
  'who-allergic': whoAllergic,
  'how-to-reach': howToReach,
  'place-state': placeState,
  'marker-care': markerCare,
  markers,
  places,
  'buy-read': buyRead,
  timers,
  reminders,
  notes,
  summary,
  household,
  'lesson-report': lessonReport,
  'share-lessons': shareLessons,
  people,
  ask,

  'start-shop': startShop,
  'start-count': startCount,
  'start-setup': startSetup,
  'start-practice': startPractice,
  'start-lesson': startLesson,
  'end-session': endSession,

  yes: unasked,
  no: unasked,
  maybe: unasked,
  cancel: talk.cancel,
  stop: talk.stop,
  wait: talk.wait,
  continue: goOn,
  repeat: talk.repeat,
  next,
  back,
  'start-over': startOver,
  'skip-to': skipTo,
  'steps-left': stepsLeft,
  done,
  'ask-step': askStep,
  shorter: talk.shorter,
  longer: talk.longer,
  faster: talk.faster,
  slower: talk.slower,
  louder: talk.louder,
  quieter: talk.quieter,
  whisper: talk.whisper,
  spell: talk.spell,
  'just-names': talk.justNames,
  'how-many': talk.howMany,
  details: talk.details,
  'what-heard': talk.whatHeard,
  why: talk.why,
  help: talk.help,
  hint,
  thanks: talk.thanks,
  greeting: talk.greeting,
  goodbye: talk.goodbye,
  choose: unasked,
  'follow-up': tellAbout,
  correct: unasked,
  // What a check asked of something comes back as what was found of it.
  answer: (act, turn) =>
    (act.slots.findings && sessionAnswer(act, turn)) ?? beginWith(act, turn) ?? unasked(act, turn),
};
