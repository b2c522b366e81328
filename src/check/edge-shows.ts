import { type Finding, type Rule, rounded } from './finding.js';

/** A deeper frame that shows less than this past the one before it is lost to the eye. Common
 * practice, no source: 6 to 8 mm is comfortable. */
const LEAST_SHOWN_MM = 2;

/**
 * Each deeper frame should show past the one in front of it. Seen from distance D, a window of
 * width w at depth z1 uncovers w (D + z2) / (D + z1) at depth z2 (similar triangles).
 */
export const edgeShows: Rule = ({ book }) => {
  const findings: Finding[] = [];
  for (let i = 1; i < book.panels.length - 1; i++) {
    const front = book.panels[i - 1];
    const deep = book.panels[i];
    if (front.window === null || deep.window === null) continue;
    const k = (book.readingDistance + deep.depthMm) / (book.readingDistance + front.depthMm);
    const shown = Math.max(
      (front.window.width * k - deep.window.width) / 2,
      (front.window.height * k - deep.window.height) / 2,
    );
    if (shown >= LEAST_SHOWN_MM) continue;
    findings.push({
      rule: 'edge-shows',
      severity: 'hint',
      where: { scene: ['window'] },
      measured: rounded(shown),
      wanted: LEAST_SHOWN_MM,
      unit: 'mm',
      message: `The frame of panel ${deep.number} shows at most ${rounded(shown)} mm past panel ${front.number}: its edge is lost.`,
      cure: 'Take a larger step from window to window.',
    });
  }
  return findings;
};
