import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/check/finding.js';
import { checkJobs } from '../../src/check/jobs.js';
import { polyline } from '../../src/geometry/pen.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import type { Cubics } from '../../src/geometry/types.js';
import type { Piece } from '../../src/panel/piece.js';
import type { Mark, PlacedMark } from '../../src/process/layers.js';
import type {
  KnifeProcess,
  LaserProcess,
  Process,
  WorkedOperation,
} from '../../src/process/process.js';
import { STARTING } from '../../src/process/starting.js';
import type { Stock } from '../../src/scene/scene.js';
import { type SheetJob, sheetJob } from '../../src/sheet/job.js';
import { nest } from '../../src/sheet/nest.js';
import { sheetOf } from '../../src/sheet/sheet.js';
import { A2, A4, gate, hole, plainPiece, sky, spine } from '../process/lock-pieces.js';

const { press } = STARTING;
const knife = STARTING.knife as KnifeProcess;
const laser = STARTING.laser as LaserProcess;

/** A sheet with one piece, 10 mm from its corner, as the process runs it. */
function jobOf(piece: Piece, process: Process, stock: Stock = A4): SheetJob {
  const placements = [{ piece, dx: 10, dy: 10, copy: 1 }];
  return sheetJob(sheetOf('sheet-01', stock, placements, process), { process, ballMm: 1 });
}

/** A sheet on which just these paths are run from the front, all for one blank. */
function jobWith(
  marks: Partial<Record<WorkedOperation, readonly Mark[]>>,
  process: Process = knife,
  stock: Stock = A4,
): SheetJob {
  const blank = plainPiece('quay', 120, 90);
  const placements = [{ piece: blank, dx: 0, dy: 0, copy: 1 }];
  const placed = (mark: Mark): PlacedMark => ({ ...mark, piece: 'quay', copy: 1 });
  const steps = Object.entries(marks).map(([operation, own]) => ({
    operation: operation as WorkedOperation,
    marks: own.map(placed),
  }));
  return {
    sheet: sheetOf('sheet-01', stock, placements, process),
    faces: [{ face: 'front', steps, guides: [], register: [], shared: [] }],
  };
}

const line = (...points: readonly (readonly [number, number])[]): Cubics =>
  polyline(points.map(([x, y]) => ({ x, y }))).cubics;
const open = (...points: readonly (readonly [number, number])[]): Mark => ({
  cubics: line(...points),
  closed: false,
  kind: 'slit',
});
const closed = (cubics: Cubics): Mark => ({ cubics, closed: true });

const ofRule = (rule: string, jobs: readonly SheetJob[], process: Process): Finding[] =>
  checkJobs(jobs, process).filter((finding) => finding.rule === rule);

describe('sound sheets', () => {
  it('give no finding', () => {
    const free: LaserProcess = { ...laser, nibs: { count: 0, widthMm: 0.4 } };
    for (const process of [knife, free, press])
      for (const piece of [gate, sky, spine('spine-left', 6)])
        expect(checkJobs([jobOf(piece, process)], process)).toEqual([]);
  });
});

describe('doubled lines', () => {
  const found = (marks: Parameters<typeof jobWith>[0]) =>
    ofRule('double-line', [jobWith(marks)], knife);

  it('are told with their length and the longest place', () => {
    const [double, ...rest] = found({
      cut: [open([20, 30], [80, 30]), open([70, 30.01], [50, 30.01])],
    });
    expect(rest).toEqual([]);
    expect(double).toMatchObject({
      severity: 'warning',
      where: { piece: 'quay', sheet: 'sheet-01', x: 60, y: 30.01 },
      unit: 'mm',
    });
    expect(double.measured).toBeCloseTo(20, 1);
    expect(double.message).toMatch(/20 mm of quay would be cut twice, in 1 place/);
  });

  it('are let be from just over 0.02 mm apart, and where they cross', () => {
    expect(found({ cut: [open([20, 30], [80, 30]), open([20, 30.03], [80, 30.03])] })).toEqual([]);
    expect(found({ cut: [open([20, 30], [80, 30]), open([50, 10], [50, 60])] })).toEqual([]);
  });

  it('are a hint where they are short', () => {
    const short = found({ cut: [open([20, 30], [80, 30]), open([30, 30], [31.5, 30])] });
    expect(short).toMatchObject([{ severity: 'hint', measured: 1.5 }]);
  });

  it('count folds and details as one set, and cuts as another', () => {
    const along = open([20, 30], [80, 30]);
    expect(found({ fold: [along], detail: [along] })[0]).toMatchObject({ measured: 60 });
    expect(found({ fold: [along], cut: [along] })).toEqual([]);
    expect(found({ emboss: [along, along] })).toEqual([]);
  });

  it('are no overcut, which runs over its own start by no more than it should', () => {
    const round = (past: number): Mark => ({
      ...open([20, 20], [60, 20], [60, 60], [20, 60], [20, 20], [20 + past, 20]),
      kind: 'overcut',
    });
    expect(found({ cut: [round(knife.blade.overcutMm)] })).toEqual([]);
    expect(found({ cut: [round(5)] })[0]).toMatchObject({ severity: 'warning', measured: 5 });
  });
});

