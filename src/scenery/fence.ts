import { rectangle } from '../geometry/primitives.js';
import type { ValuesOf } from '../scene/parameter.js';
import { type Drawing, finished, joinDrawings, NOTHING } from './built/finish.js';
import { family, type Growth, type Plot } from './family.js';
import { boardsOf } from './fence/boards.js';
import { gateOf } from './fence/gate.js';
import { hurdleOf } from './fence/hurdle.js';
import { type Layout, layoutOf, type Run, STYLES, type Style } from './fence/plan.js';
import { postsAndRails } from './fence/rails.js';
import type { Random } from './random.js';

const parameters = {
  style: {
    kind: 'choice',
    options: STYLES,
    default: 'picket',
    says: 'How it is made: pickets, posts with rails, close boards, or woven hazel.',
  },
  gate: {
    kind: 'flag',
    default: false,
    says: 'A gate between two stouter posts, where there is room for one.',
  },
  wear: {
    kind: 'number',
    default: 0.4,
    min: 0,
    max: 1,
    says: 'How old it is: 0 new and even, 1 crooked, with a board or rail gone.',
  },
  gaps: {
    kind: 'number',
    default: 0.4,
    min: 0,
    max: 1,
    says: 'How open it is: 0 close, 1 wide gaps.',
  },
} as const;

/** A fence of wood along the ground. */
export const fence = family({
  name: 'fence',
  says: 'A wooden fence: pickets, posts and rails, close boards or woven hurdles, with a gate.',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 0.24 } },
  made: {
    cut: 'outline, and gaps between boards, rails and withies',
    scored: 'grain, withies, and joints of boards too small to cut apart',
    embossed: null,
  },
  parts: ['gate'],
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const style = values.style as Style;
  const { wear, gaps } = values;
  const layout = layoutOf(plot, style, values.gate, wear, gaps, random.branch('layout'));
  const runs = layout.runs.map((run, i) => runOf(layout, style, run, random.branch(`run ${i}`)));
  const gate = layout.gate
    ? gateOf(layout, layout.gate, style === 'post-and-rail', random.branch('gate'))
    : NOTHING;
  const { from, to } = layout.whole;
  const bed = rectangle(from, 0, to - from, plot.root);
  const { solids, cuts, lines } = joinDrawings([...runs, gate]);
  const drawing = { solids: [bed, ...solids], cuts, lines, parts: { gate: gate.solids } };
  return finished(drawing, plot, { x: from + 0.6 * plot.smallestWeb, y: plot.root });
}

function runOf(layout: Layout, style: Style, run: Run, random: Random): Drawing {
  switch (style) {
    case 'picket':
    case 'paling':
      return boardsOf(layout, style, run, random);
    case 'post-and-rail':
      return postsAndRails(layout, run, random);
    case 'woven hurdle':
      return hurdleOf(layout, run, random);
  }
}
