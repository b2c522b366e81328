import { closedThickness } from '../../panel/closed-thickness.js';
import { cautionsFor } from '../../process/cautions.js';
import type { DesignedBook } from '../design-book.js';
import { type Item, type Leaf, type Picture, rule, text } from './leaf.js';
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
const GUTTER_MM = 8;
/** Facts stand in a column beside the picture, or in rows of four below it. */
const FACTS_BESIDE_MM = 40;
const FACTS_ABREAST = 4;
const FACT_MM = 12;
/** The picture's height where something else is to stand below it. */
const LOW_PICTURE_MM = 100;

/**
 * Title, picture, the book's figures, and the cautions at the foot. The picture takes all the room
 * there is, or leaves the lower half to something else.
 */
export function firstPage(told: Told, preview: Shape, paper: Paper, isShared: boolean): FirstPage {
  const { left, right, top } = paper;
  const titleTop = top + 15;
  const title = titleLines(told.book.title, right - left).map((line, i) =>
    text(left, titleTop + i * TITLE_LEADING_MM, line, TITLE),
  );
  const cautions = cautionItems(told, paper);
  const y = titleTop + (title.length - 1) * TITLE_LEADING_MM + 8;
  const bottom = cautions.top - GUTTER_MM;
  const room = { x: left, y, width: right - left, height: bottom - y };
  const facts = factsOf(told);
  const beside = shownBeside(facts, preview, {
    ...room,
    height: isShared ? LOW_PICTURE_MM : room.height,
  });
  const below = shownAbove(facts, preview, room);
  const shown = isShared || beside.width > below.width ? beside : below;
  return {
    leaf: [
      text(left, top + 2.5, 'Build book', NOTE),
      ...title,
      ...shown.items,
      ...cautions.items,
      ...printedCheckLine(left, paper.height - 20.5),
    ],
    top: shown.bottom + 10,
    bottom,
  };
}

interface Room extends Shape {
  readonly x: number;
  readonly y: number;
}

/** A picture with the facts, its own width, and where all of it ends. */
interface Shown {
  readonly items: readonly Item[];
  readonly width: number;
  readonly bottom: number;
}

function shownBeside(facts: readonly Fact[], preview: Shape, room: Room): Shown {
  const inside = room.width - FACTS_BESIDE_MM - GUTTER_MM;
  const picture = pictureIn(preview, { ...room, width: inside });
  const x = room.x + picture.width + GUTTER_MM;
  const width = room.x + room.width - x;
  const column = facts.flatMap((fact, i) => factItems(fact, x, room.y + i * FACT_MM, width));
  const bottom = room.y + Math.max(picture.height, facts.length * FACT_MM);
  return { items: [picture, ...column], width: picture.width, bottom };
}

function shownAbove(facts: readonly Fact[], preview: Shape, room: Room): Shown {
  const factsMm = Math.ceil(facts.length / FACTS_ABREAST) * FACT_MM;
  const picture = pictureIn(preview, { ...room, height: room.height - factsMm - GUTTER_MM });
  const width = room.width / FACTS_ABREAST;
  const y = room.y + picture.height + GUTTER_MM;
  const rows = facts.flatMap((fact, i) =>
    factItems(
      fact,
      room.x + (i % FACTS_ABREAST) * width,
      y + Math.floor(i / FACTS_ABREAST) * FACT_MM,
      width,
    ),
  );
  return { items: [picture, ...rows], width: picture.width, bottom: y + factsMm };
}

/** As large as it fits, from the room's upper left. */
function pictureIn(preview: Shape, { x, y, width, height }: Room): Picture {
  const scale = Math.min(width / preview.width, height / preview.height);
  return {
    kind: 'picture',
    x,
    y,
    width: preview.width * scale,
    height: preview.height * scale,
  };
}

interface Fact {
  readonly label: string;
  readonly value: string;
}

const factItems = ({ label, value }: Fact, x: number, y: number, width: number): Item[] => [
  text(x, y + 2.4, label, LABEL),
  text(x, y + 7, fitted(value, BODY, width), BODY),
];

function titleLines(title: string, widthMm: number): string[] {
  const lines = wrapped(title, TITLE, widthMm);
  if (lines.length <= MOST_TITLE_LINES) return lines;
  const [first, ...rest] = lines;
  return [first, fitted(rest.join(' '), TITLE, widthMm)];
}

function factsOf({ scene, book, panels, process, jobs }: Told): Fact[] {
  const { spine } = book;
  const thickness = millimetres(closedThickness(book, panels));
  return [
    { label: 'Closed', value: `${size(book.width, book.height)}` },
    { label: 'Closed thickness', value: thickness },
    { label: 'Open depth', value: millimetres(spine.cells * book.spacing) },
    { label: 'Panels', value: `${book.panels.length}, backdrop counted` },
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
  const half = paragraphs.flat().length / 2;
  const sides: string[][][] = [[], []];
  for (const lines of paragraphs) {
    const fits = sides[0].flat().length + lines.length / 2 <= half && sides[1].length === 0;
    sides[fits ? 0 : 1].push(lines);
  }
  const height = Math.max(...sides.map(cautionsMm));
  const top = bottom - 4 - height - 8;
  const items: Item[] = [
    rule(left, right, top, 0.25, INK),
    text(left, top + 5.5, 'Before you start', STRONG),
    ...sides.flatMap((side, k) => {
      const x = left + k * (width + GUTTER_MM);
      return side.flatMap((lines, i) =>
        lines.map((line, n) =>
          text(x, top + 11.8 + cautionsMm(side.slice(0, i)) + n * LEADING_MM, line, BODY),
        ),
      );
    }),
  ];
  return { items, top };
}

const PARAGRAPH_GAP_MM = 1.4;

const cautionsMm = (paragraphs: readonly string[][]): number =>
  paragraphs.flat().length * LEADING_MM + paragraphs.length * PARAGRAPH_GAP_MM;