describe('open cuts', () => {
  const cut = { cubics: line([20, 30], [80, 30], [80, 60]), closed: false };

  it('are errors unless they say why', () => {
    const [found, ...rest] = ofRule('open-cut', [jobWith({ cut: [cut] })], knife);
    expect(rest).toEqual([]);
    expect(found).toMatchObject({
      severity: 'error',
      where: { piece: 'quay', sheet: 'sheet-01', x: 20, y: 30 },
    });
    for (const kind of ['nib', 'overcut', 'shared', 'perforation', 'slit'] as const)
      expect(ofRule('open-cut', [jobWith({ cut: [{ ...cut, kind }] })], knife)).toEqual([]);
  });

  it('are none of scores', () => {
    expect(ofRule('open-cut', [jobWith({ detail: [cut] })], knife)).toEqual([]);
  });
});

describe('paths off the bed', () => {
  /** A square of 20 mm whose left edge lies at x on a sheet 210 x 297 mm. */
  const at = (x: number, y: number, process: Process) =>
    ofRule(
      'off-bed',
      [jobWith({ cut: [closed(rectangle(x, y, 20, 20).contours[0])] }, process)],
      process,
    );
  const bed = (changes: Partial<Process['bed']>): Process => ({
    ...knife,
    bed: { ...knife.bed, ...changes },
  });

  it('are errors from the margin on', () => {
    expect(at(2, 2, knife)).toEqual([]);
    expect(at(1.5, 40, knife)[0]).toMatchObject({
      severity: 'error',
      measured: 0.5,
      where: { piece: 'quay', sheet: 'sheet-01', x: 11.5, y: 50 },
    });
    // The sheet hangs over a bed 200 mm wide by 10 mm, the path by 190 + 20 - 198 mm.
    expect(at(190, 40, bed({ widthMm: 200 })).map((f) => [f.severity, f.measured])).toEqual([
      ['error', 12],
      ['warning', 10],
    ]);
    expect(at(178, 40, bed({ widthMm: 200 })).map((f) => f.severity)).toEqual(['warning']);
  });

  it.each([
    ['a beam', laser],
    ['a blade that the file swings', { ...knife, blade: { ...knife.blade, compensate: true } }],
  ])('are not laid out: %s runs round pieces at the very margin', (_, process: Process) => {
    const wide: Process = { ...process, bed: { ...process.bed, marginMm: 12 } };
    const { sheets } = nest([plainPiece('quay', 120, 90)], wide);
    const jobs = sheets.map((sheet) => sheetJob(sheet, { process: wide, ballMm: 1 }));
    expect(jobs).toHaveLength(1);
    expect(ofRule('off-bed', jobs, wide)).toEqual([]);
  });

  it('follow the corner that the sheet lies in', () => {
    const small = { widthMm: 200, heightMm: 280 };
    const off = (origin: Process['bed']['origin']) =>
      [at(5, 5, bed({ ...small, origin })), at(178, 255, bed({ ...small, origin }))].map((found) =>
        found.filter(({ severity }) => severity === 'error').map(({ measured }) => measured),
      );
    expect(off('top left')).toEqual([[], []]);
    // The sheet then reaches 10 mm over the left edge, or 17 mm over the top.
    expect(off('top right')).toEqual([[7], []]);
    expect(off('bottom left')).toEqual([[14], []]);
    expect(off('bottom right')).toEqual([[14], []]);
  });

  it('are told of a sheet too large for the bed', () => {
    const found = ofRule('off-bed', [jobOf(gate, knife, A2)], knife);
    // The ring of its relief lies 47 to 63 mm from the sheet's left edge; turned over, 357 to 373.
    // The head reaches 303, and the ball of 1 mm keeps to its ring's inside.
    expect(found.map(({ severity, measured }) => [severity, measured])).toEqual([
      ['error', 69.5],
      ['warning', 594 - 305],
    ]);
  });
});

