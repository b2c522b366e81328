import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import { STARTING } from '../../src/process/starting.js';
import { offcuts } from '../../src/sheet/offcuts.js';
import { type Placement, sheetOf } from '../../src/sheet/sheet.js';
import { jtsRegion } from '../geometry/reference.js';
import { A4, plainPiece } from '../process/lock-pieces.js';
import { placedCards } from './sound.js';

const sheet = (...placements: Omit<Placement, 'copy'>[]) =>
  sheetOf(
    'sheet-01',
    A4,
    placements.map((p) => ({ ...p, copy: 1 })),
    STARTING.knife,
  );

const piece = (width: number, height: number) => plainPiece('panel-01', width, height);

describe('offcuts', () => {
  it('are what a panel leaves of A4, margins and all', () => {
    // 210 x 297 mm, ISO 216. Outlines on whole millimetres touch the cells beside them.
    const found = offcuts(sheet({ piece: piece(187, 135), dx: 6, dy: 6 }));
    expect(found).toEqual([{ x: 0, y: 142, width: 210, height: 155 }]);
  });

  it('are the whole of an empty sheet', () => {
    expect(offcuts(sheet())).toEqual([{ x: 0, y: 0, width: 210, height: 297 }]);
  });

  it('leave out what is too narrow to keep', () => {
    expect(offcuts(sheet({ piece: piece(198, 285), dx: 6, dy: 6 }))).toEqual([]);
    const one = sheet({ piece: piece(198, 231), dx: 6, dy: 6 });
    expect(offcuts(one)).toEqual([]);
    expect(offcuts(one, 50)).toEqual([{ x: 0, y: 238, width: 210, height: 59 }]);
  });

  it('are found in windows too, largest first, and none overlaps another or any card', () => {
    const window = {
      ...piece(180, 150),
      card: subtract(rectangle(0, 0, 180, 150), [rectangle(20, 20, 100, 90), circle(150, 60, 25)]),
    };
    const made = sheet({ piece: window, dx: 10.5, dy: 8.25, halfTurn: true });
    const found = offcuts(made);
    expect(found).toHaveLength(2);
    const areas = found.map(({ width, height }) => width * height);
    expect(areas).toEqual(areas.toSorted((a, b) => b - a));
    // Turned by half, the window of 100 x 90 mm lies from 70.5 and 48.25 mm on.
    expect(found[1]).toEqual({ x: 71, y: 49, width: 99, height: 89 });
    const boxes = found.map((f) => jtsRegion(rectangle(f.x, f.y, f.width, f.height)));
    for (const [i, box] of boxes.entries()) {
      for (const other of [...boxes.slice(0, i), ...placedCards(made)]) {
        expect(OverlayOp.intersection(box, other).getArea()).toBeLessThan(1e-6);
      }
    }
  });
});
