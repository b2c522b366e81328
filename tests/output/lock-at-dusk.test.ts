import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { type INode, parseSync } from 'svgson';
import { beforeAll, describe, expect, it } from 'vitest';
import { designBook, type Manifest, makeBook, manifestSchema } from '../../src/index.js';
import { pngOf } from '../../src/output/raster.js';
import { readPng } from './picture-book.js';
import { contentsOf } from './read-back.js';

const FOLDER = path.resolve(import.meta.dirname, '../../out-examples/lock-at-dusk');
const TEXT = readFileSync(path.join(FOLDER, 'scene.yaml'), 'utf8');

type Files = ReadonlyMap<string, string | Uint8Array>;
const make = async (text: string): Promise<{ files: Files; manifest: Manifest }> =>
  makeBook(await designBook(text, 'scene.yaml'), pngOf);
const textOf = (files: Files, name: string): string => {
  const content = files.get(name);
  if (typeof content !== 'string') throw new Error(`no text file ${name}`);
  return content;
};
const withoutTimings = (manifest: Manifest) => ({ ...manifest, timingsMs: {} });

let files: Files;
let manifest: Manifest;
beforeAll(async () => {
  ({ files, manifest } = await make(TEXT));
});

const childrenOf = (node: INode) => node.children.filter((c) => c.type === 'element');
const pathsIn = (node: INode): INode[] =>
  node.name === 'path' ? [node] : childrenOf(node).flatMap(pathsIn);
const group = (svg: string, id: string) =>
  childrenOf(parseSync(svg)).find((g) => g.attributes.id === id);

describe('the example "Lock at dusk"', () => {
  it('passes its own check without a single error or warning', () => {
    expect(manifest.findings.filter((f) => f.severity !== 'hint')).toEqual([]);
  });

  it('is on disk as the code makes it (npm run demo makes it anew)', () => {
    const onDisk = readdirSync(FOLDER, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) =>
        path.relative(FOLDER, path.join(entry.parentPath, entry.name)).split(path.sep).join('/'),
      );
    expect(onDisk.sort()).toEqual([...files.keys(), 'scene.yaml'].sort());
    for (const [name, content] of files) {
      const kept = readFileSync(path.join(FOLDER, ...name.split('/')));
      if (name === 'manifest.json') {
        const read = manifestSchema.parse(JSON.parse(kept.toString('utf8')));
        expect(withoutTimings(read)).toEqual(withoutTimings(manifest));
      } else if (typeof content === 'string') {
        expect(kept.toString('utf8') === content, name).toBe(true);
      } else if (name.endsWith('.pdf')) {
        // What pages show; the picture in the build book is compared below as preview.png.
        expect(contentsOf(kept), name).toEqual(contentsOf(content));
      } else {
        expect(meanDifference(kept, content), name).toBeLessThan(1);
      }
    }
  });

  it('has every file of the contract', () => {
    const names = [...files.keys()];
    for (const panel of manifest.book.depthsMm.keys()) {
      expect(names).toContain(`panels/panel-0${panel + 1}.svg`);
    }
    expect(names).toEqual(
      expect.arrayContaining([
        'spine/spine-left.svg',
        'spine/spine-left-back.svg',
        'spine/spine-right.svg',
        'spine/spine-right-back.svg',
        'sheets/sheet-01.svg',
        'sheets/sheet-01.pdf',
        'book.pdf',
        'manifest.json',
        'preview.png',
        'exploded.png',
      ]),
    );
    for (const piece of manifest.pieces) expect(names).toContain(piece.file);
    for (const sheet of manifest.sheets) {
      for (const file of sheet.files) expect(names).toContain(file);
    }
  });

  it('nests every piece once', () => {
    const nested = manifest.sheets.flatMap((sheet) => sheet.pieces.map((p) => p.name));
    expect(nested.sort()).toEqual(manifest.pieces.map((p) => p.name).sort());
  });
});

