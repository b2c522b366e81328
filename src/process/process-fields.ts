import { z } from 'zod';
import type { Range } from '../scene/bounds.js';
import { choice, group, length, number, text, wants, whole } from '../scene/fields.js';
import { LAYER_COLOURS } from '../scene/layer-colours.js';
import type { ProcessLimits, Unit } from '../scene/scene.js';
import { colourField } from '../scene/stock-schema.js';
import { quote } from '../scene/words.js';
import type { Face } from './layers.js';
import {
  type Bed,
  CORNERS,
  type FoldStyle,
  type Motion,
  type Nibs,
  type OperationSettings,
  type Rates,
  type WorkedOperation,
} from './process.js';
import { CURRENCY_CHARACTERS, MOST_QUANTITIES, PROCESS_BOUNDS } from './process-bounds.js';

// The keys that processes of every kind have, or most; each takes the starting value given.

const WORKED = ['emboss', 'fold', 'detail', 'cut'] as const satisfies readonly WorkedOperation[];
const FACES = ['front', 'back'] as const satisfies readonly Face[];

export const lengthField = (unit: Unit, range: Range, startMm: number, description: string) =>
  length(unit, range).prefault(`${startMm} mm`).meta({ description });

const numberField = (range: Range, sign: string, start: number, description: string) =>
  number(range, sign).default(start).meta({ description });

export function smallestField(unit: Unit, start: ProcessLimits) {
  const smallest = (mm: number, says: string) =>
    lengthField(unit, PROCESS_BOUNDS.smallest, mm, says);
  return group('smallest', {
    web: smallest(start.smallestWeb, 'Narrowest card to leave between two cuts.'),
    slot: smallest(start.smallestSlot, 'Narrowest gap to cut between two edges of card.'),
    hole: smallest(start.smallestHole, 'Smallest diameter of a hole.'),
  })
    .prefault({})
    .meta({ description: 'The finest that comes out clean and holds: scenery is drawn to it.' });
}

export function bedField(unit: Unit, start: Bed) {
  const side = (mm: number, says: string) => lengthField(unit, PROCESS_BOUNDS.bedSide, mm, says);
  return group('bed', {
    width: side(start.widthMm, 'Width of the mat or bed.'),
    height: side(start.heightMm, 'Its height, away from you.'),
    margin: lengthField(
      unit,
      PROCESS_BOUNDS.bedMargin,
      start.marginMm,
      'Kept free at its edges: no path comes nearer.',
    ),
    origin: choice(CORNERS)
      .default(start.origin)
      .meta({ description: `Where sheets are laid up: ${CORNERS.join(', ')}.` }),
  })
    .superRefine(({ width, height, margin }, context) => {
      if (Math.min(width, height) > 2 * margin) return;
      const message = `the margins leave nothing of a bed ${width} x ${height} mm`;
      context.addIssue({ code: 'custom', path: ['margin'], message });
    })
    .prefault({})
    .meta({ description: 'The mat or bed that a sheet lies on.' });
}

export function facesField(start: readonly Face[]) {
  return z
    .array(choice(FACES), { error: wants('a list of the faces, such as [front, back]') })
    .refine((faces) => faces.length > 0 && new Set(faces).size === faces.length, {
      error: 'name each face once: [front, back], or the one that can be worked',
    })
    .default([...start])
    .meta({
      description:
        'The faces of the card that can be worked: both, where card is turned over to the same stops.',
    });
}

/** Anything but a full list that ends with the cut is refused: the cut frees the pieces. */
export function orderField(start: readonly WorkedOperation[]) {
  const list = WORKED.join(', ');
  return z
    .array(choice(WORKED), { error: wants(`a list of ${list} in working order`) })
    .superRefine((order, context) => {
      const missing = WORKED.filter((operation) => !order.includes(operation));
      const twice = order.find((operation, i) => order.indexOf(operation) < i);
      const say = (message: string) => context.addIssue({ code: 'custom', message });
      if (twice !== undefined) say(`${quote(twice)} stands here twice; name each of ${list} once`);
      else if (missing.length > 0)
        say(`it leaves out ${missing.join(' and ')}; name each of ${list}`);
      else if (order.at(-1) !== 'cut') {
        say('the cut must come last, because it frees the pieces from their sheet');
      }
    })
    .default([...start])
    .meta({
      description: 'What is done first and what last; the cut frees the pieces: it is last.',
    });
}

