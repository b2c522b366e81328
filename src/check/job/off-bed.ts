import { boundsOf } from '../../geometry/measure.js';
import type { Bounds } from '../../geometry/types.js';
import type { Bed } from '../../process/process.js';
import { size } from '../../sheet/problem.js';
import type { Sheet } from '../../sheet/sheet.js';
import { type Finding, rounded } from '../finding.js';
import { type JobRule, middleOf, onSheet, sayPlace } from './job-rule.js';

/** Files are written to the micrometre. */
const ROUNDING_MM = 0.001;

/** What the head cannot reach when the sheet lies in the corner of the bed. */
export const offBed: JobRule = (job, { bed }) => [
  ...job.faces.flatMap((face): Finding[] => {
    const reach = reachOn(job.sheet, bed);
    const marks = face.steps.flatMap((step) => step.marks);
    const beyond = marks
      .map((mark) => ({ mark, mm: beyondMm(boundsOf([mark.cubics]), reach) }))
      .filter(({ mm }) => mm > ROUNDING_MM);
    if (beyond.length === 0) return [];
    const worst = beyond.reduce((a, b) => (b.mm > a.mm ? b : a));
    const at = middleOf(worst.mark);
    return [
      {
        rule: 'off-bed',
        severity: 'error',
        where: onSheet(job, worst.mark.piece, at),
        measured: rounded(worst.mm),
        wanted: 0,
        unit: 'mm',
        message: `${beyond.length} of ${marks.length} paths run up to ${rounded(worst.mm)} mm off the bed of ${size(bed.widthMm, bed.heightMm)} less its margin of ${rounded(bed.marginMm)} mm, the furthest of ${worst.mark.piece} ${sayPlace(job, face, at)}.`,
        cure: 'Give the stock a smaller sheet or a wider margin, or set the bed to the size that yours has.',
      },
    ];
  }),
  ...sheetOffBed(job.sheet, bed),
];

function sheetOffBed({ name, width, height, placements }: Sheet, bed: Bed): Finding[] {
  const over = Math.max(width - bed.widthMm, height - bed.heightMm);
  if (over <= ROUNDING_MM) return [];
  return [
    {
      rule: 'off-bed',
      severity: 'warning',
      where: { piece: placements[0]?.piece.name, sheet: name },
      measured: rounded(over),
      wanted: 0,
      unit: 'mm',
      message: `${name}, ${size(width, height)}, hangs ${rounded(over)} mm over the edge of the bed of ${size(bed.widthMm, bed.heightMm)}.`,
      cure: 'Cut the sheet down first and say so in its stock, if your machine cannot let it hang over.',
    },
  ];
}

/** What of the bed the head reaches, in the sheet's coordinates. */
function reachOn(sheet: Sheet, { widthMm, heightMm, marginMm, origin }: Bed): Bounds {
  const left = origin.endsWith('left') ? 0 : sheet.width - widthMm;
  const top = origin.startsWith('top') ? 0 : sheet.height - heightMm;
  return {
    minX: left + marginMm,
    minY: top + marginMm,
    maxX: left + widthMm - marginMm,
    maxY: top + heightMm - marginMm,
  };
}

const beyondMm = (box: Bounds, reach: Bounds): number =>
  Math.max(
    reach.minX - box.minX,
    reach.minY - box.minY,
    box.maxX - reach.maxX,
    box.maxY - reach.maxY,
  );
