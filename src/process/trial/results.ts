import type { Range } from '../../scene/bounds.js';
import { readLength } from '../../scene/length.js';
import { PROCESSES, type ProcessName } from '../../scene/scene.js';
import { quote } from '../../scene/words.js';
import { PROCESS_BOUNDS } from '../process-bounds.js';
import { sayFolds } from '../process-fields.js';
import type { Said } from '../process-text.js';
import { kerfFromComb, STRIP_MM, STRIPS } from './comb.js';
import { FOLDS_TRIED } from './folds.js';
import { HOLES, middleOf, ROOM_MM, SLOTS, SQUARE_MM, WEBS } from './ladders.js';
import { BALLS_APART, LINES_APART_MM, OFFSETS_MM, OVERCUTS_MM } from './patches.js';

/** One value of a settings file to be written. */
export interface Change {
  readonly path: readonly string[];
  readonly value: Said;
}

/** What a result comes to: settings to write, or what it tells, or why it cannot be. */
export type Outcome =
  | { readonly problem: string }
  | {
      readonly changes: readonly Change[];
      /** What was measured, for the settings file. */
      readonly measured: string;
      readonly says?: string;
    };

/** A result of a trial card that can be entered. */
export interface Result {
  readonly name: string;
  readonly kinds: readonly ProcessName[];
  /** How it is measured. */
  readonly measure: string;
  /** The keys that it sets; empty where it only tells something. */
  readonly sets: string;
  /** Of what can be read from the card. */
  readonly example: (kind: ProcessName) => string;
  readonly outcome: (said: string, kind: ProcessName) => Outcome;
}

const CUTTERS: readonly ProcessName[] = ['knife', 'laser'];

/** Three decimals: finer than anyone measures. */
const rounded = (value: number): number => Math.round(value * 1000) / 1000;

const ends = (values: readonly number[]): Range => ({
  min: Math.min(...values),
  max: Math.max(...values),
});

/** A length read from a card; what lies beyond the numbers on it cannot have been. */
function lengthOnCard(said: string, range: Range, use: (mm: number) => Outcome): Outcome {
  const reading = readLength(said, 'mm');
  if ('problem' in reading) return reading;
  const mm = rounded(reading.value);
  if (mm >= range.min && mm <= range.max) return use(mm);
  return { problem: `${quote(said)}: the card has ${range.min} to ${range.max} mm; look again` };
}

const writes =
  (path: readonly string[], measured: string) =>
  (mm: number): Outcome => ({ changes: [{ path, value: `${mm} mm` }], measured });

export const RESULTS: readonly Result[] = [
  {
    name: 'comb',
    kinds: ['laser'],
    measure: `the width of all ${STRIPS} strips pushed together`,
    sets: 'kerf',
    example: () => '98.4',
    outcome: combOutcome,
  },
  {
    name: 'web',
    kinds: PROCESSES,
    measure: 'the narrowest bar that is whole and flat',
    sets: 'smallest web',
    example: (kind) => middleOf(WEBS[kind]),
    outcome: (said, kind) =>
      lengthOnCard(said, ends(WEBS[kind]), writes(['smallest', 'web'], 'row "web"')),
  },
  {
    name: 'hole',
    kinds: PROCESSES,
    measure: 'the smallest hole that is open, round and clean',
    sets: 'smallest hole',
    example: (kind) => middleOf(HOLES[kind]),
    outcome: (said, kind) =>
      lengthOnCard(said, ends(HOLES[kind]), writes(['smallest', 'hole'], 'row "hole"')),
  },
  {
    name: 'slot',
    kinds: PROCESSES,
    measure: 'the narrowest slot that came out whole',
    sets: 'smallest slot',
    example: (kind) => middleOf(SLOTS[kind]),
    outcome: (said, kind) =>
      lengthOnCard(said, ends(SLOTS[kind]), writes(['smallest', 'slot'], 'row "slot"')),
  },
  {
    name: 'blade',
    kinds: ['knife'],
    measure: 'the number under the squarest hole',
    sets: 'blade offset',
    example: () => '0.3',
    outcome: (said) =>
      lengthOnCard(said, ends(OFFSETS_MM), (mm) => ({
        changes: [{ path: ['blade', 'offset'], value: `${mm} mm` }],
        measured: 'squarest hole',
        says: 'the files swing the blade round corners only where "compensate" is true; a machine that does so by itself wants this number as its own setting.',
      })),
  },
  {
    name: 'overcut',
    kinds: ['knife'],
    measure: 'the smallest number at which the square drops out clean',
    sets: 'blade overcut',
    example: () => '0.5',
    outcome: (said) =>
      lengthOnCard(said, ends(OVERCUTS_MM), writes(['blade', 'overcut'], 'least that drops out')),
  },
  {
    name: 'fold',
    kinds: CUTTERS,
    measure: 'the number of the first strip that folds straight and holds',
    sets: 'folds and the passes of the operation fold',
    example: () => '2',
    outcome: foldOutcome,
  },
  {
    name: 'emboss',
    kinds: CUTTERS,
    measure: 'the largest number whose patch still looks even',
    sets: 'relief apart',
    example: (kind) => middleOf(kind === 'knife' ? BALLS_APART : LINES_APART_MM),
    outcome: embossOutcome,
  },
  {
    name: 'fit',
    kinds: PROCESSES,
    measure: 'the number under the first slot in which the tongue slides and holds',
    sets: '',
    example: () => '0.15',
    outcome: (said) =>
      lengthOnCard(said, ends(ROOM_MM), (mm) => ({
        changes: [],
        measured: '',
        says: `draw slots ${mm} mm wider than the card is thick: ${rounded(0.3 + mm)} mm for card of 0.3 mm. No setting depends on it.`,
      })),
  },
  {
    name: 'square',
    kinds: PROCESSES,
    measure: `the side of the square, drawn ${SQUARE_MM} mm`,
    sets: '',
    example: () => '99.8',
    outcome: squareOutcome,
  },
];

