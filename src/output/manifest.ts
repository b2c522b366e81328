import { z } from 'zod';
import type { Book } from '../book/book.js';
import type { Finding } from '../check/finding.js';
import type { Cubics } from '../geometry/types.js';
import { closedThickness } from '../panel/closed-thickness.js';
import type { Panel } from '../panel/panel.js';
import type { Piece } from '../panel/piece.js';
import { cornerErrors } from '../process/knife/blade-limits.js';
import type { Blade, Process } from '../process/process.js';
import { pieceStatistics } from '../process/statistics.js';
import { PROCESSES, type Scene, UNITS, WINDOW_SHAPES } from '../scene/scene.js';
import { type Amounts, type SheetEstimate, totalOf } from '../sheet/estimate.js';
import type { SheetJob } from '../sheet/job.js';
import { offcuts } from '../sheet/offcuts.js';
import type { QuoteRow } from '../sheet/quote.js';
import type { SharedEdge } from '../sheet/shared-edges.js';
import type { OpenedProcess } from './open-process.js';

/** The manifest's own version: it rises when a field changes its meaning or goes. */
export const MANIFEST_VERSION = 1;

const mm = z.number().describe('millimetres');
const fold = z.enum(['mountain', 'valley']);

const lengths = z.object({ cut: mm, fold: mm, detail: mm, emboss: mm });

const corner = z.object({
  x: mm,
  y: mm,
  turnDeg: z.number(),
  lateralMm: mm.describe('how far the tip strays from the line after the corner'),
  overMm: mm.nullable().describe('until it stays within 0.05 mm; null: never, straight back'),
});

const piece = z.object({
  name: z.string(),
  file: z.string().describe('the front of the designed card, exact and closed'),
  backFile: z.string().optional().describe('what is worked from the back, mirrored left-right'),
  stock: z.string(),
  copies: z.number().int(),
  areaMm2: z.number().describe('card left when all is cut, one copy'),
  components: z.number().int().describe('connected parts; more than one means something falls out'),
  holes: z.number().int(),
  narrowestWebMm: z
    .number()
    .nullable()
    .describe('narrowest card between two cuts; null when none is narrower than 10 mm'),
  lengthsMm: lengths,
  corners: z
    .array(corner)
    .optional()
    .describe('what a blade leaves at corners where neither file nor machine swings it'),
});

const finding = z.object({
  rule: z.string(),
  severity: z.enum(['error', 'warning', 'hint']),
  where: z.object({
    piece: z.string().optional(),
    sheet: z.string().optional().describe("x and y are in this sheet's file"),
    x: mm.optional(),
    y: mm.optional(),
    scene: z
      .array(z.union([z.string(), z.number()]))
      .readonly()
      .optional(),
  }),
  measured: z.number(),
  wanted: z.number(),
  unit: z.enum(['mm', 'mm2', 'mm/mm2', 'deg', 'L*', '%', 'parts']),
  message: z.string(),
  cure: z.string(),
});

const count = z.number().int();
const mm2 = z.number().describe('square millimetres');
const seconds = z.number().describe('all passes; estimated, as controllers differ');

const amounts = {
  lengthMm: mm.describe('worked, gone over once, all operations together'),
  cutMm: mm.describe('of that, cut'),
  travelMm: mm.describe('moves without work, in one pass of each step'),
  paths: count,
  corners: count.describe('places where the head turns by more than 15 degrees at once'),
  stops: count.describe('sheets laid up, sheets turned over and tools changed'),
  seconds: seconds.describe('all passes and the stops; estimated, as controllers differ'),
  sheetMm2: mm2.describe('card taken, mm2'),
  usedMm2: mm2.describe("the pieces' own card, mm2"),
  wastedMm2: mm2.describe('all other card of the sheets, windows too, mm2'),
};

const stepEstimate = z.object({
  face: z.enum(['front', 'back']).describe('the face that lies up'),
  operation: z.enum(['emboss', 'fold', 'detail', 'cut']),
  lengthMm: mm.describe('worked, gone over once'),
  passes: count.describe('how often all of it is gone over'),
  travelMm: mm.describe('moves without work, in one pass'),
  paths: count,
  corners: amounts.corners,
  seconds,
});

const money = z.number().describe("in the maker's currency");

const quoteRow = z.object({
  copies: count,
  sheets: count,
  minutes: z.number(),
  price: z
    .object({ setUp: money, machine: money, card: money, total: money, each: money })
    .nullable(),
});