describe('edges that are cut once', () => {
  const piece = plainPiece('quay', 198, 100);
  const placements = [
    { piece, dx: 6, dy: 6, copy: 1 },
    { piece, dx: 6, dy: 106, copy: 2 },
  ];
  const found = (process: Process) =>
    ofRule(
      'shared-edge',
      [sheetJob(sheetOf('sheet-01', A4, placements, process), { process, ballMm: 1 })],
      process,
    );

  it('are told with what they cost: half the kerf of either piece', () => {
    const [told, ...rest] = found({ ...laser, sharedEdges: true });
    expect(rest).toEqual([]);
    expect(told).toMatchObject({ severity: 'hint', measured: laser.kerfMm / 2 });
    expect(told.message).toMatch(/^1 edge is cut once .* of quay \(1\) and quay \(2\) on sheet-01/);
    expect(found(laser)).toEqual([]);
  });
});

describe('scorched lace', () => {
  /** A grid of round holes, `apart` mm from middle to middle, over a square of 40 mm. */
  const lace = (apart: number, process: Process = laser) => {
    const count = 40 / apart;
    const holes = Array.from({ length: count ** 2 }, (_, i) =>
      closed(
        hole(
          circle(30 + ((i % count) + 0.5) * apart, 20 + (Math.floor(i / count) + 0.5) * apart, 1),
        ),
      ),
    );
    return ofRule('scorched-lace', [jobWith({ cut: holes }, process)], process);
  };

  it('is told with its densest place', () => {
    // 2 pi mm of cut to each hole: 1.57 mm to the mm2 at 2 mm, 0.98 at 2.53, 0.39 at 4 mm.
    const [found, ...rest] = lace(2.5, { ...laser, heat: { ...laser.heat, densestPerMm: 0.95 } });
    expect(rest).toEqual([]);
    expect(found).toMatchObject({ severity: 'warning', wanted: 0.95, unit: 'mm/mm2' });
    expect(found.measured / ((2 * Math.PI) / 2.5 ** 2)).toBeCloseTo(1, 1);
    const { x = 0, y = 0 } = found.where;
    expect(x).toBeGreaterThan(35);
    expect(x).toBeLessThan(65);
    expect(y).toBeGreaterThan(25);
    expect(y).toBeLessThan(55);
  });

  it('is let be just below the limit, and by other processes', () => {
    expect(lace(2.5, { ...laser, heat: { ...laser.heat, densestPerMm: 1.2 } })).toEqual([]);
    expect(lace(4)).toEqual([]);
    expect(lace(2)).toHaveLength(1);
    expect(lace(2, knife)).toEqual([]);
  });

  it('is none of a small piece with little cut in all', () => {
    const dot = closed(circle(40, 40, 4).contours[0]);
    expect(ofRule('scorched-lace', [jobWith({ cut: [dot] }, laser)], laser)).toEqual([]);
  });
});

describe('work on a face that the process does not reach', () => {
  const frontOnly = { ...knife, faces: ['front'] } as const;
  const found = (piece: Piece, process: Process) =>
    ofRule('wrong-face', [jobOf(piece, process)], process);

  it('is an error for raised relief', () => {
    const [relief, ...rest] = found(gate, frontOnly);
    expect(rest).toEqual([]);
    expect(relief).toMatchObject({
      severity: 'error',
      where: { piece: 'panel-02', sheet: 'sheet-01' },
      measured: 2,
    });
    expect(relief.message).toMatch(/belong on its back, but this process works the front only/);
    expect(found(gate, knife)).toEqual([]);
  });

  it('is a warning for valleys, unless they are perforated or all scored from the front', () => {
    const strip = spine('spine-left', 6);
    expect(found(strip, frontOnly)).toMatchObject([{ severity: 'warning', measured: 4 }]);
    expect(found({ ...strip, scoring: 'front' }, frontOnly)).toEqual([]);
    const perforating: Process = {
      ...frontOnly,
      folds: { how: 'perforation', cutMm: 2, tieMm: 1 },
    };
    expect(found(strip, perforating)).toEqual([]);
  });

  it('is sunk relief where only the back is worked', () => {
    const sunk = { ...sky, reliefs: sky.reliefs.map((r) => ({ ...r, side: 'sunk' as const })) };
    const backOnly = { ...knife, faces: ['back'] } as const;
    expect(found(sunk, backOnly)[0]).toMatchObject({ severity: 'error', measured: 1 });
    expect(found(sky, backOnly)).toEqual([]);
  });
});

