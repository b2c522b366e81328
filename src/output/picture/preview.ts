import type { Book } from '../../book/book.js';
import { type Perspective, perspectiveOf, planeAt, scaleAt } from '../../book/perspective.js';
import { intersect, subtract } from '../../geometry/boolean/boolean.js';
import { regionBounds } from '../../geometry/measure.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Bounds } from '../../geometry/types.js';
import type { Attached } from '../../panel/attached.js';
import type { Panel } from '../../panel/panel.js';
import { mixed } from '../../scene/colour.js';
import { cardDefs, cardMarkup, type DrawnCard, SHARED_DEFS } from './card.js';
import { shadowed } from './colour.js';
import { GRAIN_DEFS, grain } from './grain.js';
import { GROUND_DEFS, standingShadow, sweptGround } from './ground.js';
import { shadowShift } from './light.js';
import { box, boxOf, grown, isEmpty, n, overlap, picture } from './markup.js';
import { type SpineFace, spineFaces, spineMarkup } from './spine-faces.js';

/** Room round the book, as a share of its larger side: enough for it to stand at ease. */
const MARGIN_SHARE = 0.13;
/** How much of the air's colour lies before a panel for each millimetre of depth. More would
 * part the layers better, and show colours that are not the card's. */
const HAZE_PER_MM = 0.0005;
const AIR = '#cfcbc8';
/** Softness of a shadow's edge for each millimetre of gap. */
const PENUMBRA = 0.07;
/** The same of the wide, faint darkness in a narrow space. */
const NOOK = 0.35;
/** Of each of the two. */
const SHADOW_OPACITY = 0.46;

/**
 * The open book as it is seen from reading distance, eye before the middle of the front window, in
 * one-point perspective. Width and height are those of the picture in mm at the front panel.
 */
export function previewSvg(book: Book, panels: readonly Panel[]): string {
  const view = perspectiveOf(book);
  const whole = { minX: 0, minY: 0, maxX: book.width, maxY: book.height };
  const frame = grown(whole, MARGIN_SHARE * Math.max(book.width, book.height));
  const layers = panels.flatMap((panel) => [
    drawnLayer(book, panel),
    ...panel.attached.map((piece) => attachedLayer(book, piece)),
  ]);
  layers.sort((p, q) => p.depthMm - q.depthMm);
  const defs = layers.map(({ drawn }) => cardDefs(drawn)).join('');
  const faces = spineFaces(book, view);
  const drawnBackFirst = layers
    .map((layer, i) => layerMarkup(layer, castersBefore(layers, i), view))
    .reverse();
  return picture(
    frame,
    SHARED_DEFS + GROUND_DEFS + GRAIN_DEFS + defs,
    sweptGround(frame) +
      standingShadow(book, view) +
      spineMarkup(faces, book.spine.card.colour) +
      drawnBackFirst.join('') +
      grain(seenBook(book, faces)),
  );
}

/** The box round all of the book that is seen: the front panel and the spines beside it. */
function seenBook(book: Book, faces: readonly SpineFace[]): Bounds {
  const { leftX, rightX } = book.panels[0].hinge;
  const front = [
    { x: leftX, y: 0 },
    { x: rightX, y: book.height },
  ];
  return boxOf([...front, ...faces.flatMap(({ corners }) => corners)]);
}

/** What casts its shadow on a layer: the panel before it, and what is glued on between the two. */
function castersBefore(layers: readonly Layer[], index: number): readonly Layer[] {
  const panel = layers.findLastIndex((layer, i) => i < index && layer.isPanel);
  return layers.slice(Math.max(0, panel), index);
}

interface Layer {
  readonly depthMm: number;
  readonly isPanel: boolean;
  readonly drawn: DrawnCard;
  /** Where one looks past the card: all that is seen of the layer behind lies near it. */
  readonly openings: Bounds;
}

