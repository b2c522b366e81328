import type { Face } from '../../process/layers.js';
import { foldsThrough } from '../../process/perforation.js';
import type { Process, WorkedOperation } from '../../process/process.js';

/** A step as the one at the machine sees it. */
export interface Worked {
  readonly face: Face;
  readonly operation: WorkedOperation;
}

/** What each operation is made ready with; '' where only settings change, which the layers tell apart. */
const READY: Readonly<Record<Process['kind'], Readonly<Record<WorkedOperation, string>>>> = {
  knife: {
    emboss: 'fit the ball tool',
    fold: 'fit the stylus',
    detail: 'fit the stylus, set lighter',
    cut: 'fit the blade',
  },
  laser: { emboss: '', fold: '', detail: '', cut: '' },
  press: {
    emboss: 'lay up the relief dies',
    fold: 'lay up the creasing dies',
    detail: 'lay up the fine creasing dies',
    cut: 'lay up the cutting dies',
  },
};

/** What has to be done at the machine before a step of a sheet; '' where it runs straight on. */
export function toolStop(process: Process, step: Worked, before: Worked | undefined): string {
  const ready = readyFor(process, step);
  const isTurned = before !== undefined && before.face !== step.face;
  const isReady = before !== undefined && readyFor(process, before) === ready;
  // Soot settles on the face that lies up; tape keeps it off the other.
  const isMasked =
    process.kind === 'laser' && process.faceDown && step.face === 'back' && before?.face !== 'back';
  const words = [
    before === undefined ? 'lay down the sheet' : '',
    isTurned ? 'turn over' : '',
    isMasked ? 'front masked' : '',
    isReady ? '' : ready,
  ]
    .filter((part) => part !== '')
    .join('; ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Folds as short cuts are the blade's work. */
const readyFor = (process: Process, { operation }: Worked): string =>
  READY[process.kind][operation === 'fold' && foldsThrough(process) ? 'cut' : operation];
