/** The library's table of contents: what is not listed here is private. */
export type { Book, PanelPlan, SpinePlan, WindowPlan } from './book/book.js';
export { planBook } from './book/plan.js';
export { checkBook } from './check/check.js';
export type { Finding, Place, Severity } from './check/finding.js';
export { checkJobs } from './check/jobs.js';
export {
  type Checked,
  cleanRegion,
  intersect,
  intersectChecked,
  subtract,
  subtractChecked,
  union,
  unionChecked,
  xor,
  xorChecked,
} from './geometry/boolean/boolean.js';
export { type Bridge, shortestBridge } from './geometry/bridge.js';
export { linesInside, linesOutside, outlineLines } from './geometry/clip-lines.js';
export { components, containsPoint, distanceTo, holeCount } from './geometry/components.js';
export {
  lengthInside,
  lineLength,
  perimeter,
  regionArea,
  regionBounds,
} from './geometry/measure.js';
export { type Moments, momentsOf } from './geometry/moments.js';
export {
  type Cap,
  type Join,
  offset,
  offsetChecked,
  type StrokeStyle,
  stroke,
  strokeContours,
} from './geometry/offset/offset.js';
export { linePathData, regionPathData } from './geometry/path/path-data.js';
export { chainsFromPathData } from './geometry/path/path-read.js';
export { polylinedContours } from './geometry/polylined.js';
export {
  drawingRegion,
  type ImportedDrawing,
  type ImportedShape,
  type ImportOptions,
  type ImportWarning,
  importSvg,
  SvgImportError,
} from './geometry/svg/import.js';
export { fitCubics } from './geometry/tidy/fit.js';
export { joinLines } from './geometry/tidy/join.js';
export { withoutDoubles } from './geometry/tidy/overlaps.js';
export { simplifyRegion } from './geometry/tidy/simplify.js';
export { dropSpeckLines, dropSpecks } from './geometry/tidy/specks.js';
export { startOnStraightRun } from './geometry/tidy/start.js';
export type { Bounds, Cubics, Line, Point, Region } from './geometry/types.js';
export { type Hangings, hangings } from './geometry/width/hangings.js';
export { type SharpCorner, sharpCorners } from './geometry/width/sharp-corners.js';
export { type Sliver, sliverGaps, slivers } from './geometry/width/slivers.js';
export {
  type NarrowPlace,
  narrowestWeb,
  narrowSlots,
  narrowWebs,
  smallHoles,
} from './geometry/width/webs.js';
export {
  type DesignedBook,
  type DesignOptions,
  designBook,
  type Progress,
} from './output/design-book.js';
export type { FileContent, FileSet } from './output/file-set.js';
export { isOwnEntry, makeBook, type Painter } from './output/make-book.js';
export {
  isTrialEntry,
  makeTrial,
  TRIAL_CALIPER_MM,
  type Trial,
  type TrialOptions,
} from './output/make-trial.js';
export { type Manifest, manifestJsonSchema, manifestSchema } from './output/manifest.js';
export { type OpenedProcess, openProcess } from './output/open-process.js';
export { contactSheetSvg } from './output/picture/contact-sheet.js';
export { composePanel } from './panel/compose.js';
export type { Panel } from './panel/panel.js';
export type { Piece } from './panel/piece.js';
export { bookPieces } from './panel/pieces.js';
export type { Score } from './panel/score.js';
export { cautionsFor } from './process/cautions.js';
export { PROCESS_LIMITS } from './process/limits.js';
export type { Process } from './process/process.js';
export { processJsonSchema } from './process/process-schema.js';
export { processText } from './process/process-text.js';
export { readProcess } from './process/read-process.js';
export { STARTING } from './process/starting.js';
export { enterResults, ResultError, resultsOf } from './process/trial/enter.js';
export { BOUNDS } from './scene/bounds.js';
export { DEFAULTS } from './scene/defaults.js';
export { sceneJsonSchema } from './scene/json-schema.js';
export { readLength } from './scene/length.js';
export { nearestWord } from './scene/nearest-word.js';
export type { ElementDescription, Parameter, Parameters } from './scene/parameter.js';
export { SceneError } from './scene/problem.js';
export { readScene } from './scene/read.js';
export {
  isSettingsFile,
  PROCESSES,
  type ProcessLimits,
  type ProcessName,
  type Scene,
  type SceneElement,
  type Stock,
} from './scene/scene.js';
export { SHEET_NAMES, sheetSize } from './scene/sheet-size.js';
export { suggestion } from './scene/words.js';
export { FAMILIES, familiesByName } from './scenery/catalogue.js';
export type { Family, Growth, Plot, Relief } from './scenery/family.js';
export { LetteringError } from './scenery/lettering/fault.js';
export { BUNDLED_FONTS, type FontSource } from './scenery/lettering/fonts.js';
export { type LineOfText, lineOfText, type TextOptions } from './scenery/lettering/line-of-text.js';
export { type LetterFont, readFont } from './scenery/lettering/read-font.js';
export { lettering, letteringFamily } from './scenery/lettering.js';
export { type Amounts, estimateOf, type SheetEstimate, totalOf } from './sheet/estimate.js';
export { type NestOptions, nest } from './sheet/nest.js';
export { type Offcut, offcuts } from './sheet/offcuts.js';
export { estimatesFor, type Price, type QuoteRow, quoteOf } from './sheet/quote.js';
export type { Sheet } from './sheet/sheet.js';
