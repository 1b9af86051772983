/** The kitchen: what it holds, looked at and changed. Pure, but for `demoKitchen`, which reads its file. */
export type * from './model.js';
export {
  applyChange,
  SHELF,
  changedSince,
  emptyKitchen,
  invertChange,
  joinChanges,
  recordOf,
} from './apply.js';
export { ingredientIn, ingredientNote } from './ingredients.js';
export { newHousehold } from './new-household.js';
export { doerOf, isRefused, together, type Doing, type Reason, type Refused, type Result } from './doing.js';
export {
  convert,
  countedAs,
  isAmount,
  isMeasured,
  isShare,
  lessAmount,
  shareOf,
  sumAmounts,
} from './amounts.js';
export { foodKey, foodWords, isPlural, likeness } from './names.js';
export {
  batchOf,
  lastGone,
  learnedDefaults,
  likeNames,
  livingItems,
  totalOf,
  type Learned,
} from './items.js';
export {
  itemsAt,
  itemsRightAt,
  pathOf,
  placeCounts,
  placesBelow,
  placesIn,
  placeUnder,
  storageOf,
  storagesOf,
  type Storage,
} from './places.js';
export {
  countedHere,
  itemWithMarker,
  lastItemOf,
  markerOf,
  marksOf,
  meaningsHere,
  meaningIn,
  spareMarkers,
  type Marks,
} from './markers.js';
export {
  alikeNeighbours,
  feelAlike,
  markedNear,
  MARKER_FEATURES,
  stands,
  unlikeness,
  type Care,
  type MarkerFeature,
  type Stood,
  type Unlikeness,
} from './marker-feel.js';
export {
  feelsAlike,
  findByTouch,
  findMarkers,
  lookAlikes,
  proposeDifference,
  touchFit,
  type TouchMatch,
} from './touch.js';
export {
  bringBack,
  carriedOver,
  itemsMade,
  putAway,
  type Draft,
  type Share as BatchShare,
} from './changes/putting-away.js';
export { finish, setLeft, take, type GoneHow } from './changes/using-up.js';
export {
  freeze,
  isFrozen,
  isRefreeze,
  move,
  open,
  putBack,
  reheated,
  takeOut,
  thaw,
  type MoveTo,
} from './changes/moving.js';
export { amend, type Facts } from './changes/describing.js';
export { merge, split } from './changes/dividing.js';
export { anotherLike, copyItem, refill } from './changes/copying.js';
export {
  bringMarkerBack,
  loseMarker,
  addMarker,
  defineDots,
  mark,
  markLot,
  swapMarkers,
  markerNote,
  unmark,
  type MarkerFacts,
} from './changes/marking.js';
export {
  addPlaceName,
  buildPlaces,
  noteFilled,
  movePlace,
  removePlace,
  renamePlace,
  type PlacesToBuild,
} from './changes/building.js';
export {
  buyAdd,
  buyClear,
  buyGot,
  buyRemove,
  buySome,
  purchaseOf,
  shoppingList,
  type SaidOfLine,
} from './changes/buying.js';
export {
  addPerson,
  amendPerson,
  dropNotes,
  mendNote,
  heardNotes,
  leaveNote,
  notesFor,
  peopleCalled,
  personCalled,
  personNamed,
  withPeopleNames,
  type PersonFacts,
} from './changes/people.js';
export {
  cancelReminder,
  changeReminder,
  changeTimer,
  deliverReminder,
  holdTimer,
  nameTimer,
  openReminders,
  resumeTimer,
  setReminder,
  setTimer,
} from './changes/reminding.js';
export {
  checkItem,
  finishStockTake,
  nextToCheck,
  openStockTakes,
  startStockTake,
  tallyOf,
  type Tally,
} from './changes/checking.js';
export { isInCut, lastPowerCut, leftInCut, tellPowerCut } from './changes/power.js';
export { setHousehold, type Settings } from './changes/setting.js';
export { lastRedoable, lastUndoable, redo, standing, undo, undoOf } from './changes/undoing.js';
export { demoKitchen, kitchenFromFile } from './demo/demo.js';
export {
  codeKey,
  itemDatesOf,
  readCode,
  type Code,
  type CodeFault,
  type Product,
} from './codes/read-code.js';
export { datesPrinted, type Gs1DateKind, type PrintedDate } from './codes/gs1-dates.js';
export { resolveCode, type Resolved } from './codes/resolve.js';
export { exportItems } from './exchange/export.js';
export { planImport, type FileForm, type ImportPlan } from './exchange/import.js';
export { mendOf, readList, type GuessedRow, type ReadList } from './exchange/read-list.js';
export type { Fault } from './exchange/fault.js';
export { DATE_KINDS, recordShapes } from './shapes.js';
export { dayIn, guessTable, type GuessedHeading, type GuessedTable } from './exchange/headings.js';
