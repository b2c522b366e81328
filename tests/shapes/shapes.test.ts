import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { components, containsPoint, distanceTo } from '../../src/geometry/components.js';
import { flatten, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { moveLine, moveRegion, scaling } from '../../src/geometry/transform.js';
import type { Line, Point, Region } from '../../src/geometry/types.js';
import { narrowSlots, narrowWebs, smallHoles } from '../../src/geometry/width/webs.js';
import { pngOf } from '../../src/output/raster.js';
import { readPng } from '../output/picture-book.js';
import { byTheme, contactSheet, galleryPage, SHEET_PX } from './gallery.js';
import { LIBRARY, longerMm, type Motif, readLibrary } from './library.js';

/** Limits at the smallest advised size, mm: between laser and knife; common practice, no source. */
const LEAST_WEB_MM = 1.2;
const LEAST_HOLE_MM = 1.5;
/** A blade or a beam goes round nothing finer; common practice, no source. */
const LEAST_SLOT_MM = 0.6;
const LEAST_CLEARANCE_MM = 1;
/** A score is looked at each time it has turned by this much, mm. */
const SCORE_TOLERANCE_MM = 0.01;

const motifs = await readLibrary();
const themes = byTheme(motifs);

/** The motif as it comes out at its smallest advised size. */
function atSmallest(motif: Motif): { readonly card: Region; readonly details: readonly Line[] } {
  const scale = scaling(motif.smallestMm / longerMm(motif));
  return {
    card: moveRegion(motif.card, scale),
    details: motif.details.map((line) => moveLine(line, scale)),
  };
}

/** Where a fault is, so that a failure names the spot, and no more. */
const placesOf = (faults: readonly { readonly at: Point }[]): string[] =>
  faults.map(({ at }) => `${at.x.toFixed(2)} ${at.y.toFixed(2)}`);

/** How broad the foot is, mm: what stands within a millimetre of the root's side. */
function footMm(card: Region, root: string): number {
  const { minX, minY, maxX, maxY } = regionBounds(card);
  const [width, height] = [maxX - minX, maxY - minY];
  const strip = {
    sill: rectangle(minX, maxY - 1, width, 1),
    head: rectangle(minX, minY, width, 1),
    left: rectangle(minX, minY, 1, height),
    right: rectangle(maxX - 1, minY, 1, height),
  }[root];
  return strip === undefined ? Number.POSITIVE_INFINITY : regionArea(intersect(card, strip));
}

describe('the motif library', () => {
  it('has at least 60 motifs in at least 6 themes of at least 8', () => {
    expect(motifs.length).toBeGreaterThanOrEqual(60);
    expect(themes.size).toBeGreaterThanOrEqual(6);
    for (const [theme, own] of themes) expect(own.length, theme).toBeGreaterThanOrEqual(8);
  });

  it('holds nothing but motifs, its page and a contact sheet for each theme', () => {
    const sheets = [...themes.keys()].map((theme) => `${theme}.png`);
    expect(readdirSync(LIBRARY).sort()).toEqual(['README.md', ...themes.keys(), ...sheets].sort());
    for (const theme of themes.keys()) {
      for (const file of readdirSync(path.join(LIBRARY, theme))) {
        expect(file).toMatch(/^[a-z]+(?:-[a-z]+)*\.svg$/);
      }
    }
  });

  it('has a page that is as the files are (npm run gallery writes it anew)', () => {
    expect(readFileSync(path.join(LIBRARY, 'README.md'), 'utf8')).toBe(galleryPage(motifs));
  });

  it.each([...themes])('has a contact sheet of %s as the files are', (theme, own) => {
    const kept = readPng(readFileSync(path.join(LIBRARY, `${theme}.png`)));
    const made = readPng(pngOf(contactSheet(own), SHEET_PX));
    expect([kept.width, kept.height]).toEqual([made.width, made.height]);
    let difference = 0;
    for (let y = 0; y < made.height; y++) {
      for (let x = 0; x < made.width; x++) {
        difference += Math.abs(made.at(x, y)[0] - kept.at(x, y)[0]);
      }
    }
    expect(difference / (made.width * made.height)).toBeLessThan(0.1);
  });

  it('has no name or title twice', () => {
    expect(new Set(motifs.map(({ name }) => name)).size).toBe(motifs.length);
    expect(new Set(motifs.map(({ title }) => title)).size).toBe(motifs.length);
  });

  it('has no two motifs alike, nor one the mirror image of another', () => {
    const prints = motifs.map((motif) => ({ motif, print: printOf(motif.card) }));
    const alike: string[] = [];
    prints.forEach((p, i) => {
      for (const q of prints.slice(i + 1)) {
        if (Math.min(apart(p.print, q.print), apart(mirrored(p.print), q.print)) < LEAST_APART) {
          alike.push(`${p.motif.name} and ${q.motif.name}`);
        }
      }
    });
    expect(alike).toEqual([]);
  });
});

describe.each(motifs.map((motif) => [`${motif.theme}/${motif.name}`, motif] as const))(
  '%s',
  (_, motif) => {
    const { card, details } = atSmallest(motif);

    it('says what it is, where it is rooted and how small it may be', () => {
      expect(motif.title).toMatch(/^[A-Z][a-z ,-]+/);
      expect(['sill', 'head', 'left', 'right', 'none']).toContain(motif.root);
      expect(motif.smallestMm).toBeGreaterThanOrEqual(15);
      expect(motif.smallestMm).toBeLessThanOrEqual(longerMm(motif));
    });

    it('is drawn in millimetres, fills its page and loses nothing when read', () => {
      const { widthMm, heightMm, warnings, exact } = motif.drawing;
      expect(motif.text).toContain(
        `width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}"`,
      );
      expect(warnings).toEqual([]);
      expect(exact).toBe(true);
      const { minX, minY, maxX, maxY } = regionBounds(motif.card);
      for (const [edge, wanted] of [
        [minX, 0],
        [minY, 0],
        [maxX, widthMm],
        [maxY, heightMm],
      ]) {
        expect(Math.abs(edge - wanted)).toBeLessThan(0.05);
      }
    });

    it('is one piece, cut from one path, and nothing is painted but that and its scores', () => {
      expect(components(card)).toHaveLength(1);
      expect(motif.text.match(/fill="black"/g)).toHaveLength(1);
      const painted = motif.drawing.shapes.filter(({ fill }) => fill !== null);
      expect(painted).toHaveLength(1);
      const scored = motif.drawing.shapes.filter(({ stroke }) => stroke !== null);
      expect(scored.every(({ groups }) => groups.includes('detail'))).toBe(true);
    });

    it('holds together at its smallest size', () => {
      const webs = narrowWebs(card, LEAST_WEB_MM).filter(({ kind }) => kind !== 'tip');
      expect(placesOf(webs)).toEqual([]);
      expect(placesOf(smallHoles(card, LEAST_HOLE_MM))).toEqual([]);
      const slots = narrowSlots(card, LEAST_SLOT_MM).filter(({ kind }) => kind !== 'tip');
      expect(placesOf(slots)).toEqual([]);
    });

    it('has a foot where it is rooted', () => {
      expect(footMm(card, motif.root)).toBeGreaterThanOrEqual(LEAST_WEB_MM);
    });

    it('keeps its scores on the card and clear of its cuts', () => {
      for (const { cubics } of details) {
        for (const point of flatten(cubics, SCORE_TOLERANCE_MM)) {
          expect(containsPoint(card, point)).toBe(true);
          expect(distanceTo(card, point)!.distanceMm).toBeGreaterThan(LEAST_CLEARANCE_MM);
        }
      }
    });
  },
);

/** Points a side at which a motif is looked at, to tell it from others. */
const LOOKS = 32;
/** Share of those points that differ at least between two motifs. */
const LEAST_APART = 0.06;

type Print = readonly (readonly boolean[])[];

/** Where there is card, in rows of points over the motif stretched to a square. */
function printOf(card: Region): Print {
  const { minX, minY, maxX, maxY } = regionBounds(card);
  const at = (min: number, max: number, k: number): number =>
    min + ((k + 0.5) / LOOKS) * (max - min);
  return Array.from({ length: LOOKS }, (_, row) =>
    Array.from({ length: LOOKS }, (_, column) =>
      containsPoint(card, { x: at(minX, maxX, column), y: at(minY, maxY, row) }),
    ),
  );
}

const mirrored = (print: Print): Print => print.map((row) => row.toReversed());

/** The share of points at which two motifs differ. */
const apart = (p: Print, q: Print): number =>
  p.flatMap((row, i) => row.filter((inked, k) => inked !== q[i][k])).length / LOOKS ** 2;
