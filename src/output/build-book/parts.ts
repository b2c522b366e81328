import { CHECK_LINE_MM } from '../check-line.js';
import type { Block } from './flow.js';
import { type Item, type Rule, rule, text } from './leaf.js';
import { HAIRLINE, HEADING, NOTE, type Paper, SMALL, SOFT } from './style.js';
import { fitted } from './typesetting.js';

/** A heading with a sentence below it, kept with what follows. */
export const heading = (title: string, note: string, left: number): Block[] => [
  {
    heightMm: 16,
    keepsNext: true,
    draw: (top) => [text(left, top + 5, title, HEADING), text(left, top + 11, note, NOTE)],
  },
];

const TICK_MM = 1.5;

/** A line of 100 mm in the layer of guides, with what it is for. */
export function printedCheckLine(left: number, y: number): Item[] {
  const line = (from: Rule['from'], to: Rule['to']): Rule => ({
    kind: 'rule',
    from,
    to,
    widthMm: 0.1,
    colour: SOFT,
    isGuide: true,
  });
  const right = left + CHECK_LINE_MM;
  return [
    line([left, y], [right, y]),
    ...[left, right].map((x) => line([x, y - TICK_MM], [x, y + TICK_MM])),
    text(right + 3, y + 0.9, `${CHECK_LINE_MM} mm: print at 100 %, then measure`, SMALL),
  ];
}

/** What stands at the foot of every page. */
export const foot = (title: string, number: number, of: number, paper: Paper): Item[] => [
  rule(paper.left, paper.right, paper.height - 16, 0.1, HAIRLINE),
  text(paper.left, paper.height - 11.5, fitted(title, SMALL, CHECK_LINE_MM), SMALL),
  text(paper.right, paper.height - 11.5, `${number} / ${of}`, SMALL, 'right'),
];
