import { polyline } from '../../src/geometry/pen.js';
import { circle, ellipse, rectangle } from '../../src/geometry/primitives.js';
import { EMPTY_REGION } from '../../src/geometry/types.js';
import type { Carried, SceneElement } from '../../src/scene/scene.js';
import { type Family, family } from '../../src/scenery/family.js';

const description = {
  says: 'A plain shape for tests.',
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { mm: 20 }, height: { mm: 30 } },
  made: { cut: 'its outline', scored: null, embossed: null },
  parameters: {},
} as const;

/** A block as wide and high as its plot, with one upright detail line down its middle. */
export const post = family({
  ...description,
  name: 'post',
  stance: 'turned',
  grow: ({ width, height, root }) => ({
    body: rectangle(-width / 2, -height, width, height + root),
    holes: EMPTY_REGION,
    scores: [
      polyline([
        { x: 0, y: -height },
        { x: 0, y: root },
      ]),
    ],
    reliefs: [],
  }),
});

/** An egg standing on its end, rooted by its own foot; it leans over the jamb when placed there. */
export const egg = family({
  ...description,
  name: 'egg',
  stance: 'upright',
  grow: ({ width, height }, _values, random) => ({
    body: ellipse(random.between(-0.1, 0.1), -height * 0.45, width / 2, height * 0.55),
    holes: EMPTY_REGION,
    scores: [],
    reliefs: [],
  }),
});

/** A ring that hangs in the window's middle and touches nothing. */
export const ball = family({
  ...description,
  name: 'ball',
  stance: 'upright',
  grow: ({ width, height }) => ({
    body: circle(0, -height, width / 2),
    holes: circle(0, -height, width / 4),
    scores: [],
    reliefs: [],
  }),
});

export const TEST_FAMILIES: ReadonlyMap<string, Family> = new Map(
  [post, egg, ball].map((f) => [f.name, f as Family]),
);

const steady = <T>(value: T): Carried<T> => ({ from: value, to: value });

export function elementOf(changes: Partial<SceneElement> & { element: string }): SceneElement {
  return {
    id: `${changes.element}-1`,
    panels: [1],
    side: 'sill',
    at: steady({ share: 0.5 }),
    width: steady({ mm: 20 }),
    height: steady({ mm: 30 }),
    lift: steady({ mm: 0 }),
    mirror: false,
    seed: 0,
    frame: 'score',
    heal: 'error',
    carry: 'straight',
    path: ['scenery', 0],
    corner: null,
    along: null,
    snug: null,
    pair: false,
    scatter: null,
    stands: 'across',
    detail: 'auto',
    group: null,
    treat: [],
    pattern: null,
    loose: null,
    values: {},
    ...changes,
  };
}
