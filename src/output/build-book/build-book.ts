import type { LayerColours } from '../../scene/layer-colours.js';
import { costPages } from './cost-pages.js';
import type { Costs } from './costs.js';
import { firstPage, type Shape, type Told } from './first-page.js';
import { type Block, flow, heightOf } from './flow.js';
import type { Leaf } from './leaf.js';
import { foot } from './parts.js';
import { type Paper, paperFor } from './style.js';
import { workingOrder } from './working-order.js';
import { writeLeaves } from './write-leaves.js';

/**
 * The build book as a PDF on A4, or on Letter for makers who measure in inches: the book and what
 * to mind, every sheet's steps in working order, and what it costs where that is known. `preview`
 * is a PNG.
 */
export async function buildBookPdf(
  told: Told,
  colours: LayerColours,
  preview: Uint8Array,
  costs: Costs | null,
): Promise<Uint8Array> {
  const paper = paperFor(told.scene.unit);
  const leaves = leavesOf(told, colours, shapeOf(preview), costs, paper);
  const { title } = told.book;
  const numbered = leaves.map((leaf, i) => [...leaf, ...foot(title, i + 1, leaves.length, paper)]);
  return writeLeaves(numbered, paper, preview, {
    title: `${title}: build book`,
    subject: 'How to make it, at true size: print it at 100 %.',
  });
}

/** The working order goes on the first page where all of it does. */
function leavesOf(
  told: Told,
  colours: LayerColours,
  preview: Shape,
  costs: Costs | null,
  paper: Paper,
): Leaf[] {
  const first = firstPage(told, preview, paper, true);
  const order = workingOrder(told.jobs, told.process, colours, paper);
  const cost = costs ? costPages(costs, colours, paper) : [];
  if (heightOf(order) <= first.bottom - first.top) {
    const [below] = flow(order, { ...paper, top: first.top, bottom: first.bottom });
    return [[...first.leaf, ...below], ...onPages([cost], paper)];
  }
  return [firstPage(told, preview, paper, false).leaf, ...onPages([order, cost], paper)];
}

/** Each part on pages of its own, but one after the other where that saves a page. */
function onPages(parts: readonly (readonly Block[])[], paper: Paper): Leaf[] {
  const filled = parts.filter(({ length }) => length > 0);
  const apart = filled.flatMap((part) => flow(part, paper));
  const joined = flow(filled.flat(), paper);
  return joined.length < apart.length ? joined : apart;
}

/** The size of a PNG in pixels: ISO/IEC 15948, 11.2.2. */
function shapeOf(png: Uint8Array): Shape {
  const header = new DataView(png.buffer, png.byteOffset);
  return { width: header.getUint32(16), height: header.getUint32(20) };
}
