import { type Finding, type Rule, rounded } from './finding.js';
import { NEAR_MM, type SeenEdge, seenEdges } from './seen-edges.js';

/** Edges that all but coincide for this long read as one thick, broken one. Common practice, no source. */
const LONG_MM = 8;
/** A touch shorter than this is a leaf tip that comes near by chance. Common practice, no source. */
const SHORTEST_TOUCH_MM = 3;

/** Edges of neighbouring panels that all but coincide, and ones that just touch, as they are seen. */
export const edges: Rule = ({ book, panels, pieces }) => {
  const seen = seenEdges(book, panels);
  const long = seen.filter(({ lengthMm }) => lengthMm >= LONG_MM);
  const touching = seen.filter(
    ({ touches, lengthMm }) => touches && lengthMm >= SHORTEST_TOUCH_MM && lengthMm < LONG_MM,
  );
  const named = (edge: SeenEdge): string => pieces[edge.deep - 1].name;
  return [
    ...longestOfEach(long).map(
      ({ edge, others }): Finding => ({
        rule: 'coinciding-edges',
        severity: 'hint',
        where: { piece: named(edge), x: rounded(edge.at.x), y: rounded(edge.at.y) },
        measured: rounded(edge.lengthMm),
        wanted: LONG_MM,
        unit: 'mm',
        message: `Over ${rounded(edge.lengthMm)} mm an edge of panel ${edge.deep} is seen within ${NEAR_MM} mm of one of panel ${edge.front}${also(others)}: the two read as one broken edge.`,
        cure: 'Let the deeper edge show 6 to 8 mm past the one before it, or hide it wholly.',
      }),
    ),
    ...longestOfEach(touching).map(
      ({ edge, others }): Finding => ({
        rule: 'tangent-edges',
        severity: 'hint',
        where: { piece: named(edge), x: rounded(edge.at.x), y: rounded(edge.at.y) },
        measured: rounded(edge.lengthMm),
        wanted: 0,
        unit: 'mm',
        message: `An edge of panel ${edge.deep} just touches one of panel ${edge.front} as it is seen${also(others)}: depth is lost where they meet.`,
        cure: 'Move one of the two so that they cross clearly or stay apart.',
      }),
    ),
  ];
};

const also = (others: number): string => (others === 0 ? '' : ` (and at ${others} more places)`);

/** The longest of each deep panel's, and how many more it has. */
function longestOfEach(found: readonly SeenEdge[]): { edge: SeenEdge; others: number }[] {
  const panels = [...new Set(found.map(({ deep }) => deep))];
  return panels.map((panel) => {
    const own = found.filter(({ deep }) => deep === panel);
    const edge = own.reduce((p, q) => (q.lengthMm > p.lengthMm ? q : p));
    return { edge, others: own.length - 1 };
  });
}
