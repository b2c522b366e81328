/** The library's table of contents: what is not listed here is private. */
export type { Book, PanelPlan, SpinePlan, WindowPlan } from './book/book.js';
export { planBook } from './book/plan.js';
export { checkBook } from './check/check.js';
export type { Finding, Place, Severity } from './check/finding.js';
export { intersect, subtract, union, xor } from './geometry/boolean.js';
export { components, containsPoint, distanceTo } from './geometry/components.js';
export { regionArea, regionBounds } from './geometry/measure.js';
export { offset, stroke } from './geometry/offset.js';
export { linePathData, regionPathData } from './geometry/path-data.js';
export { chainsFromPathData } from './geometry/path-read.js';
export type { Bounds, Cubics, Line, Point, Region } from './geometry/types.js';
export { type NarrowPlace, narrowestWeb, narrowWebs } from './geometry/webs.js';
export { type DesignedBook, designBook, type Progress } from './output/design-book.js';
export { isOwnEntry, makeBook } from './output/make-book.js';
export { type Manifest, manifestJsonSchema, manifestSchema } from './output/manifest.js';
export { samplesSvg } from './output/picture/samples.js';
export { pngOf } from './output/raster.js';
export {
  type FileSet,
  FolderError,
  readText,
  replaceFolder,
  writeFileWhole,
  writeNewFile,
} from './output/write-folder.js';
export { composePanel } from './panel/compose.js';
export type { Panel, Score } from './panel/panel.js';
export type { Piece } from './panel/piece.js';
export { bookPieces } from './panel/pieces.js';
export { PROCESS_LIMITS } from './process/limits.js';
export { sceneJsonSchema } from './scene/json-schema.js';
export { nearestWord } from './scene/nearest-word.js';
export type { ElementDescription, Parameter, Parameters } from './scene/parameter.js';
export { SceneError } from './scene/problem.js';
export { readScene } from './scene/read.js';
export type { ProcessLimits, Scene, SceneElement, Stock } from './scene/scene.js';
export { FAMILIES, familiesByName } from './scenery/catalogue.js';
export type { Family, Growth, Plot, Relief } from './scenery/family.js';
export { nest } from './sheet/nest.js';
export type { Sheet } from './sheet/sheet.js';
