import { cautionsFor } from '../process/cautions.js';
import type { Process } from '../process/process.js';
import { strokeColours } from '../process/stroke-colours.js';
import type { TrialCard, TrialPiece } from '../process/trial/card.js';
import { trialCards } from '../process/trial/cards.js';
import { caliperOf, DEFAULTS } from '../scene/defaults.js';
import type { Stock } from '../scene/scene.js';
import type { SheetSize } from '../scene/sheet-size.js';
import { mixedJob, type OwnMeans } from '../sheet/mixed-job.js';
import { nest } from '../sheet/nest.js';
import type { SheetProblem } from '../sheet/problem.js';
import type { FileContent, FileSet } from './file-set.js';
import { sheetPdfs } from './pdf/sheet-pdfs.js';
import { pieceFiles, sheetFiles } from './svg-files.js';

export interface TrialOptions {
  readonly process: Process;
  /** The settings file that results are entered into; null where there is none yet. */
  readonly processFile: string | null;
  /** What the card comes in. */
  readonly sheet: SheetSize;
  /** Thickness of the card, mm. */
  readonly caliperMm: number;
  /** Diameter of the ball that relief is pressed with, mm. */
  readonly ballMm: number;
}

export const TRIAL_CALIPER_MM = caliperOf(DEFAULTS.gramsPerM2);

/** Top-level names in a folder of trial cards that are replaced when they are made anew. */
export const isTrialEntry = (entry: string): boolean =>
  ['trial.txt', 'trial', 'sheets'].includes(entry);

export interface Trial {
  readonly files: FileSet;
  readonly sheets: number;
  /** Cards that the sheet or the bed cannot hold. */
  readonly problems: readonly SheetProblem[];
}

/**
 * The trial cards of a process, prepared, nested and written just as a book is, and a page of text
 * that says what to do with each. The card lies face up even where a laser has it face down.
 */
export async function makeTrial(options: TrialOptions): Promise<Trial> {
  const process = faceUp(options.process);
  const stock = trialStock(options);
  const cards = trialCards({ process, stock });
  const trialPieces = cards.flatMap(({ pieces }) => pieces);
  const { sheets, problems } = nest(
    trialPieces.map(({ piece }) => piece),
    process,
  );
  const own = ownMeans(trialPieces, options.ballMm);
  const colours = strokeColours(process);
  const style = { process: foldedOnce(process), colours };
  const jobs = sheets.map((sheet) => mixedJob(sheet, process.order, (name) => own.get(name)!));
  const written = [
    ...jobs.flatMap((job) => sheetFiles(job, style)),
    ...trialPieces.flatMap(({ piece }) => pieceFiles(piece, colours)),
  ];
  const files = new Map<string, FileContent>(written.map(({ path, text }) => [path, text]));
  for (const job of jobs) {
    for (const { path, bytes } of await sheetPdfs(job, style, 'Trial cards'))
      files.set(path, bytes);
  }
  files.set('trial.txt', trialText(cards, options));
  return { files, sheets: sheets.length, problems };
}

const faceUp = (process: Process): Process =>
  process.kind === 'laser' ? { ...process, faceDown: false } : process;

/** How often the strips are folded is what is tried. */
function foldedOnce(process: Process): Process {
  const { operations } = process;
  return { ...process, operations: { ...operations, fold: { ...operations.fold, passes: 1 } } };
}

/** Pieces of the same process share their means, and so are prepared together. */
function ownMeans(pieces: readonly TrialPiece[], ballMm: number): ReadonlyMap<string, OwnMeans> {
  const shared = new Map<Process, OwnMeans>();
  return new Map(
    pieces.map(({ piece, process, foldPasses = 1 }) => {
      const means = shared.get(process) ?? { process, ballMm, foldPasses };
      shared.set(process, means);
      return [piece.name, means];
    }),
  );
}

const trialStock = ({ sheet, caliperMm }: TrialOptions): Stock => ({
  name: 'trial card',
  colour: DEFAULTS.backdropColour,
  gramsPerM2: DEFAULTS.gramsPerM2,
  caliperMm,
  sheet,
  margin: DEFAULTS.sheetMargin,
});

const WIDTH = 92;

function trialText(cards: readonly TrialCard[], options: TrialOptions): string {
  const { process, processFile, caliperMm, ballMm, sheet } = options;
  const file = processFile ?? `FOLDER/process/${process.kind}.yaml`;
  const begin =
    processFile === null
      ? [
          `There is no settings file yet: "raree start FOLDER --process ${process.kind}" writes one.`,
        ]
      : [];
  const parts = [
    `TRIAL CARDS: ${process.name} (${process.kind})`,
    ...wrapped(
      `Drawn for card ${caliperMm} mm thick in sheets ${sheet.name}, ${ball(process, ballMm)}cut as this process stands. Use the card that the book will be made of: another card is another trial.`,
    ),
    '',
    'CARE',
    ...cautionsFor(process).flatMap((caution) => wrapped(caution, '- ', '  ')),
    '',
    'HOW',
    ...wrapped(
      '1. Cut sheets/, or, with one tool at a time, the files of sheets/by-step/ in order.',
      '',
      '   ',
    ),
    ...wrapped(
      '2. Look at each card as said below. The numbers on the cards are in mm unless said.',
      '',
      '   ',
    ),
    ...wrapped(
      '3. Enter what you found; the file keeps your comments and all other lines:',
      '',
      '   ',
    ),
    `   raree trial enter ${file} NAME=VALUE ...`,
    ...begin.flatMap((line) => wrapped(line, '   ', '   ')),
    ...cards.flatMap(({ title, says }) => [
      '',
      title.toUpperCase(),
      ...says.flatMap((paragraph) => wrapped(paragraph, '- ', '  ')),
    ]),
  ];
  return `${parts.join('\n')}\n`;
}

const ball = ({ kind }: Process, ballMm: number): string =>
  kind === 'knife' ? `for a ball of ${ballMm} mm, ` : '';

/** Lines of at most `WIDTH` characters. */
function wrapped(text: string, first = '', indent = ''): string[] {
  const lines: string[] = [];
  let line = first;
  for (const word of text.split(' ')) {
    const joined = line === first || line === indent ? `${line}${word}` : `${line} ${word}`;
    if (joined.length > WIDTH && line.trim() !== '') {
      lines.push(line);
      line = `${indent}${word}`;
    } else line = joined;
  }
  return [...lines, line];
}
