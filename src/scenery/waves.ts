import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { linesOutside, outlineLines } from '../geometry/clip-lines.js';
import { offset } from '../geometry/offset/offset.js';
import { rectangle } from '../geometry/primitives.js';
import { EMPTY_REGION, type Line, type Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { keptClear } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import { tied } from './grass/tidy.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM } from './land/ground.js';
import type { Random } from './random.js';
import { crestsOf } from './waves/crests.js';
import { flecksOf, hollowHoles, shownOf } from './waves/foam.js';
import { FORMS, type Row, rowsOf } from './waves/rows.js';

const parameters = {
  form: {
    kind: 'choice',
    options: FORMS,
    default: 'breakers',
    says: 'A long smooth swell, breakers that curl over, or surf with an edge of foam.',
  },
  rows: {
    kind: 'number',
    whole: true,
    default: 2,
    min: 1,
    max: 5,
    says: 'How many rows of waves lie one before the other; fewer where there is no room.',
  },
  heading: {
    kind: 'choice',
    options: ['right', 'left'],
    default: 'right',
    says: 'Where the waves run.',
  },
  foam: {
    kind: 'number',
    default: 0.7,
    min: 0,
    max: 1,
    says: 'How much of the foam and the hollows is cut out, 0 for none; on a backdrop it is drawn.',
  },
  streaks: {
    kind: 'flag',
    default: true,
    says: 'Lines scored up the backs of the waves.',
  },
} as const;

/** The sea along the sill. */
export const waves = family({
  name: 'waves',
  says: 'The sea along the sill: rows of waves that roll, curl over or foam.',
  sides: ['sill'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 0.3 } },
  made: {
    cut: 'the farthest crests, hollows under curls, and foam',
    scored: 'nearer crests, and lines up the backs of waves',
    embossed: null,
  },
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const hand = values.heading === 'right' ? 1 : -1;
  const rows = rowsOf(plot, values.form, values.rows, random.branch('rows'));
  const crests = rows.map((row, i) =>
    crestsOf(plot, values.form, row, hand, random.branch(`crests ${i}`)),
  );
  const lands = crests.map(({ region }) => region);
  const foot = rectangle(rows[0].left, -0.6, rows[0].right - rows[0].left, plot.root + 0.6);
  const solid = fitToCut(union([...lands, foot]), plot).body;
  const isCut = plot.frame.window.contours.length > 0 && values.foam > 0;
  // Holes keep to the window: what runs on over the frame is drawn there.
  const open = intersect(intersect(solid, above(plot)), plot.frame.window);
  const scoresOn = (card: Region): Line[] =>
    keptClear(lines, intersect(card, above(plot)), CLEAR_MM);
  const holes: Region[] = [];
  const lines: Line[] = [];
  rows.forEach((row, i) => {
    const nearer = lands.slice(i + 1);
    const own = crests[i];
    if (isCut) {
      const over = subtract(open, [own.region, ...nearer]);
      holes.push(
        ...hollowHoles(
          own.hollows.filter((_, k) => random.branch(`hollow ${i} ${k}`).chance(values.foam)),
          over,
          plot,
        ),
      );
      const shown = intersect(shownOf(own.region, nearer), open);
      const amount = values.form === 'swell' ? 0.4 * values.foam : values.foam;
      holes.push(...flecksOf(plot, row, topOf(row), shown, amount, random.branch(`foam ${i}`)));
    }
    const edge = i > 0 ? keptClear(outlineLines(own.region), union(lands.slice(0, i)), 0.3) : [];
    const streaks = values.streaks ? keptClear(own.streaks, own.region, CLEAR_MM) : [];
    const drawn = [...edge, ...streaks];
    lines.push(...(nearer.length > 0 ? linesOutside(drawn, offset(union(nearer), 0.8)) : drawn));
  });
  if (holes.length === 0)
    return { body: solid, holes: EMPTY_REGION, scores: scoresOn(solid), reliefs: [] };
  const { smallestWeb, smallestHole } = plot;
  const fineness = { smallestWeb, smallestHole, eyelet: smallestHole };
  const card = tied(subtract(solid, holes), fineness);
  return { body: solid, holes: subtract(solid, [card]), scores: scoresOn(card), reliefs: [] };
}

const FAR_MM = 1000;
const above = ({ height }: Plot): Region => rectangle(-FAR_MM, -2 * height, 2 * FAR_MM, 2 * height);

/** Level (y, mm) of the row's crests over x: between its troughs and the tops of its waves. */
const topOf =
  ({ waves, troughAt }: Row) =>
  (x: number): number => {
    const wave = waves.find((w) => x >= w.from && x < w.to) ?? waves[0];
    const t = (x - wave.from) / (wave.to - wave.from);
    return -(troughAt(x) + wave.rise * Math.sin(Math.PI * Math.max(0, Math.min(1, t))) ** 2);
  };
