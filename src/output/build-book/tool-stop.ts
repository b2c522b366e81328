import type { Face } from '../../process/layers.js';
import type { Process, WorkedOperation } from '../../process/process.js';

/** A step as the one at the machine sees it. */
export interface Worked {
  readonly face: Face;
  readonly operation: WorkedOperation;
}

/** What each operation is done with; what has no tool of its own is a setting. */
const TOOLS: Readonly<Record<Process['kind'], Readonly<Record<WorkedOperation, string>>>> = {
  knife: {
    emboss: 'the ball tool',
    fold: 'the scoring stylus',
    detail: 'the scoring stylus, lighter',
    cut: 'the blade',
  },
  laser: { emboss: 'the beam', fold: 'the beam', detail: 'the beam', cut: 'the beam' },
  press: {
    emboss: 'the relief dies',
    fold: 'the creasing dies',
    detail: 'the fine creasing dies',
    cut: 'the cutting dies',
  },
};

/** What has to be done at the machine before a step of a sheet; '' where it runs straight on. */
export function toolStop({ kind }: Process, step: Worked, before: Worked | undefined): string {
  const tools = TOOLS[kind];
  const tool = tools[step.operation];
  const turn =
    before === undefined
      ? `Lay up the sheet, ${step.face} up`
      : before.face === step.face
        ? ''
        : `Turn over left to right, ${step.face} up`;
  const isLaser = kind === 'laser';
  const change =
    isLaser || (before !== undefined && tools[before.operation] === tool) ? '' : `fit ${tool}`;
  const all = [turn, change].filter((part) => part !== '').join('; ');
  return all.charAt(0).toUpperCase() + all.slice(1);
}