const sheet = z.object({
  name: z.string(),
  stock: z.string(),
  width: mm,
  height: mm,
  mirrored: z.boolean().describe('all work, the cut too, is done from the back'),
  files: z.array(z.string()).describe('in working order'),
  pieces: z.array(
    z.object({
      name: z.string(),
      copy: z.number().int(),
      x: mm,
      y: mm,
      turned: z.boolean().optional().describe('by half, round the middle of its page'),
    }),
  ),
  offcuts: z
    .array(z.object({ x: mm, y: mm, width: mm, height: mm }))
    .describe('rectangles of card left over and worth keeping, largest first; seen from the front'),
  sharedEdges: z
    .array(
      z.object({
        pieces: z.tuple([z.string(), z.string()]).describe('the two, each with its copy'),
        lengthMm: mm,
        smallerMm: mm.describe('by how much each of the two comes out smaller there'),
      }),
    )
    .optional()
    .describe('edges of two pieces that are cut once'),
  estimate: z
    .object({ ...amounts, steps: z.array(stepEstimate).describe('in working order') })
    .describe('what the machine does on this sheet'),
});

/** What `manifest.json` holds. Lengths in mm, areas in mm2, y down from each file's top left. */
export const manifestSchema = z.object({
  version: z.literal(MANIFEST_VERSION),
  title: z.string(),
  sceneHash: z.string().describe('SHA-256 of the scene file, hexadecimal'),
  unit: z.enum(UNITS).describe("the scene file's unit; all lengths here are millimetres"),
  process: z.enum(PROCESSES),
  processFile: z
    .string()
    .optional()
    .describe('the settings file as it was named; left out where the process is one of ours'),
  book: z.object({
    widthMm: mm.describe('closed block, outer fold to outer fold'),
    heightMm: mm,
    panels: z.number().int().describe('backdrop counted'),
    spacingMm: mm,
    depthMm: mm.describe('front panel to backdrop, open'),
    closedThicknessMm: mm.describe('strips, panels and what is glued on; glue left out'),
    readingDistanceMm: mm,
    windows: z.array(
      z.object({
        panel: z.number().int(),
        shape: z.enum(WINDOW_SHAPES),
        x: mm,
        y: mm,
        width: mm,
        height: mm,
        depthMm: mm,
      }),
    ),
    depthsMm: z.array(mm).describe('how far each panel hangs behind the front one'),
    hinges: z.array(z.object({ panel: z.number().int(), leftX: mm, rightX: mm, fold })),
    spine: z.object({
      pitchMm: mm,
      openAngleDeg: z.number(),
      cells: z.number().int(),
      faces: z.number().int(),
      folds: z.array(fold).describe('between faces, front to back, seen from outside'),
      endFolds: z.array(fold).describe('at the front and the back tab'),
      tabMm: mm,
      lengthMm: mm.describe('both tabs included, joints not'),
      scoring: z.enum(['both', 'front']),
    }),
  }),
  pieces: z.array(piece),
  nesting: z.object({
    copies: z.number().int().describe('of the whole book, all on the sheets'),
    effort: z.number().int().describe('the same effort gives the same sheets'),
  }),
  sheets: z.array(sheet),
  estimate: z.object({ sheets: count, ...amounts }).describe('all sheets together'),
  quote: z.array(quoteRow).describe('orders of several copies; empty while no rate is set'),
  findings: z.array(finding),
  timingsMs: z.record(z.string(), z.number()),
});

export type Manifest = z.infer<typeof manifestSchema>;

/** The published JSON Schema of `manifest.json`. */
export const manifestJsonSchema = (): object => z.toJSONSchema(manifestSchema);

export function describeBook(book: Book, panels: readonly Panel[]): Manifest['book'] {
  const { spine } = book;
  return {
    widthMm: book.width,
    heightMm: book.height,
    panels: book.panels.length,
    spacingMm: book.spacing,
    depthMm: micron(spine.cells * book.spacing),
    closedThicknessMm: micron(closedThickness(book, panels)),
    readingDistanceMm: book.readingDistance,
    windows: book.panels.flatMap(({ number, window, depthMm }) =>
      window === null
        ? []
        : [
            {
              panel: number,
              shape: window.shape,
              x: micron(window.x),
              y: micron(window.y),
              width: micron(window.width),
              height: micron(window.height),
              depthMm: micron(depthMm),
            },
          ],
    ),
    depthsMm: book.panels.map((panel) => micron(panel.depthMm)),
    hinges: book.panels.map(({ number, hinge }) => ({
      panel: number,
      leftX: micron(hinge.leftX),
      rightX: micron(hinge.rightX),
      fold: hinge.fold,
    })),
    spine: {
      pitchMm: micron(spine.pitchMm),
      openAngleDeg: micron(spine.angleDeg),
      cells: spine.cells,
      faces: spine.faces,
      folds: [...spine.folds],
      endFolds: ['mountain', 'mountain'],
      tabMm: micron(spine.tabMm),
      lengthMm: micron(spine.lengthMm),
      scoring: spine.scoring,
    },
  };
}

