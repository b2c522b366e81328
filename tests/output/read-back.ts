import { inflateSync } from 'node:zlib';
import paper from 'paper-jsdom';
import { type INode, parseSync } from 'svgson';
import type { Cubics } from '../../src/geometry/types.js';
import { OPERATIONS, type Operation } from '../../src/process/layers.js';
import type { LayerColours } from '../../src/scene/layer-colours.js';
import { run } from '../support/tools.js';

/** A path found in a file, in mm from the page's top left. */
export interface Found {
  readonly layer: Operation;
  readonly path: paper.Path;
}

paper.setup(new paper.Size(10, 10));

const descendants = (node: INode): INode[] => [node, ...node.children.flatMap(descendants)];

/** Every path of an SVG file by its group's id, read by paper.js. */
export function pathsOfSvg(svg: string): Found[] {
  const nodes = descendants(parseSync(svg));
  return OPERATIONS.flatMap((layer) =>
    nodes
      .filter(({ attributes }) => attributes.id === layer)
      .flatMap(descendants)
      .filter(({ name }) => name === 'path')
      .map(({ attributes }) => ({ layer, path: new paper.Path(attributes.d) })),
  );
}

/** Every path of a PDF file by its stroke's colour, read by poppler and then by paper.js. */
export function pathsOfPdf(pdf: Uint8Array, colours: LayerColours): Found[] {
  // Without these two it shrinks a page to whole points.
  const svg = run('pdftocairo', ['-svg', '-noshrink', '-nocenter', '-', '-'], pdf).toString();
  return descendants(parseSync(svg))
    .filter(({ name, attributes }) => name === 'path' && attributes.d)
    .map(({ attributes }) => {
      // It ends every closed path with an idle move.
      const path = new paper.Path(attributes.d.replace(/(Z) M [-\d. ]+$/, '$1'));
      const [a, b, c, d, e, f] = (/matrix\(([^)]*)\)/.exec(attributes.transform)?.[1] ?? '')
        .split(',')
        .map(Number);
      path.transform(new paper.Matrix(a, b, c, d, e, f));
      path.scale(25.4 / 72, new paper.Point(0, 0));
      return { layer: layerOf(attributes.style, colours), path };
    });
}

function layerOf(style: string, colours: LayerColours): Operation {
  const shares = /stroke:rgb\(([^)]*)\)/.exec(style)?.[1].split(',').map(Number.parseFloat) ?? [];
  const hex = shares.map((s) =>
    Math.round(s * 2.55)
      .toString(16)
      .padStart(2, '0'),
  );
  const found = OPERATIONS.find((operation) => colours[operation] === `#${hex.join('')}`);
  if (!found) throw new Error(`no layer has the stroke ${style}`);
  return found;
}

/** Samples of each curve: chords of a quarter circle then stay within 0.03 % of its radius. */
const STEPS = 16;

/** How far a path strays from a chain, or the chain from the path, at the worst place, mm. */
export function strayMm(cubics: Cubics, closed: boolean, path: paper.Path): number {
  const wanted = pathOf(cubics, closed);
  if (wanted.closed !== path.closed) return Infinity;
  const worst = Math.max(farthest(wanted, path), farthest(path, wanted));
  wanted.remove();
  return worst;
}

function pathOf(cubics: Cubics, closed: boolean): paper.Path {
  const path = new paper.Path();
  path.moveTo(new paper.Point(cubics[0], cubics[1]));
  for (let i = 0; i < cubics.length; i += 8) {
    const [, , x1, y1, x2, y2, x, y] = cubics.subarray(i, i + 8);
    path.cubicCurveTo(new paper.Point(x1, y1), new paper.Point(x2, y2), new paper.Point(x, y));
  }
  if (closed) path.closePath();
  return path;
}

const farthest = (from: paper.Path, to: paper.Path): number =>
  Math.max(
    ...from.curves.flatMap((curve) =>
      Array.from({ length: STEPS + 1 }, (_, k) => {
        const point = curve.getPointAtTime(k / STEPS);
        return to.getNearestPoint(point).getDistance(point);
      }),
    ),
  );

/** The inflated content streams of a PDF that was written without object streams. */
export function contentsOf(pdf: Uint8Array): string[] {
  const text = Buffer.from(pdf).toString('latin1');
  return [...text.matchAll(/\/Contents (\d+) 0 R/g)].map(([, id]) => {
    const start = text.search(new RegExp(`\\n${id} 0 obj`));
    const length = Number(/\/Length (\d+)/.exec(text.slice(start))?.[1]);
    const from = text.indexOf('stream\n', start) + 'stream\n'.length;
    return inflateSync(pdf.subarray(from, from + length)).toString('latin1');
  });
}

/** Names of a PDF's optional content groups, as its catalogue lists them. */
export function layersOf(pdf: Uint8Array): string[] {
  const text = Buffer.from(pdf).toString('latin1');
  const listed = /\/Order \[([^\]]*)\]/.exec(text)?.[1] ?? '';
  return [...listed.matchAll(/(\d+) 0 R/g)].map(([, id]) => {
    const group = new RegExp(`\\n${id} 0 obj\\s*<<([^>]*)>>`).exec(text)?.[1] ?? '';
    if (!/\/Type \/OCG/.test(group)) throw new Error(`object ${id} is no layer`);
    return /\/Name \(([^)]*)\)/.exec(group)?.[1] ?? '';
  });
}