function combOutcome(said: string): Outcome {
  const reading = readLength(said, 'mm');
  if ('problem' in reading) return reading;
  const kerf = rounded(kerfFromComb(reading.value));
  const drawn = STRIPS * STRIP_MM;
  const { min, max } = PROCESS_BOUNDS.kerf;
  if (kerf < min) {
    const problem = `${quote(said)}: the strips were drawn ${drawn} mm wide together and cannot have grown; push them close without buckling and measure again`;
    return { problem };
  }
  if (kerf > max) {
    const problem = `${quote(said)}: that would be a kerf of ${kerf} mm, more than a beam in focus burns (${max} mm at most). Are all ${STRIPS} strips there, and is it in mm?`;
    return { problem };
  }
  return {
    changes: [{ path: ['kerf'], value: `${kerf} mm` }],
    measured: `${STRIPS} strips came to ${rounded(reading.value)} mm`,
  };
}

function foldOutcome(said: string): Outcome {
  const tried = FOLDS_TRIED[Number(said) - 1];
  if (tried === undefined || !/^\d+$/.test(said)) {
    return { problem: `${quote(said)}: the strips are numbered 1 to ${FOLDS_TRIED.length}` };
  }
  return {
    changes: [
      { path: ['folds'], value: sayFolds(tried.folds) },
      { path: ['operations', 'fold', 'passes'], value: tried.passes },
    ],
    measured: `strip ${said} folds and holds`,
  };
}

function embossOutcome(said: string, kind: ProcessName): Outcome {
  const path = ['relief', 'apart'];
  const measured = 'largest that looks even';
  if (kind === 'laser') return lengthOnCard(said, ends(LINES_APART_MM), writes(path, measured));
  const { min, max } = ends(BALLS_APART);
  const balls = Number(said);
  if (said.trim() === '' || !(balls >= min && balls <= max)) {
    return { problem: `${quote(said)}: the card has ${min} to ${max} diameters of the ball` };
  }
  return { changes: [{ path, value: balls }], measured };
}

/** More than this is no error of scale but a slip in measuring, mm. */
const MOST_OFF_MM = 10;
/** What a steel rule shows, mm. */
const SEEN_MM = 0.1;

function squareOutcome(said: string): Outcome {
  const reading = readLength(said, 'mm');
  if ('problem' in reading) return reading;
  const off = rounded(reading.value - SQUARE_MM);
  if (Math.abs(off) > MOST_OFF_MM) {
    const problem = `${quote(said)}: the square was drawn ${SQUARE_MM} mm wide; measure again, in mm`;
    return { problem };
  }
  const size = Math.abs(off);
  const says =
    size <= SEEN_MM
      ? 'true to size, as far as a rule shows.'
      : `${size} mm too ${off < 0 ? 'small' : 'large'}, ${rounded((100 * size) / SQUARE_MM)} %. Nothing is scaled: first see that the file was opened at true size and that kerf or blade are entered, then set the machine's own scale by its manual, and cut the square again.`;
  return { changes: [], measured: '', says };
}
