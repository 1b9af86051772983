export { BrailleUnavailable, fromBraille, toBraille, type BrailleGrade } from './braille.js';
export { brfFile, type BrfPage } from './brf.js';
export { addressOf, labelForItem, labelForMarker, touchInPrint, type Label } from './label.js';
export {
  familyGuide,
  guideLines,
  guidePage,
  type Guide,
  type GuidePage,
  type GuideSection,
} from './guide.js';
export { labelSheet, type Sheet, type SheetOptions } from './sheet.js';
export { freeStock, loadStocks, type Stock } from './stocks.js';
