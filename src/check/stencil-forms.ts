import { components } from '../geometry/components.js';
import { regionArea, regionBounds } from '../geometry/measure.js';
import type { Region } from '../geometry/types.js';
import { panelName } from '../panel/piece.js';
import type { Stencil } from '../panel/stencil-forms.js';
import { type Checked, type Finding, type Place, type Rule, rounded } from './finding.js';

/** Card pressed more than this many times deeper than drawn may crack. Common practice, no source. */
const TOO_DEEP = 2;

interface Pressed {
  readonly piece: string;
  readonly stencil: Stencil;
}

const pressedIn = ({ panels }: Checked): Pressed[] =>
  panels.flatMap(({ number, stencils = [] }) =>
    stencils.map((stencil) => ({ piece: panelName(number), stencil })),
  );

/** Stencils asked for in a book without relief. */
export const stencilWithout: Rule = (checked) =>
  checked.scene.stencils === null || pressedIn(checked).length > 0
    ? []
    : [
        {
          rule: 'stencil-without',
          severity: 'hint',
          where: { scene: ['stencils'] },
          measured: 0,
          wanted: 1,
          unit: 'parts',
          message:
            'The scene asks for stencils, but no panel has anything raised or sunk: none is made.',
          cure: 'Have an element pressed where it lies on the frame ("frame: raise" or "sink"), or take "stencils" out.',
        },
      ];

/** Relief that is too narrow or too small for a stencil. */
export const stencilLeftOut: Rule = (checked) =>
  pressedIn(checked).flatMap(({ piece, stencil }): Finding[] => {
    const { side, leftOut, leastFormMm } = stencil;
    if (leftOut.contours.length === 0) return [];
    const { count, areaMm2, where, place } = told(leftOut, piece);
    const parts = count === 1 ? '1 part' : `${count} parts`;
    return [
      {
        rule: 'stencil-left-out',
        severity: 'warning',
        where,
        measured: areaMm2,
        wanted: 0,
        unit: 'mm2',
        message: `${parts} of the ${side} relief of ${piece}, ${areaMm2} mm2 in all, the largest ${place}, cannot be pressed by a stencil and ${count === 1 ? 'is' : 'are'} left out: a form must be ${rounded(leastFormMm)} mm wide and large enough to glue.`,
        cure: 'Make the element larger or its detail coarse, score that part instead ("treat"), or take thinner card.',
      },
    ];
  });

/** Gaps between forms that the stencil cannot hold board in. */
export const stencilFilled: Rule = (checked) =>
  pressedIn(checked).flatMap(({ piece, stencil }): Finding[] => {
    const { side, filled, leastGapMm } = stencil;
    if (filled.contours.length === 0) return [];
    const { count, areaMm2, where, place } = told(filled, piece);
    return [
      {
        rule: 'stencil-filled',
        severity: 'hint',
        where,
        measured: areaMm2,
        wanted: 0,
        unit: 'mm2',
        message: `The ${side} forms of ${piece} stand nearer to each other than the ${rounded(leastGapMm)} mm that their stencil needs between them, in ${count} ${count === 1 ? 'place' : 'places'}, ${areaMm2} mm2 in all, the largest ${place}: they are pressed as one.`,
        cure: 'Spread them further apart if it matters, or score what lies between.',
      },
    ];
  });

/** Patterns are strokes, which only a tool can draw. */
export const stencilPattern: Rule = (checked) =>
  pressedIn(checked).flatMap(({ piece, stencil: { side, patterned } }): Finding[] =>
    patterned === 0
      ? []
      : [
          {
            rule: 'stencil-pattern',
            severity: 'hint',
            where: { piece },
            measured: patterned,
            wanted: 0,
            unit: 'parts',
            message: `${patterned} ${patterned === 1 ? 'area' : 'areas'} of the ${side} relief of ${piece} should be filled with a pattern; a stencil presses only the outline.`,
            cure: 'Draw the pattern by hand with a ball tool from the piece\'s own file, or take "pattern" out.',
          },
        ],
  );

/** Board so thick that even one layer presses far deeper than drawn; the worst of the book. */
export const stencilDepth: Rule = (checked) => {
  const depths = pressedIn(checked).flatMap(({ piece, stencil: { terraces, card } }) =>
    terraces.map(({ layers, depthMm }) => ({ piece, depthMm, pressedMm: layers * card.caliperMm })),
  );
  const deep = depths.filter(({ depthMm, pressedMm }) => pressedMm > TOO_DEEP * depthMm);
  const [worst] = deep.toSorted((a, b) => b.pressedMm / b.depthMm - a.pressedMm / a.depthMm);
  if (worst === undefined) return [];
  const { piece, depthMm } = worst;
  const pressedMm = rounded(worst.pressedMm);
  const others = deep.length > 1 ? ` (and ${deep.length - 1} other depths by too much)` : '';
  return [
    {
      rule: 'stencil-depth',
      severity: 'hint',
      where: { piece },
      measured: pressedMm,
      wanted: depthMm,
      unit: 'mm',
      message: `The board of the stencils presses ${piece} up to ${pressedMm} mm deep where ${depthMm} mm are drawn${others}: card may crack.`,
      cure: `Press lightly and try on an offcut first, or take board of about ${rounded(depthMm)} to ${rounded(TOO_DEEP * depthMm)} mm for "stencils".`,
    },
  ];
};

interface Told {
  readonly count: number;
  readonly areaMm2: number;
  readonly where: Place;
  readonly place: string;
}

function told(region: Region, piece: string): Told {
  const parts = components(region);
  const { minX, maxX, minY, maxY } = regionBounds(parts[0]);
  const [x, y] = [rounded((minX + maxX) / 2), rounded((minY + maxY) / 2)];
  return {
    count: parts.length,
    areaMm2: rounded(regionArea(region)),
    where: { piece, x, y },
    place: `${x} mm from its left and ${y} mm from its top`,
  };
}
