import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/panel/piece.js';
import type { Process } from '../../src/process/process.js';
import { STARTING } from '../../src/process/starting.js';
import { sheetJob } from '../../src/sheet/job.js';
import { nest } from '../../src/sheet/nest.js';
import { bridge, gate, plainPiece, sky } from '../process/lock-pieces.js';

const facesOf = (process: Process, ...pieces: Piece[]) =>
  sheetJob(nest(pieces, process).sheets[0], { process, ballMm: 1 }).faces;

describe('register marks', () => {
  it('are drawn where two faces are worked', () => {
    const faces = facesOf(STARTING.knife, gate);
    expect(faces.map(({ register }) => register.length)).toEqual([4, 4]);
  });

  it('are drawn where a knife first presses relief, so that the sheet can be laid up again', () => {
    for (const piece of [sky, bridge]) {
      const [face, ...more] = facesOf(STARTING.knife, piece);
      expect(more).toEqual([]);
      expect(face.steps[0].operation).toBe('emboss');
      expect(face.register).toHaveLength(4);
    }
  });

  it('are left out where one face is worked in one go', () => {
    expect(facesOf(STARTING.knife, plainPiece('spare', 60, 40))[0].register).toEqual([]);
    expect(facesOf(STARTING.laser, bridge)[0].register).toEqual([]);
    expect(facesOf(STARTING.press, bridge)[0].register).toEqual([]);
  });
});

describe('the steps of a knife', () => {
  it('press relief before folds and cut last, a step for each tool', () => {
    const [{ steps }] = facesOf(STARTING.knife, bridge);
    expect(steps.map(({ operation }) => operation)).toEqual(['emboss', 'fold', 'detail', 'cut']);
    expect(steps[3].marks.every(({ kind, closed }) => kind === 'overcut' && !closed)).toBe(true);
  });
});
