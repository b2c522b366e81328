import type { Process } from '../../process/process.js';
import type { LayerColours } from '../../scene/layer-colours.js';
import type { SheetJob } from '../../sheet/job.js';
import type { Sheet } from '../../sheet/sheet.js';
import { stepName } from '../svg-files.js';
import { type Block, space } from './flow.js';
import { type Item, text } from './leaf.js';
import { heading } from './parts.js';
import { BODY, NOTE, type Paper, SOFT } from './style.js';
import { type Cell, columns, groupOf, headOf, rowOf } from './table.js';
import { toolStop, type Worked } from './tool-stop.js';
import { size } from './words.js';

const BOX_MM = 2.6;

/** Every sheet with its steps in the order in which they are done, to be ticked off. */
export function workingOrder(
  jobs: readonly SheetJob[],
  process: Process,
  colours: LayerColours,
  { left, right }: Paper,
): Block[] {
  const cols = columns(left, right, [
    { title: '', width: 6 },
    { title: 'Step', width: 9 },
    { title: 'Face', width: 12 },
    { title: 'Operation', width: 22 },
    { title: 'Before it starts', width: 0 },
    { title: 'Passes', width: 12, align: 'right' },
    { title: '', width: 5 },
    { title: 'File in sheets/by-step', width: 42, style: NOTE },
  ]);
  const head = headOf(cols);
  const groups = jobs.map(({ sheet, faces }) => {
    const steps: Worked[] = faces.flatMap(({ face, steps: done }) =>
      done.map(({ operation }) => ({ face, operation })),
    );
    const rows = steps.map((step, i) => {
      const cells: Cell[] = [
        tickBox,
        String(i + 1),
        step.face,
        swatch(step.operation, colours[step.operation]),
        toolStop(process, step, steps[i - 1]),
        String(process.operations[step.operation].passes),
        '',
        `${stepName(sheet, i + 1, step.operation, step.face)}.svg`,
      ];
      return rowOf(cols, cells, { head, keepsNext: i + 1 < steps.length });
    });
    return [groupOf(cols, sheet.name, aboutSheet(sheet), head), ...rows];
  });
  const note =
    'Work down each sheet before you take the next. Turn sheets over left to right, never head to foot.';
  return [...heading('Working order', note, left), head, ...groups.flat(), space(6)];
}

function aboutSheet({ stock, width, height, placements, mirrored }: Sheet): string {
  const copies = new Map<string, number>();
  for (const { piece } of placements) copies.set(piece.name, (copies.get(piece.name) ?? 0) + 1);
  const pieces = [...copies].map(([name, n]) => (n === 1 ? name : `${n} × ${name}`)).join(', ');
  const card = `${stock.name} ${stock.gramsPerM2} g/m², ${size(width, height)}`;
  return `${card}${mirrored ? ', all from the back' : ''}: ${pieces}`;
}

/** A box to tick. */
const tickBox = (x: number, baseline: number): readonly Item[] => [
  {
    kind: 'box',
    x,
    y: baseline - BOX_MM + 0.2,
    width: BOX_MM,
    height: BOX_MM,
    colour: SOFT,
    outlineMm: 0.2,
  },
];

/** An operation beside the colour that it has in the files. */
export const swatch =
  (operation: string, colour: string): Cell =>
  (x, baseline) => [
    { kind: 'box', x, y: baseline - 1.9, width: 1.9, height: 1.9, colour },
    text(x + 3.4, baseline, operation, BODY),
  ];
