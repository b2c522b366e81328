import { closedThickness } from '../../panel/closed-thickness.js';
import type { DesignedBook } from '../design-book.js';
import { cautionsFor } from './cautions.js';
import { type Item, type Leaf, rule, text } from './leaf.js';
import { printedCheckLine } from './parts.js';
import { BODY, INK, LABEL, LEADING_MM, NOTE, type Paper, STRONG, TITLE } from './style.js';
import { fitted, wrapped } from './typesetting.js';
import { count, millimetres, size } from './words.js';

/** What of a design the build book tells. */
export type Told = Pick<DesignedBook, 'scene' | 'book' | 'panels' | 'process' | 'jobs'>;

/** Width and height in the same unit, whatever it is. */
export interface Shape {
  readonly width: number;
  readonly height: number;
}

/** The first page, and the room left on it between `top` and `bottom`. */
export interface FirstPage {
  readonly leaf: Leaf;
  readonly top: number;
  readonly bottom: number;
}

const MOST_TITLE_LINES = 2;
const TITLE_LEADING_MM = 11.5;
const PICTURE_MM = { width: 122, height: 100 };
const GUTTER_MM = 8;
const FACT_MM = 12;

/** Title, picture, the book's figures beside it, and the cautions at the foot. */
export function firstPage(told: Told, preview: Shape, paper: Paper): FirstPage {
  const { left, right, top } = paper;
  const width = right - left;
  const titleTop = top + 15;
  const title = titleLines(told.book.title, width).map((line, i) =>
    text(left, titleTop + i * TITLE_LEADING_MM, line, TITLE),
  );
  const pictureTop = titleTop + (title.length - 1) * TITLE_LEADING_MM + 8;
  const scale = Math.min(PICTURE_MM.width / preview.width, PICTURE_MM.height / preview.height);
  const picture = {
    kind: 'picture',
    x: left,
    y: pictureTop,
    width: preview.width * scale,
    height: preview.height * scale,
  } as const;
  const factsX = left + picture.width + GUTTER_MM;
  const facts = factsOf(told).flatMap(({ label, value }, i) => [
    text(factsX, pictureTop + 2.4 + i * FACT_MM, label, LABEL),
    text(factsX, pictureTop + 7 + i * FACT_MM, fitted(value, BODY, right - factsX), BODY),
  ]);
  const factsBottom = pictureTop + (facts.length / 2) * FACT_MM;
  const cautions = cautionItems(told, paper);
  return {
    leaf: [
      text(left, top + 2.5, 'Build book', NOTE),
      ...title,
      picture,
      ...facts,
      ...cautions.items,
      ...printedCheckLine(left, paper.height - 20.5),
    ],
    top: Math.max(pictureTop + picture.height, factsBottom) + 10,
    bottom: cautions.top - 8,
  };
}

function titleLines(title: string, widthMm: number): string[] {
  const lines = wrapped(title, TITLE, widthMm);
  if (lines.length <= MOST_TITLE_LINES) return lines;
  const [first, ...rest] = lines;
  return [first, fitted(rest.join(' '), TITLE, widthMm)];
}

function factsOf({ scene, book, panels, process, jobs }: Told) {
  const { spine } = book;
  const thickness = millimetres(closedThickness(book, panels));
  return [
    { label: 'Closed', value: `${size(book.width, book.height)}` },
    { label: 'Closed thickness', value: thickness },
    { label: 'Open depth', value: millimetres(spine.cells * book.spacing) },
    { label: 'Panels', value: `${count(book.panels.length, 'panel')}, backdrop counted` },
    { label: 'Spines', value: `2 × ${spine.faces} faces of ${millimetres(spine.pitchMm)}` },
    { label: 'Seen from', value: millimetres(scene.readingDistance) },
    { label: 'Card', value: count(jobs.length, 'sheet') },
    { label: 'Process', value: process.name },
  ];
}

/** In two columns at the foot of the page. */
function cautionItems({ process }: Told, { left, right, bottom }: Paper) {
  const width = (right - left - GUTTER_MM) / 2;
  const paragraphs = cautionsFor(process).map((words) => wrapped(words, BODY, width));
  const all = paragraphs.flat().length;
  const sides: string[][] = [[], []];
  for (const lines of paragraphs) {
    const side = sides[0].length + lines.length / 2 <= all / 2 && sides[1].length === 0 ? 0 : 1;
    sides[side].push(...lines);
  }
  const height = Math.max(...sides.map((lines) => lines.length)) * LEADING_MM;
  const top = bottom - 4 - height - 9;
  const items: Item[] = [
    rule(left, right, top, 0.25, INK),
    text(left, top + 5.5, 'Before you start', STRONG),
    ...sides.flatMap((lines, k) =>
      lines.map((line, i) =>
        text(left + k * (width + GUTTER_MM), top + 11.5 + i * LEADING_MM, line, BODY),
      ),
    ),
  ];
  return { items, top };
}
