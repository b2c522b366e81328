import { describe, expect, it } from 'vitest';
import { boundsOf, chainLength } from '../../../src/geometry/measure.js';
import type { Piece } from '../../../src/panel/piece.js';
import { forProcess } from '../../../src/process/for-process.js';
import { type Mark, moveMark, turnedOver } from '../../../src/process/layers.js';
import type { LaserProcess } from '../../../src/process/process.js';
import { type FaceJob, type SheetJob, sheetJob } from '../../../src/sheet/job.js';
import { nest } from '../../../src/sheet/nest.js';
import { sheetOf } from '../../../src/sheet/sheet.js';
import { A4, bridge, gate, plainPiece, sky, spine } from '../lock-pieces.js';
import { LASER } from './burn.js';

const FACE_UP: LaserProcess = {
  ...LASER,
  nibs: { count: 2, widthMm: 0.4 },
  folds: { how: 'perforation', cutMm: 2, tieMm: 1 },
  relief: { ...LASER.relief, how: 'none' },
};
const FACE_DOWN: LaserProcess = { ...FACE_UP, faceDown: true };

const placed = (piece: Piece, dx: number, dy: number, process: LaserProcess) => ({
  piece: forProcess(piece, process),
  dx,
  dy,
  copy: 1,
});

function jobOf(process: LaserProcess, ...pieces: readonly (readonly [Piece, number, number])[]) {
  const placements = pieces.map(([piece, dx, dy]) => placed(piece, dx, dy, process));
  return sheetJob(sheetOf('sheet-01', A4, placements, process), { process, ballMm: 1 });
}

const marksOf = (job: FaceJob | undefined, operation: string): readonly Mark[] =>
  job?.steps.find((step) => step.operation === operation)?.marks ?? [];

/** Marks by what they are and where, in an order that does not hang on how they are run. */
const described = (marks: readonly Mark[]) =>
  marks
    .map(({ cubics, kind, closed }) => {
      const { minX, minY, maxX, maxY } = boundsOf([cubics]);
      const numbers = [minX, minY, maxX, maxY, chainLength(cubics)].map((mm) => mm.toFixed(3));
      return [...numbers, kind, closed].join(' ');
    })
    .toSorted();

const facesOf = ({ faces }: SheetJob) => faces.map(({ face }) => face);

describe('a sheet that lies face down', () => {
  it('is cut from the back, the mirror image of the sheet face up', () => {
    const pieces = [
      [{ ...bridge, scores: bridge.scores.filter(({ kind }) => kind !== 'detail') }, 5, 5],
      [spine('spine-left', 10), 5, 150],
    ] as const;
    const up = jobOf(FACE_UP, ...pieces);
    const down = jobOf(FACE_DOWN, ...pieces);
    expect(facesOf(up)).toEqual(['front']);
    expect(facesOf(down)).toEqual(['back']);
    expect(down.sheet.mirrored).toBe(true);
    for (const operation of ['fold', 'cut']) {
      const front = marksOf(up.faces[0], operation);
      expect(front.length).toBeGreaterThan(2);
      const turned = front.map((mark) => moveMark(mark, turnedOver(A4.sheet.width)));
      expect(described(marksOf(down.faces[0], operation))).toEqual(described(turned));
    }
    expect(down.faces[0].register).toEqual([]);
  });

  it('keeps valleys that a light line makes, as the front shows them', () => {
    const job = jobOf({ ...FACE_DOWN, folds: { how: 'line' } }, [sky, 5, 5]);
    expect(facesOf(job)).toEqual(['back']);
    const folds = marksOf(job.faces[0], 'fold');
    expect(folds.map(({ kind }) => kind)).toEqual(['valley', 'valley']);
    // Hinges at 15 and 172 of 187 mm, on a page that lies 5 mm in and is turned over: 210 wide.
    const at = folds.map(({ cubics }) => cubics[0]).toSorted((a, b) => a - b);
    expect(at[0]).toBeCloseTo(210 - 5 - 172, 6);
    expect(at[1]).toBeCloseTo(210 - 5 - 15, 6);
  });

  it('has mountains made from the front first, and is then turned over and cut', () => {
    const job = jobOf({ ...FACE_DOWN, folds: { how: 'line' } }, [gate, 5, 5], [sky, 5, 150]);
    expect(facesOf(job)).toEqual(['front', 'back']);
    const [front, back] = job.faces;
    expect(marksOf(front, 'fold').map(({ kind }) => kind)).toEqual(['mountain', 'mountain']);
    expect(marksOf(front, 'cut')).toEqual([]);
    expect(marksOf(back, 'fold').map(({ kind }) => kind)).toEqual(['valley', 'valley']);
    expect(marksOf(back, 'cut').length).toBeGreaterThan(2);
    for (const { register } of job.faces) expect(register.length).toBeGreaterThan(0);
  });
});

describe('what the laser makes of pieces', () => {
  it('decides the faces of their sheets when they are nested', () => {
    const pieces = [spine('spine-left', 8), { ...gate, scores: [] }];
    const faces = (process: LaserProcess) =>
      nest(pieces, process).sheets.map((sheet) => [...sheet.faces]);
    // Valleys from the back, as light lines; raised relief as tone on the front.
    expect(faces(LASER)).toEqual([['back', 'front']]);
    expect(faces(FACE_UP)).toEqual([['front']]);
    expect(faces(FACE_DOWN)).toEqual([['back']]);
    expect(faces({ ...FACE_DOWN, relief: LASER.relief })).toEqual([['front', 'back']]);
    expect(nest([plainPiece('post', 9, 60)], FACE_DOWN).sheets[0].mirrored).toBe(true);
  });
});
