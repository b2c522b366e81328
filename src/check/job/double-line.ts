import { placeAtLength, pointOn } from '../../geometry/chain.js';
import { chainLength } from '../../geometry/measure.js';
import { doubledStretches } from '../../geometry/tidy/overlaps.js';
import type { Span } from '../../geometry/tidy/spans.js';
import type { PlacedMark } from '../../process/layers.js';
import type { Process } from '../../process/process.js';
import type { FaceJob, SheetJob } from '../../sheet/job.js';
import { type Finding, rounded } from '../finding.js';
import { byPiece, type JobRule, onSheet, sayPlace } from './job-rule.js';

/** Lines that lie nearer than this are one to a machine. */
const SAME_LINE_MM = 0.02;
/** A shorter stretch is soon over; common practice, no source. */
const LONG_MM = 2;

/** What one tool, or one strength of it, runs over twice is hurt. Relief is rubbed over anyway. */
const SETS = [
  { operations: ['cut'], says: 'cut', hurt: 'the edge tears or burns' },
  { operations: ['fold', 'detail'], says: 'scored', hurt: 'the groove may break through' },
] as const;

interface Doubled {
  readonly mark: PlacedMark;
  readonly span: Span;
}

/** Lines of one set that lie over each other on one face. */
export const doubleLine: JobRule = (job, process) =>
  job.faces.flatMap((face) =>
    SETS.filter(({ says }) => says !== 'cut' || !isSwung(process)).flatMap(
      ({ operations, says, hurt }): Finding[] => {
        const marks = face.steps
          .filter(({ operation }) => operations.some((own) => own === operation))
          .flatMap((step) => step.marks);
        const doubles = byPiece(doublesOf(marks, process), ({ mark }) => mark.piece);
        return [...doubles].map(([piece, own]) => told(job, face, piece, own, says, hurt));
      },
    ),
  );

/** The path of a blade's swivel may run over itself where the tip does not. */
const isSwung = (process: Process): boolean => process.kind === 'knife' && process.blade.compensate;

function doublesOf(marks: readonly PlacedMark[], process: Process): Doubled[] {
  const stretches = doubledStretches(marks, SAME_LINE_MM);
  return marks.flatMap((mark, k) =>
    stretches[k].filter((span) => !isOvercut(mark, span, process)).map((span) => ({ mark, span })),
  );
}

/** A cut that runs on past its start does so over it. */
function isOvercut({ cubics, kind }: PlacedMark, { from, to }: Span, process: Process): boolean {
  if (kind !== 'overcut' || process.kind !== 'knife') return false;
  const { overcutMm, offsetMm } = process.blade;
  const length = chainLength(cubics);
  return to > length - offsetMm - SAME_LINE_MM && to - from <= overcutMm + offsetMm + SAME_LINE_MM;
}

function told(
  job: SheetJob,
  face: FaceJob,
  piece: string,
  doubles: readonly Doubled[],
  says: string,
  hurt: string,
): Finding {
  const lengthOf = ({ span }: Doubled) => span.to - span.from;
  const sum = rounded(doubles.reduce((mm, double) => mm + lengthOf(double), 0));
  const longest = doubles.reduce((a, b) => (lengthOf(b) > lengthOf(a) ? b : a));
  const { mark, span } = longest;
  const at = pointOn(mark.cubics, placeAtLength(mark.cubics, (span.from + span.to) / 2));
  const places = doubles.length === 1 ? '1 place' : `${doubles.length} places`;
  return {
    rule: 'double-line',
    severity: lengthOf(longest) < LONG_MM ? 'hint' : 'warning',
    where: onSheet(job, piece, at),
    measured: sum,
    wanted: 0,
    unit: 'mm',
    message: `${sum} mm of ${piece} would be ${says} twice, in ${places}, the longest ${sayPlace(job, face, at)}: ${hurt}.`,
    cure: 'Move one of the two elements that share the line, or take one of the lines out in your own drawing.',
  };
}