// An independent reader: svgson finds the cut paths, resvg fills them.
describe('every panel, read again by other programs', () => {
  it('is one piece of card whose area the manifest gives within 0.5 %', () => {
    for (const piece of manifest.pieces.filter((p) => p.file.startsWith('panels/'))) {
      const svg = textOf(files, piece.file);
      const cut = group(svg, 'cut');
      if (!cut) throw new Error(`${piece.file} cuts nothing`);
      const { parts, areaMm2 } = rasterised(
        svg,
        pathsIn(cut).map((p) => p.attributes.d),
      );
      expect(parts, piece.file).toBe(1);
      expect(piece.components).toBe(1);
      expect(Math.abs(areaMm2 / piece.areaMm2 - 1), piece.file).toBeLessThan(0.005);
    }
  });

  it('cuts closed paths only, in groups in working order', () => {
    for (const [name, content] of files) {
      if (typeof content !== 'string' || !name.endsWith('.svg')) continue;
      const root = parseSync(content);
      const order = childrenOf(root).map((g) => g.attributes.id);
      const all = ['emboss', 'score', 'cut', 'guide'];
      expect(order, name).toEqual(all.filter((id) => order.includes(id)));
      const cut = group(content, 'cut');
      for (const p of cut ? pathsIn(cut) : []) {
        expect(p.attributes['data-kind'] !== undefined || /Z$/.test(p.attributes.d), name).toBe(
          true,
        );
      }
    }
  });

  // CSS Values and Units 3: 1 mm = 96 / 25.4 px. SVG 2, ch. 8: width and viewBox set the scale.
  it('measures what it says in millimetres', () => {
    const svg = textOf(files, 'panels/panel-01.svg');
    const { width, height, viewBox } = parseSync(svg).attributes;
    expect([width, height, viewBox]).toEqual(['190mm', '138mm', '0 0 190 138']);
    const drawn = new Resvg(svg);
    expect(drawn.width).toBeCloseTo((190 * 96) / 25.4, 0);
  });
});

describe('the same scene', () => {
  it('gives the same bytes twice, timings aside', async () => {
    const again = await make(TEXT);
    expect([...again.files.keys()]).toEqual([...files.keys()]);
    for (const [name, content] of files) {
      if (name === 'manifest.json') continue;
      expect(
        Buffer.compare(Buffer.from(again.files.get(name) ?? ''), Buffer.from(content)),
        name,
      ).toBe(0);
    }
    expect(withoutTimings(again.manifest)).toEqual(withoutTimings(manifest));
  });

  it('with one element changed leaves the bytes of all panels without it alone', async () => {
    const changed = TEXT.replace('id: hawthorn', 'id: hawthorn\n    seed: 5');
    expect(changed).not.toBe(TEXT);
    const before = await designBook(TEXT, 'scene.yaml');
    const after = await designBook(changed, 'scene.yaml');
    const hedge = before.scene.scenery.find((e) => e.id === 'hawthorn');
    before.panels.forEach((panel, i) => {
      if (hedge?.panels.includes(panel.number)) expect(after.panels[i]).not.toEqual(panel);
      else expect(after.panels[i]).toEqual(panel);
    });
  });
});

/** Fills the cut paths at 10 px/mm and counts the separate dark parts, by flooding. */
function rasterised(svg: string, paths: readonly string[]): { parts: number; areaMm2: number } {
  const { viewBox } = parseSync(svg).attributes;
  const [, , widthMm] = viewBox.split(' ').map(Number);
  const filled = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${viewBox}"><path fill-rule="evenodd" d="${paths.join('')}"/></svg>`;
  const image = new Resvg(filled, {
    fitTo: { mode: 'width', value: widthMm * 10 },
    background: '#fff',
  }).render();
  const { width, height, pixels } = image;
  const dark = new Uint8Array(width * height);
  let ink = 0;
  for (let i = 0; i < dark.length; i++) {
    ink += 1 - pixels[4 * i] / 255;
    dark[i] = pixels[4 * i] < 128 ? 1 : 0;
  }
  let parts = 0;
  const open: number[] = [];
  for (let i = 0; i < dark.length; i++) {
    if (dark[i] === 0) continue;
    parts++;
    dark[i] = 0;
    open.push(i);
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      const x = at % width;
      const near = [x > 0 ? at - 1 : -1, x + 1 < width ? at + 1 : -1, at - width, at + width];
      for (const next of near) {
        if (next < 0 || next >= dark.length || dark[next] === 0) continue;
        dark[next] = 0;
        open.push(next);
      }
    }
  }
  return { parts, areaMm2: ink / 100 };
}

/** Mean difference of two pictures' channels, of 255; libraries may round a shade differently. */
function meanDifference(one: Uint8Array, other: Uint8Array): number {
  const a = readPng(one);
  const b = readPng(other);
  if (a.width !== b.width || a.height !== b.height) return 255;
  const EVERY_PX = 3;
  let sum = 0;
  let count = 0;
  for (let y = 0; y < a.height; y += EVERY_PX) {
    for (let x = 0; x < a.width; x += EVERY_PX) {
      const q = b.at(x, y);
      for (const [i, value] of a.at(x, y).entries()) sum += Math.abs(value - q[i]);
      count += 3;
    }
  }
  return sum / count;
}
