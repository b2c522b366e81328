import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parseSync } from 'svgson';
import { drawingRegion, type ImportedDrawing, importSvg } from '../../src/geometry/svg/import.js';
import type { Line, Region } from '../../src/geometry/types.js';

export const LIBRARY = path.resolve(import.meta.dirname, '../../shapes');

/** One file of the motif library, as it is on disk. */
export interface Motif {
  readonly theme: string;
  /** The file's name without its ending. */
  readonly name: string;
  readonly text: string;
  readonly title: string;
  /** The side it grows from: sill, head, left, right, or none for what hangs or lies loose. */
  readonly root: string;
  /** The smallest advised size of the longer side. */
  readonly smallestMm: number;
  readonly drawing: ImportedDrawing;
  /** What is cut. */
  readonly card: Region;
  /** What is scored. */
  readonly details: readonly Line[];
}

/** The longer side as it is drawn, mm. */
export const longerMm = ({ drawing }: Motif): number => Math.max(drawing.widthMm, drawing.heightMm);

/** All motifs, theme by theme, both in the order of their names. */
export async function readLibrary(): Promise<Motif[]> {
  const motifs: Motif[] = [];
  for (const theme of foldersOf(LIBRARY)) {
    for (const file of readdirSync(path.join(LIBRARY, theme)).sort()) {
      motifs.push(await readMotif(theme, file));
    }
  }
  return motifs;
}

const foldersOf = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();

async function readMotif(theme: string, file: string): Promise<Motif> {
  const text = readFileSync(path.join(LIBRARY, theme, file), 'utf8');
  const { attributes, children } = parseSync(text);
  const drawing = await importSvg(text);
  const isDetail = ({ groups }: (typeof drawing.shapes)[number]) => groups.includes('detail');
  return {
    theme,
    name: path.basename(file, '.svg'),
    text,
    title: children.find(({ name }) => name === 'title')?.children[0]?.value ?? '',
    root: attributes['data-root'] ?? '',
    smallestMm: Number(attributes['data-smallest-mm']),
    drawing,
    card: drawingRegion({ shapes: drawing.shapes.filter((shape) => !isDetail(shape)) }),
    details: drawing.shapes.filter(isDetail).flatMap(({ lines }) => lines),
  };
}