describe('details too fine for a dragged blade', () => {
  const withHole = (contour: Cubics): Piece => {
    const quay = plainPiece('quay', 120, 90);
    return { ...quay, card: { contours: [...quay.card.contours, contour] } };
  };
  const found = (piece: Piece, offsetMm = 0.25) => {
    const process: KnifeProcess = { ...knife, blade: { ...knife.blade, offsetMm } };
    return ofRule('blunt-detail', [jobOf(piece, process)], process);
  };

  // Holes of eight offsets at least: common practice, no source.
  it('are told of holes smaller than eight offsets across', () => {
    const [small, ...rest] = found(withHole(hole(circle(30, 40, 0.9))));
    expect(rest).toEqual([]);
    expect(small).toMatchObject({ severity: 'warning', measured: 1.8, wanted: 2 });
    expect(small.where).toEqual({ piece: 'quay', x: 30, y: 40 });
    expect(found(withHole(hole(circle(30, 40, 1.01))))).toEqual([]);
    expect(found(withHole(hole(circle(30, 40, 0.9))), 0.2)).toEqual([]);
  });

  it('are told of runs that the blade does not come into line on', () => {
    // Travel until a tip is back within 0.05 mm after 90 degrees, offset 0.25 mm: 0.573 mm, by the
    // tractrix (curve tables, from memory).
    const [short] = found(withHole(hole(rectangle(30, 40, 20, 0.5))));
    expect(short).toMatchObject({ severity: 'hint', measured: 0.5, wanted: 0.57 });
    expect(short.message).toMatch(/^2 runs/);
    expect(found(withHole(hole(rectangle(30, 40, 20, 0.6))))).toEqual([]);
  });

  it('say nothing of a laser', () => {
    const piece = withHole(hole(circle(30, 40, 0.9)));
    expect(ofRule('blunt-detail', [jobOf(piece, laser)], laser)).toEqual([]);
  });
});

describe('nibs', () => {
  it('are told of where they show, and not on plain edges', () => {
    const shown = (piece: Piece) => ofRule('nib-shows', [jobOf(piece, laser)], laser);
    const [found, ...rest] = shown(gate);
    expect(rest).toEqual([]);
    expect(found).toMatchObject({ severity: 'hint', unit: 'parts' });
    expect(found.measured).toBeGreaterThan(0);
    expect(shown(plainPiece('quay', 120, 90))).toEqual([]);
  });

  it('are missed where only scenery is round a part', () => {
    const moon: Piece = {
      ...plainPiece('moon', 30, 30),
      folder: 'loose',
      card: circle(15, 15, 14),
    };
    const [found] = ofRule('nib-missing', [jobOf(moon, laser)], laser);
    expect(found).toMatchObject({ severity: 'hint', measured: 1 });
    expect(found.where.piece).toBe('moon');
    expect(ofRule('nib-missing', [jobOf(plainPiece('quay', 120, 90), laser)], laser)).toEqual([]);
  });
});

describe('holes that the beam has no room in', () => {
  it('are told, and none that it has', () => {
    const quay = plainPiece('quay', 120, 90);
    const lost = (radius: number) => {
      const card = { contours: [...quay.card.contours, hole(circle(30, 40, radius))] };
      return ofRule('lost-hole', [jobOf({ ...quay, card }, laser)], laser);
    };
    expect(lost(0.08)).toMatchObject([{ severity: 'warning', where: { piece: 'quay' } }]);
    expect(lost(0.15)).toEqual([]);
  });
});
