import { pen, regionOf } from '../../geometry/pen.js';
import { circle, rectangle, roundedRectangle } from '../../geometry/primitives.js';
import type { Region } from '../../geometry/types.js';
import type { Score } from '../../panel/score.js';
import type { ProcessName } from '../../scene/scene.js';
import type { Process } from '../process.js';
import { label, pierced, type TrialCard, type TrialMeans, trialPiece } from './card.js';

// One card 100 mm square with a row of webs, of holes, of slots and of slots to fit a tongue in.

export const SQUARE_MM = 100;
const LEFT_MM = 6;
/** Where rows begin, right of their names, and how far they run. */
const ROW = { x: 21, width: 73 };
/** The windows at the ends of the row of webs run on so far. */
const WEB_OVERHANG_MM = 1.5;
/** From the foot of what is cut to the baseline of its label. */
const LABEL_BELOW_MM = 5;

type Ladder = Readonly<Record<ProcessName, readonly number[]>>;

export const WEBS: Ladder = {
  knife: [0.6, 0.8, 1, 1.2, 1.5, 2, 2.5, 3],
  laser: [0.4, 0.5, 0.6, 0.8, 1, 1.2, 1.5, 2],
  press: [1, 1.5, 2, 2.5, 3, 4],
};
export const HOLES: Ladder = {
  knife: [0.8, 1, 1.5, 2, 2.5, 3, 4],
  laser: [0.5, 0.6, 0.8, 1, 1.5, 2, 3, 4],
  press: [1.5, 2, 2.5, 3, 4, 5],
};
export const SLOTS: Ladder = {
  knife: [0.4, 0.6, 0.8, 1, 1.5, 2, 3],
  laser: [0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.5, 2],
  press: [1, 1.5, 2, 2.5, 3, 4],
};
/** Room beyond the card's thickness; 0.1 to 0.2 is common practice, no source. */
export const ROOM_MM = [0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3];

const TONGUE = { width: 10, length: 12 };

/** A row of openings with a label under each. */
interface Row {
  readonly openings: readonly Region[];
  readonly scores: readonly Score[];
}

export function squareCard({ process, stock }: TrialMeans): TrialCard {
  const t = stock.caliperMm;
  const rows = [
    webRow(WEBS[process.kind], 14),
    holeRow(HOLES[process.kind], 42),
    slotRow('slot', beyondKerf(SLOTS[process.kind], 0, process), 0, 55, 12),
    slotRow('fit', beyondKerf(ROOM_MM, t, process), t, 78, TONGUE.width + 0.6),
  ];
  const card = pierced(
    rectangle(0, 0, SQUARE_MM, SQUARE_MM),
    rows.flatMap(({ openings }) => openings),
  );
  const heading = [
    ...label(`${SQUARE_MM} mm square`, LEFT_MM, 9, { anchor: 'left' }),
    ...label(drawable(process.name), SQUARE_MM - LEFT_MM, 9, { anchor: 'right' }),
  ];
  const scores = [...heading, ...rows.flatMap((row) => row.scores)];
  const loose = withoutNibs(process);
  return {
    title: 'Square: size, webs, holes, slots, fit',
    says: squareSays(t, process.kind),
    pieces: [
      { piece: trialPiece('square', stock, card, { scores }), process: loose },
      {
        piece: trialPiece('tongue', stock, tongue(), { scores: label('fit', 10, 9) }),
        process: loose,
      },
    ],
  };
}

/** An example of what may be read from a row. */
export const middleOf = (values: readonly number[]): string =>
  String(values[Math.floor(values.length / 2)]);

