import { isPressedFrom } from '../process/layers.js';
import { strokeColours } from '../process/stroke-colours.js';
import { estimateOf } from '../sheet/estimate.js';
import { buildBookPdf } from './build-book/build-book.js';
import { costsOf, quoteFor } from './costs-of.js';
import type { DesignedBook, Progress } from './design-book.js';
import type { FileContent, FileSet } from './file-set.js';
import {
  describeBook,
  describePiece,
  describeQuote,
  describeScene,
  describeSheet,
  describeTotal,
  type Manifest,
} from './manifest.js';
import { sheetPdfs } from './pdf/sheet-pdfs.js';
import { explodedSvg } from './picture/exploded.js';
import { previewSvg } from './picture/preview.js';
import { pieceFiles, piecePath, sheetFiles } from './svg-files.js';

const PREVIEW_WIDTH_PX = 1600;
const EXPLODED_WIDTH_PX = 2000;
/** In the build book: some 170 dots an inch across a page. */
const PRINTED_WIDTH_PX = 1100;

/** Top-level names in a book's folder that belong to it, and are replaced when it is made anew. */
const OWN_ENTRIES = new Set([
  'manifest.json',
  'panels',
  'spine',
  'loose',
  'stencils',
  'sheets',
  'preview.png',
  'exploded.png',
  'book.pdf',
]);

export const isOwnEntry = (entry: string): boolean => OWN_ENTRIES.has(entry);

/** Paints an SVG as PNG, so many pixels wide: `pngOf` on Node, a canvas in a browser. */
export type Painter = (svg: string, widthPx: number) => Uint8Array;

/** All files of a designed book, by their paths in its folder. */
export async function makeBook(
  designed: DesignedBook,
  paint: Painter,
  progress: Progress = () => {},
): Promise<{ files: FileSet; manifest: Manifest }> {
  const { book, panels, pieces, jobs, process } = designed;
  const colours = { ...strokeColours(process), ...designed.scene.strokes };
  const files = new Map<string, FileContent>();
  const start = performance.now();
  progress('draw pieces and sheets');
  const estimates = jobs.map((job) => estimateOf(job, process));
  const sheetRows = jobs.map((job, k) => {
    const written = sheetFiles(job, { process, colours });
    for (const { path, text } of written) files.set(path, text);
    return describeSheet(
      job,
      written.map(({ path }) => path),
      estimates[k],
    );
  });
  for (const piece of pieces)
    for (const { path, text } of pieceFiles(piece, colours)) files.set(path, text);
  for (const job of jobs) {
    for (const { path, bytes } of await sheetPdfs(job, { process, colours }, book.title))
      files.set(path, bytes);
  }
  const drawn = performance.now();
  progress('paint preview.png');
  const preview = previewSvg(book, panels);
  files.set('preview.png', paint(preview, PREVIEW_WIDTH_PX));
  progress('paint exploded.png');
  files.set('exploded.png', paint(explodedSvg(book, panels), EXPLODED_WIDTH_PX));
  const painted = performance.now();
  progress('price several copies');
  const quote = quoteFor(designed, estimates);
  progress('set book.pdf');
  const printed = paint(preview, PRINTED_WIDTH_PX);
  const costs = costsOf(designed, estimates, quote);
  files.set('book.pdf', await buildBookPdf(designed, colours, printed, costs));
  const set = performance.now();
  const manifest: Manifest = {
    ...describeScene(designed.scene, designed, designed.findings),
    sceneHash: await sha256(designed.text),
    book: describeBook(book, panels),
    pieces: pieces.map((piece) =>
      describePiece(piece, process, {
        file: piecePath(piece),
        ...(isPressedFrom(piece, 'back') ? { backFile: piecePath(piece, 'back') } : {}),
      }),
    ),
    nesting: designed.nesting,
    sheets: sheetRows,
    estimate: describeTotal(estimates),
    quote: quote.map(describeQuote),
    timingsMs: {
      ...designed.timingsMs,
      draw: tenths(drawn - start),
      paint: tenths(painted - drawn),
      book: tenths(set - painted),
    },
  };
  files.set('manifest.json', `${JSON.stringify(manifest, null, 2)}\n`);
  return { files, manifest };
}

const tenths = (ms: number): number => Math.round(ms * 10) / 10;

async function sha256(text: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