export function describePiece(
  piece: Piece,
  process: Process,
  files: { readonly file: string; readonly backFile?: string },
): Manifest['pieces'][number] {
  const { areaMm2, components, holes, narrowestWebMm, lengthsMm } = pieceStatistics(piece);
  return {
    name: piece.name,
    ...files,
    stock: piece.stock.name,
    copies: piece.copies,
    areaMm2: micron(areaMm2),
    components,
    holes,
    narrowestWebMm: narrowestWebMm === null ? null : micron(narrowestWebMm),
    lengthsMm: {
      cut: micron(lengthsMm.cut),
      fold: micron(lengthsMm.fold),
      detail: micron(lengthsMm.detail),
      emboss: micron(lengthsMm.emboss),
    },
    ...(process.kind === 'knife' && !process.blade.compensate
      ? { corners: piece.card.contours.flatMap((c) => cornersLeft(c, process.blade)) }
      : {}),
  };
}

type Corner = NonNullable<Manifest['pieces'][number]['corners']>[number];

const cornersLeft = (contour: Cubics, blade: Blade): Corner[] =>
  cornerErrors(contour, blade).map(({ at, turnDeg, lateralMm, overMm }) => ({
    x: micron(at.x),
    y: micron(at.y),
    turnDeg: micron(turnDeg),
    lateralMm: micron(lateralMm),
    overMm: Number.isFinite(overMm) ? micron(overMm) : null,
  }));

const describeShared = (
  edges: readonly SharedEdge[],
): Pick<Manifest['sheets'][number], 'sharedEdges'> =>
  edges.length === 0
    ? {}
    : {
        sharedEdges: edges.map(({ pieces: [a, b], lengthMm, smallerMm }) => ({
          pieces: [a, b],
          lengthMm: micron(lengthMm),
          smallerMm: micron(smallerMm),
        })),
      };

export const describeSheet = (
  { sheet: s, faces }: SheetJob,
  files: readonly string[],
  estimate: SheetEstimate,
): Manifest['sheets'][number] => ({
  name: s.name,
  stock: s.stock.name,
  width: s.width,
  height: s.height,
  mirrored: s.mirrored,
  files: [...files],
  pieces: s.placements.map((p) => ({
    name: p.piece.name,
    copy: p.copy,
    x: micron(p.dx),
    y: micron(p.dy),
    ...(p.halfTurn ? { turned: true } : {}),
  })),
  offcuts: offcuts(s),
  ...describeShared(faces.flatMap(({ shared }) => shared)),
  estimate: {
    ...describeAmounts(estimate),
    steps: estimate.steps.map((step) => ({
      face: step.face,
      operation: step.operation,
      lengthMm: micron(step.lengthMm),
      passes: step.passes,
      travelMm: micron(step.travelMm),
      paths: step.paths,
      corners: step.corners,
      seconds: micron(step.seconds),
    })),
  },
});

export function describeTotal(estimates: readonly SheetEstimate[]): Manifest['estimate'] {
  const total = totalOf(estimates);
  return { sheets: total.sheets, ...describeAmounts(total) };
}

const describeAmounts = (amounts: Amounts): Omit<Manifest['estimate'], 'sheets'> => ({
  lengthMm: micron(amounts.lengthMm),
  cutMm: micron(amounts.cutMm),
  travelMm: micron(amounts.travelMm),
  paths: amounts.paths,
  corners: amounts.corners,
  stops: amounts.stops,
  seconds: micron(amounts.seconds),
  sheetMm2: micron(amounts.sheetMm2),
  usedMm2: micron(amounts.usedMm2),
  wastedMm2: micron(amounts.wastedMm2),
});

export const describeQuote = ({ price, ...row }: QuoteRow): Manifest['quote'][number] => ({
  ...row,
  minutes: micron(row.minutes),
  price:
    price === null
      ? null
      : {
          setUp: micron(price.setUp),
          machine: micron(price.machine),
          card: micron(price.card),
          total: micron(price.total),
          each: micron(price.each),
        },
});

export const describeScene = (
  scene: Scene,
  { process, processFile }: OpenedProcess,
  findings: readonly Finding[],
) => ({
  version: MANIFEST_VERSION as typeof MANIFEST_VERSION,
  title: scene.title,
  unit: scene.unit,
  process: process.kind,
  ...(processFile === null ? {} : { processFile }),
  findings: [...findings],
});

/** Three decimals: as fine as the files themselves. */
const micron = (value: number): number => Math.round(value * 1000) / 1000;
