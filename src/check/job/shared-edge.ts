import { type Finding, rounded } from '../finding.js';
import type { JobsRule } from './job-rule.js';

/** What edges that two pieces have in common cost: one cut takes its kerf from both. */
export const sharedEdge: JobsRule = (jobs) => {
  const edges = jobs.flatMap(({ sheet, faces }) =>
    faces.flatMap(({ shared }) =>
      shared.filter(({ smallerMm }) => smallerMm > 0).map((edge) => ({ ...edge, sheet })),
    ),
  );
  return edges.slice(0, 1).map((first): Finding => {
    const worst = edges.reduce((a, b) => (b.smallerMm > a.smallerMm ? b : a));
    const sum = rounded(edges.reduce((mm, { lengthMm }) => mm + lengthMm, 0));
    const count = edges.length === 1 ? '1 edge is' : `${edges.length} edges are`;
    return {
      rule: 'shared-edge',
      severity: 'hint',
      where: { sheet: first.sheet.name },
      measured: rounded(worst.smallerMm),
      wanted: 0,
      unit: 'mm',
      message: `${count} cut once for two pieces, ${sum} mm in all, the first of ${first.pieces.join(' and ')} on ${first.sheet.name}: each of the two comes out ${rounded(worst.smallerMm)} mm smaller there, half the kerf.`,
      cure: 'Set shared-edges to false where that matters.',
    };
  });
};