/** The panel between its hinges; the flaps are folded away out of sight. */
function drawnLayer(book: Book, panel: Panel): Layer {
  const { hinge, depthMm } = book.panels[panel.number - 1];
  const flat = rectangle(hinge.leftX, 0, hinge.rightX - hinge.leftX, book.height);
  const card = intersect(panel.card, flat);
  return {
    depthMm,
    isPanel: true,
    openings: regionBounds(subtract(flat, [card])),
    drawn: {
      id: `panel-${panel.number}`,
      stock: {
        ...panel.stock,
        colour: mixed(panel.stock.colour, AIR, HAZE_PER_MM * depthMm),
      },
      card,
      grooves: panel.scores.map(({ line }) => line),
      reliefs: panel.reliefs,
      frame: regionBounds(flat),
      emphasis: 1,
    },
  };
}

/** What lies flat on its panel is still drawn before or behind it, mm. */
const FLAT_MM = 0.2;

function attachedLayer(book: Book, piece: Attached): Layer {
  const { depthMm, hinge } = book.panels[piece.panel - 1];
  const off = FLAT_MM + piece.standOffMm;
  const deep = depthMm + (piece.place === 'front' ? -off : off);
  const reach = grown(regionBounds(piece.card), off);
  return {
    depthMm: deep,
    isPanel: false,
    openings: reach,
    drawn: {
      id: `piece-${piece.name}`,
      stock: { ...piece.stock, colour: mixed(piece.stock.colour, AIR, HAZE_PER_MM * depthMm) },
      card: piece.card,
      grooves: piece.scores.map(({ line }) => line),
      reliefs: piece.reliefs,
      frame: overlap(reach, { minX: hinge.leftX, minY: 0, maxX: hinge.rightX, maxY: book.height }),
      emphasis: 1,
    },
  };
}

function layerMarkup(layer: Layer, before: readonly Layer[], view: Perspective): string {
  const { a, e, f } = planeAt(view, layer.depthMm);
  const cast = before.map((caster) => castShadow(caster, layer, view)).join('');
  return (
    `<g id="layer-${layer.drawn.id}" transform="matrix(${n(a)} 0 0 ${n(a)} ${n(e)} ${n(f)})">` +
    `${cardMarkup(layer.drawn, cast)}</g>`
  );
}

/** The shadow of one layer on the next: it falls right and down, softer the wider the gap. */
function castShadow(front: Layer, back: Layer, view: Perspective): string {
  if (isEmpty(front.openings)) return '';
  const gap = back.depthMm - front.depthMm;
  const { x, y } = shadowShift(gap);
  const id = `shadow-on-${back.drawn.id}-of-${front.drawn.id}`;
  const { colour } = back.drawn.stock;
  const seen = seenBehind(front, back, view);
  if (isEmpty(seen)) return '';
  return (
    `<filter id="${id}" filterUnits="userSpaceOnUse" ${box(seen)} ` +
    'color-interpolation-filters="sRGB">' +
    `<feGaussianBlur in="SourceGraphic" stdDeviation="${n(gap * PENUMBRA)}" result="cast"/>` +
    `<feGaussianBlur in="SourceGraphic" stdDeviation="${n(gap * NOOK)}"/>` +
    '<feMerge><feMergeNode/><feMergeNode in="cast"/></feMerge></filter>' +
    `<g filter="url(#${id})"><use href="#${front.drawn.id}" ` +
    `transform="translate(${n(x)} ${n(y)})" fill="${shadowed(colour)}" ` +
    `fill-opacity="${SHADOW_OPACITY}"/></g>`
  );
}

/** What is seen of a layer through the openings of the one before it, in its own coordinates. */
function seenBehind(front: Layer, back: Layer, view: Perspective): Bounds {
  const { eyeX, eyeY } = view;
  const widening = scaleAt(view, front.depthMm) / scaleAt(view, back.depthMm);
  const { minX, minY, maxX, maxY } = front.openings;
  const seen = {
    minX: eyeX + (minX - eyeX) * widening,
    minY: eyeY + (minY - eyeY) * widening,
    maxX: eyeX + (maxX - eyeX) * widening,
    maxY: eyeY + (maxY - eyeY) * widening,
  };
  return overlap(grown(seen, 1), grown(back.drawn.frame, 1));
}
