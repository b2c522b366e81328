import type { Finding, Rule } from './finding.js';

/** What an element was asked for and could not draw, such as letters too small to be cut. */
export const drawnAmiss: Rule = ({ panels, pieces }) =>
  panels.flatMap((panel, i) =>
    (panel.faults ?? []).map(
      (fault): Finding => ({
        rule: 'drawn-amiss',
        severity: fault.severity,
        where: { piece: pieces[i].name },
        measured: fault.measuredMm,
        wanted: fault.wantedMm,
        unit: 'mm',
        message: fault.message,
        cure: fault.cure,
      }),
    ),
  );