const squareSays = (caliperMm: number, kind: ProcessName): readonly string[] => [
  `The card itself is ${SQUARE_MM} mm square. Measure it both ways. Enter the worse, for example: square=99.8. You are told what that means; nothing is scaled in silence.`,
  `Row "web": bars of card between windows, their widths under them in mm. Rub a finger over them. Enter the narrowest that is whole and flat${kind === 'laser' ? ' and not scorched' : ''}, for example: web=${middleOf(WEBS[kind])}`,
  `Row "hole": enter the smallest that is open, round and clean, for example: hole=${middleOf(HOLES[kind])}`,
  `Row "slot": enter the narrowest that came out whole, for example: slot=${middleOf(SLOTS[kind])}`,
  `Row "fit": slots as wide as the card is thick (taken to be ${caliperMm} mm; --caliper says otherwise) and the number under each in mm more. Try the tongue in them. Enter the number under the first in which it slides and holds, for example: fit=0.15. You are told how wide to draw slots; no setting depends on it.`,
];

/** Nibs in holes as small as these would say nothing of the holes. */
function withoutNibs(process: Process): Process {
  if (process.kind === 'press') return process;
  return { ...process, nibs: { ...process.nibs, count: 0 } };
}

/** Whatever is no wider than the beam leaves no closed path to cut. */
function beyondKerf(widths: readonly number[], addedMm: number, process: Process): number[] {
  const kerf = process.kind === 'laser' ? process.kerfMm : 0;
  return widths.filter((width) => width + addedMm >= kerf + 0.05);
}

const rowName = (name: string, y: number): Score[] => label(name, LEFT_MM, y, { anchor: 'left' });

/** Bars of card `widths` wide, evenly spaced between windows that fill the rest of the row. */
function webRow(widths: readonly number[], y: number): Row {
  const height = 14;
  const at = middles(widths.length);
  const openings: Region[] = [];
  let left = ROW.x - WEB_OVERHANG_MM;
  for (const [i, width] of widths.entries()) {
    const right = at[i] - width / 2;
    openings.push(roundedRectangle(left, y, right - left, height, 1));
    left = right + width;
  }
  openings.push(roundedRectangle(left, y, ROW.x + ROW.width + WEB_OVERHANG_MM - left, height, 1));
  return {
    openings,
    scores: [
      ...rowName('web', y + height / 2 + 1),
      ...widths.flatMap((w, i) => label(String(w), at[i], y + height + LABEL_BELOW_MM)),
    ],
  };
}

/** The middles of so many equal stretches of the row. */
const middles = (count: number): number[] =>
  Array.from({ length: count }, (_, i) => ROW.x + (ROW.width * (i + 0.5)) / count);

function holeRow(diameters: readonly number[], y: number): Row {
  const at = middles(diameters.length);
  const foot = y + Math.max(...diameters) / 2;
  return {
    openings: diameters.map((diameter, i) => circle(at[i], y, diameter / 2)),
    scores: [
      ...rowName('hole', y + 1),
      ...diameters.flatMap((d, i) => label(String(d), at[i], foot + LABEL_BELOW_MM)),
    ],
  };
}

/** Upright slots as wide as their labels say and `addedMm` more. */
function slotRow(
  name: string,
  widths: readonly number[],
  addedMm: number,
  y: number,
  length: number,
): Row {
  const at = middles(widths.length);
  return {
    openings: widths.map((width, i) =>
      rectangle(at[i] - (width + addedMm) / 2, y, width + addedMm, length),
    ),
    scores: [
      ...rowName(name, y + length / 2 + 1),
      ...widths.flatMap((w, i) => label(String(w), at[i], y + length + LABEL_BELOW_MM)),
    ],
  };
}

/** A handle with a tongue that goes through the slots. */
const tongue = (): Region =>
  regionOf(
    pen(0, 0)
      .lineTo(20, 0)
      .lineTo(20, 14)
      .lineTo(10 + TONGUE.width / 2, 14)
      .lineTo(10 + TONGUE.width / 2, 14 + TONGUE.length)
      .lineTo(10 - TONGUE.width / 2, 14 + TONGUE.length)
      .lineTo(10 - TONGUE.width / 2, 14)
      .lineTo(0, 14)
      .close(),
  );

/** The name of the maker's file, as far as the font has its characters. */
const drawable = (name: string): string => name.replace(/[^\w .-]/g, '-').slice(0, 24);
