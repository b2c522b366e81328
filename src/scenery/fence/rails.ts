import { smoothLine } from '../../geometry/pen.js';
import type { Line, Region } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Drawing } from '../built/finish.js';
import type { Random } from '../random.js';
import { at, bar, type Layout, postAt, type Run } from './plan.js';

/** From post to post, in heights, close and open. */
const BAY = [1, 1.9] as const;
const RAIL = 0.095;
const MOST_RAILS = 3;
/** The top rail lies this share of the height up. */
const TOP = 0.82;

/** Posts with rails mortised into them, one rail fallen if the fence is old. */
export function postsAndRails(layout: Layout, run: Run, random: Random): Drawing {
  const { plot, post, wear, gaps } = layout;
  const { height, smallestWeb, smallestHole } = plot;
  const length = run.to - run.from - post;
  const bay = Math.max(mix(...BAY, gaps) * height, post + 2.5 * smallestHole);
  const count = Math.max(1, Math.round(length / bay));
  const xs = Array.from({ length: count + 1 }, (_, i) => {
    const inner = i > 0 && i < count;
    const shift = inner ? random.branch(`shift ${i}`).between(-0.08, 0.08) * bay : 0;
    return run.from + post / 2 + (i * length) / count + shift;
  });
  const thick = Math.max(1.15 * smallestWeb, RAIL * height);
  const levels = levelsOf(height, thick, smallestHole);
  const fallen = wear > 0.25 && count > 1 ? random.branch('fallen').whole(0, count - 1) : -1;
  const fallenRail = random.branch('rail').whole(0, Math.max(0, levels.length - 2));
  const solids: Region[] = [];
  const lines: Line[] = [];
  for (let i = 0; i < count; i++) {
    levels.forEach((level, k) => {
      const luck = random.branch(`bay ${i} rail ${k}`);
      const slip = () => -level * height + luck.between(-1, 1) * (0.008 + 0.02 * wear) * height;
      const [a, b] = [at(xs[i], slip()), at(xs[i + 1], slip())];
      const drops = i === fallen && k === fallenRail && levels.length > 1;
      const end = drops ? at(mix(xs[i], xs[i + 1], 0.86), -0.2 * thick) : b;
      solids.push(bar(a, end, thick, luck.branch('rail')));
      const mid = at((a.x + b.x) / 2, (a.y + b.y) / 2);
      if (!drops) lines.push(smoothLine([at(mix(a.x, b.x, 0.2), mix(a.y, b.y, 0.2)), mid]));
    });
  }
  xs.forEach((x, i) => {
    const luck = random.branch(`post ${i}`);
    const top = height * luck.between(0.93, 1);
    const lean = wear * 0.05 * height * luck.between(-1, 1);
    solids.push(postAt(x, post, top, lean, true, luck));
    lines.push(smoothLine([at(x + lean * 0.7, -top * 0.72), at(x + lean * 0.3, -top * 0.3)]));
  });
  return { solids, cuts: [], lines };
}

/** Heights of as many rails as leave gaps that can be cut, as shares of the fence's height. */
function levelsOf(height: number, thick: number, smallestHole: number): number[] {
  for (let count = MOST_RAILS; count > 1; count--) {
    const step = (TOP * height - thick / 2) / count;
    if (step - 1.25 * thick >= 1.3 * smallestHole) {
      return Array.from({ length: count }, (_, i) => (TOP * (i + 1)) / count);
    }
  }
  return [0.62];
}