export function operationsField(start: Readonly<Record<WorkedOperation, OperationSettings>>) {
  const operation = (name: WorkedOperation) =>
    group(`the operation ${name}`, {
      passes: whole(PROCESS_BOUNDS.passes)
        .default(start[name].passes)
        .meta({ description: 'How often each line is gone over.' }),
      speed: numberField(
        PROCESS_BOUNDS.speedMmS,
        ' mm/s',
        start[name].speedMmS,
        'Speed along the line in mm/s.',
      ),
      stroke: colourField()
        .optional()
        .meta({
          description: `Colour of its lines in the files; ours is ${LAYER_COLOURS[name]}. The scene's own come before it.`,
        }),
    })
      .prefault({})
      .meta({ description: `How the ${name} lines are run.` });
  return group('operations', {
    emboss: operation('emboss'),
    fold: operation('fold'),
    detail: operation('detail'),
    cut: operation('cut'),
  })
    .prefault({})
    .meta({
      description:
        'Of each operation: passes, how often each line is gone over; speed in mm/s; stroke, the ' +
        'colour of its lines in the files ("#7a1f4b"; the strokes of a scene come before it).',
    });
}

export function motionField(unit: Unit, start: Motion) {
  return group('motion', {
    travel: numberField(
      PROCESS_BOUNDS.speedMmS,
      ' mm/s',
      start.travelMmS,
      'Speed between two paths in mm/s.',
    ),
    acceleration: numberField(
      PROCESS_BOUNDS.accelerationMmS2,
      ' mm/s2',
      start.accelerationMmS2,
      'In mm/s2.',
    ),
    lift: numberField(
      PROCESS_BOUNDS.liftS,
      ' seconds',
      start.liftS,
      'Lifting and setting down the tool, or switching the beam, in seconds for each path.',
    ),
    corner: lengthField(
      unit,
      PROCESS_BOUNDS.corner,
      start.cornerMm,
      'How far a corner may be rounded at speed: more is faster.',
    ),
    stop: numberField(
      PROCESS_BOUNDS.stopS,
      ' seconds',
      start.stopS,
      'Changing the tool, or turning the sheet over, in seconds.',
    ),
  })
    .prefault({})
    .meta({ description: 'How the head moves: running order and time follow from it.' });
}

export function foldsField(unit: Unit, start: FoldStyle) {
  const stretch = (says: string) =>
    length(unit, PROCESS_BOUNDS.perforation).meta({ description: says });
  const perforation = group('a perforation', {
    cut: stretch('Length of each short cut.'),
    tie: stretch('Card left between two of them.'),
  }).transform(({ cut, tie }): FoldStyle => ({ how: 'perforation', cutMm: cut, tieMm: tie }));
  const line = choice(['line']).transform((): FoldStyle => ({ how: 'line' }));
  return z
    .union([line, perforation], {
      error: wants('line, or a perforation such as { cut: 2, tie: 1 }'),
    })
    .prefault(sayFolds(start))
    .meta({
      description: 'line: one light line. { cut: 2 mm, tie: 1 mm }: short cuts with ties between.',
    });
}

/** A style of folds as the file says it. */
export const sayFolds = (folds: FoldStyle) =>
  folds.how === 'line' ? ('line' as const) : { cut: `${folds.cutMm} mm`, tie: `${folds.tieMm} mm` };

export function nibsField(unit: Unit, start: Nibs) {
  return group('nibs', {
    count: whole(PROCESS_BOUNDS.nibs)
      .default(start.count)
      .meta({ description: 'To each closed cut; 0 for none.' }),
    width: lengthField(unit, PROCESS_BOUNDS.nib, start.widthMm, 'Width of each.'),
  })
    .prefault({})
    .meta({ description: 'Uncut bits that hold a part in its sheet.' });
}

export function ratesField(start: Rates) {
  const price = (value: number, description: string) =>
    numberField(PROCESS_BOUNDS.price, '', value, description);
  return group('rates', {
    currency: text(CURRENCY_CHARACTERS)
      .optional()
      .meta({ description: 'Written before the sums, such as EUR.' }),
    'set-up': price(start.setUp, 'For each order, whatever its size.'),
    hour: price(start.hour, 'For each hour that the machine runs.'),
    sheet: price(start.sheet, 'For each sheet of card.'),
    quantities: z
      .array(whole(PROCESS_BOUNDS.quantity), { error: wants('a list such as [1, 6, 12]') })
      .min(1, { error: 'name at least one number of copies, such as [1]' })
      .max(MOST_QUANTITIES, { error: `${MOST_QUANTITIES} numbers of copies at most` })
      .default([...start.quantities])
      .meta({ description: 'Copies of the book that a quote lists.' }),
  })
    .prefault({})
    .meta({ description: 'Your own prices; nothing is priced while all are 0.' });
}
