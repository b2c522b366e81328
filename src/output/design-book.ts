import type { Book } from '../book/book.js';
import { PlanError } from '../book/fault.js';
import { planBook } from '../book/plan.js';
import { checkBook } from '../check/check.js';
import { type Finding, gravestFirst } from '../check/finding.js';
import { checkJobs } from '../check/jobs.js';
import { type ImportedDrawing, importSvg } from '../geometry/svg/import.js';
import { composePanel } from '../panel/compose.js';
import type { Panel } from '../panel/panel.js';
import type { Piece } from '../panel/piece.js';
import { bookPieces } from '../panel/pieces.js';
import type { Opened } from '../panel/place/place.js';
import { asRun } from '../process/prepare.js';
import type { Process } from '../process/process.js';
import { SceneError } from '../scene/problem.js';
import { readScene } from '../scene/read.js';
import type { Scene } from '../scene/scene.js';
import { FAMILIES, familiesByName } from '../scenery/catalogue.js';
import { type LetterFont, readFont } from '../scenery/lettering/read-font.js';
import { type SheetJob, sheetJob } from '../sheet/job.js';
import { NEST_DEFAULTS, type NestOptions, nest } from '../sheet/nest.js';
import type { SheetProblem } from '../sheet/problem.js';
import { openProcess, sceneProcess } from './open-process.js';

/** A book designed whole: everything but its files. */
export interface DesignedBook {
  readonly text: string;
  readonly scene: Scene;
  readonly book: Book;
  readonly panels: readonly Panel[];
  readonly pieces: readonly Piece[];
  /** How it is made. */
  readonly process: Process;
  /** How many of the whole book lie on the sheets, and with what effort they were laid out. */
  readonly nesting: { readonly copies: number; readonly effort: number };
  /** The settings file as it was named; null for a process of ours. */
  readonly processFile: string | null;
  /** What the machine does, sheet by sheet. */
  readonly jobs: readonly SheetJob[];
  readonly findings: readonly Finding[];
  /** How long each step took. */
  readonly timingsMs: Readonly<Record<string, number>>;
}

/** Hears of each step as it begins. */
export type Progress = (step: string) => void;

/** What designing a book may ask of whoever runs it. */
export interface DesignOptions {
  readonly progress?: Progress;
  /**
   * The text of the SVG drawing that the scene names, be it a path from the scene's folder or a
   * name of the shipped library. Rejects with a message for the maker where there is none.
   */
  readonly drawing?: (name: string) => Promise<string>;
  /** The bytes of the font file at this path from the scene's folder; rejects likewise. */
  readonly font?: (name: string) => Promise<ArrayBuffer>;
  /** How the pieces are laid out on sheets. */
  readonly nest?: Partial<NestOptions>;
  /** The text of the settings file of this name; rejects likewise. */
  readonly processFile?: (name: string) => Promise<string>;
  /** A process of ours or a settings file, in place of what the scene names. */
  readonly process?: string;
}

const noFile = (name: string): Promise<never> =>
  Promise.reject(new Error(`there is no way to open "${name}" here`));

/**
 * The whole way from a scene file's text to pieces on sheets, checked.
 * @param file the scene file's name, for messages.
 * @throws SceneError with everything that is wrong with the scene or its settings file, each with
 * its line and column.
 */
export async function designBook(
  text: string,
  file: string,
  options: DesignOptions = {},
): Promise<DesignedBook> {
  const { progress = () => {}, drawing = noFile, font = noFile, processFile = noFile } = options;
  const clock = stopwatch(progress);
  clock.step('read');
  const { scene, locate } = readScene(text, { file, elements: FAMILIES });
  clock.step('plan');
  const book = located(() => planBook(scene), file, locate);
  clock.step('open files');
  const made =
    options.process === undefined
      ? await sceneProcess(scene, processFile, file, locate(['process']))
      : await openProcess(options.process, processFile);
  const { process } = made;
  const { limits } = process;
  const opened = await openFiles(scene, { drawing, font }, file, locate);
  const panels = book.panels.map((plan) => {
    clock.step('compose', `panel ${plan.number} of ${book.panels.length}`);
    return located(
      () => composePanel(scene, book, plan, familiesByName, limits, opened),
      file,
      locate,
    );
  });
  clock.step('nest');
  const pieces = located(() => bookPieces(book, panels), file, locate);
  const { sheets, problems, effort } = nest(pieces.map(asRun), process, options.nest);
  const nesting = { copies: options.nest?.copies ?? NEST_DEFAULTS.copies, effort };
  clock.step('prepare');
  const means = { process, ballMm: scene.ballMm };
  const jobs = sheets.map((sheet) => sheetJob(sheet, means));
  clock.step('check');
  const findings = gravestFirst([
    ...problems.map(sheetFinding),
    ...checkJobs(jobs, process),
    ...checkBook({ scene, book, panels, pieces, limits }),
  ]);
  return {
    text,
    scene,
    book,
    panels,
    pieces,
    ...made,
    nesting,
    jobs,
    findings,
    timingsMs: clock.stop(),
  };
}

type Locate = ReturnType<typeof readScene>['locate'];

const FONT_FILE = /\.(ttf|otf|woff)$/i;

/** Opens every drawing and every font that the scene names as a file, each once. */
async function openFiles(
  { scenery }: Scene,
  open: Required<Pick<DesignOptions, 'drawing' | 'font'>>,
  file: string,
  locate: Locate,
): Promise<Opened> {
  const drawings = new Map<string, ImportedDrawing>();
  const fonts = new Map<string, LetterFont>();
  for (const { element, values, path } of scenery) {
    for (const [key, parameter] of Object.entries(familiesByName.get(element)?.parameters ?? {})) {
      if (parameter.kind !== 'file') continue;
      const name = String(values[key]);
      const at = [...path, key];
      try {
        if (parameter.of === 'drawing') {
          if (!drawings.has(name)) drawings.set(name, await importSvg(await open.drawing(name)));
        } else if (FONT_FILE.test(name) && !fonts.has(name)) {
          fonts.set(name, readFont(await open.font(name)));
        }
      } catch (error) {
        const message = `${key}: ${error instanceof Error ? error.message : String(error)}`;
        throw new SceneError(file, [{ path: at, ...locate(at), message }]);
      }
    }
  }
  return { drawings, fonts };
}

/** Gives the faults of a plan their lines and columns in the scene file. */
function located<T>(plan: () => T, file: string, locate: Locate): T {
  try {
    return plan();
  } catch (error) {
    if (!(error instanceof PlanError)) throw error;
    throw new SceneError(
      file,
      error.faults.map(({ path, message }) => ({ path, ...locate([...path]), message })),
    );
  }
}

const sheetFinding = (problem: SheetProblem): Finding => ({
  rule: 'sheet-size',
  severity: 'error',
  where: { piece: problem.piece },
  measured: Math.max(problem.width, problem.height),
  wanted: problem.width > problem.usableWidth ? problem.usableWidth : problem.usableHeight,
  unit: 'mm',
  message: problem.message,
  cure: problem.cure,
});

function stopwatch(progress: Progress) {
  const timings: Record<string, number> = {};
  let running: { name: string; since: number } | null = null;
  const stop = () => {
    const now = performance.now();
    if (running !== null) {
      const before = timings[running.name] ?? 0;
      timings[running.name] = Math.round((before + now - running.since) * 10) / 10;
    }
    running = null;
    return timings;
  };
  const step = (name: string, detail?: string) => {
    stop();
    progress(detail === undefined ? name : `${name} ${detail}`);
    running = { name, since: performance.now() };
  };
  return { step, stop };
}
