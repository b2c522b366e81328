import { z } from 'zod';
import { DEFAULTS } from '../scene/defaults.js';
import { choice, flag, group, number, sayWrongKind } from '../scene/fields.js';
import { PROCESSES, type ProcessName, UNITS, type Unit } from '../scene/scene.js';
import { notAmong } from '../scene/words.js';
import { ENGRAVINGS, type ProcessBase, STYLUS_HATCHES } from './process.js';
import { PROCESS_BOUNDS } from './process-bounds.js';
import {
  bedField,
  facesField,
  foldsField,
  lengthField,
  motionField,
  nibsField,
  operationsField,
  orderField,
  ratesField,
  smallestField,
} from './process-fields.js';
import { STARTING } from './starting.js';

// The settings files, one schema for each kind of process: a key that would do nothing for a kind is
// none of its keys. What is left out takes our starting value.

export type KnifeSaid = z.output<ReturnType<typeof knifeSchema>>;
export type LaserSaid = z.output<ReturnType<typeof laserSchema>>;
export type PressSaid = z.output<ReturnType<typeof pressSchema>>;
/** A settings file as read: lengths in mm, starting values filled in. */
export type ProcessSaid = KnifeSaid | LaserSaid | PressSaid;

export function processSchema(kind: ProcessName, unit: Unit) {
  switch (kind) {
    case 'knife':
      return knifeSchema(unit);
    case 'laser':
      return laserSchema(unit);
    case 'press':
      return pressSchema(unit);
  }
}

/** The JSON Schema (draft 2020-12) of settings files, for editors. */
export function processJsonSchema(): object {
  const kinds = PROCESSES.map((kind) => processSchema(kind, DEFAULTS.unit));
  const schema = z.union(kinds).meta({
    title: 'Process',
    description: 'The settings of one machine for one kind of card.',
  });
  return z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'input' });
}

function knifeSchema(unit: Unit) {
  const start = STARTING.knife;
  const { blade, relief } = start;
  return group('the settings of a knife', {
    ...heading('knife'),
    blade: group('blade', {
      offset: lengthField(
        unit,
        PROCESS_BOUNDS.blade,
        blade.offsetMm,
        'How far the tip trails the axis that it swivels on.',
      ),
      overcut: lengthField(
        unit,
        PROCESS_BOUNDS.overcut,
        blade.overcutMm,
        'How far a closed cut runs on past its start.',
      ),
      compensate: flag().default(blade.compensate).meta({
        description:
          'true: the files swing the blade round corners, for machines that do not do it themselves.',
      }),
    })
      .prefault({})
      .meta({ description: 'The drag blade.' }),
    ...common(unit, start),
    folds: foldsField(unit, start.folds),
    nibs: nibsField(unit, start.nibs),
    relief: group('relief', {
      how: choice(STYLUS_HATCHES)
        .default(relief.how)
        .meta({ description: `How areas are filled: ${STYLUS_HATCHES.join(', ')}.` }),
      angle: angleField(relief.angleDeg),
      apart: number(PROCESS_BOUNDS.apartBalls, ' balls')
        .default(relief.apartBalls)
        .meta({ description: 'From stroke to stroke, in diameters of the ball.' }),
    })
      .prefault({})
      .meta({ description: 'Relief pressed with a ball.' }),
    rates: ratesField(start.rates),
  });
}

function laserSchema(unit: Unit) {
  const start = STARTING.laser;
  const { relief, heat } = start;
  return group('the settings of a laser', {
    ...heading('laser'),
    kerf: lengthField(
      unit,
      PROCESS_BOUNDS.kerf,
      start.kerfMm,
      'Full width of what the beam burns away.',
    ),
    'shared-edges': flag().default(start.sharedEdges).meta({
      description: 'true: plain straight edges that two pieces have in common are cut once.',
    }),
    'face-down': flag().default(start.faceDown).meta({
      description: 'true: the card lies face down, mirrored, so that soot settles on its back.',
    }),
    ...common(unit, start),
    folds: foldsField(unit, start.folds),
    nibs: nibsField(unit, start.nibs),
    relief: group('relief', {
      how: choice(ENGRAVINGS)
        .default(relief.how)
        .meta({ description: `How areas are filled: ${ENGRAVINGS.join(', ')}.` }),
      angle: angleField(relief.angleDeg),
      apart: lengthField(unit, PROCESS_BOUNDS.apart, relief.apartMm, 'From line to line.'),
    })
      .prefault({})
      .meta({ description: 'Relief burnt into the face of the card.' }),
    heat: group('heat', {
      apart: lengthField(
        unit,
        PROCESS_BOUNDS.heatApart,
        heat.apartMm,
        'Two cuts one after the other keep so far apart where it can be helped.',
      ),
      densest: number(PROCESS_BOUNDS.densestPerMm, ' mm/mm2')
        .default(heat.densestPerMm)
        .meta({ description: 'Cut length in mm for each mm2 beyond which lace scorches.' }),
    })
      .prefault({})
      .meta({ description: 'What keeps fine lace from scorching.' }),
    rates: ratesField(start.rates),
  });
}

function pressSchema(unit: Unit) {
  const start = STARTING.press;
  return group('the settings of a press', {
    ...heading('press'),
    ...common(unit, start),
    rates: ratesField(start.rates),
  });
}

function heading<K extends ProcessName>(kind: K) {
  const error = ({ input }: { readonly input?: unknown }) =>
    typeof input === 'string'
      ? notAmong(input, PROCESSES)
      : sayWrongKind(input, `one of ${PROCESSES.join(', ')}`);
  return {
    kind: z
      .literal(kind, { error })
      .meta({ description: `What the card is cut with: ${PROCESSES.join(', ')}.` }),
    unit: choice(UNITS)
      .default(DEFAULTS.unit)
      .meta({ description: 'Unit of every length written as a bare number: mm, cm or in.' }),
  };
}

function common(unit: Unit, start: ProcessBase) {
  return {
    smallest: smallestField(unit, start.limits),
    clearance: lengthField(
      unit,
      PROCESS_BOUNDS.clearance,
      start.limits.scoreClearance,
      'How far a score keeps from a cut, so that the edge neither tears nor becomes a hinge.',
    ),
    bed: bedField(unit, start.bed),
    faces: facesField(start.faces),
    order: orderField(start.order),
    operations: operationsField(start.operations),
    motion: motionField(unit, start.motion),
  };
}

const angleField = (deg: number) =>
  number(PROCESS_BOUNDS.angleDeg, ' degrees')
    .default(deg)
    .meta({ description: "Of hatching, in degrees anticlockwise from the card's width." });
