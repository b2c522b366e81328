import { planBook } from '../../book/plan.js';
import { intersect } from '../../geometry/boolean/boolean.js';
import { linesInside } from '../../geometry/clip-lines.js';
import { regionPathData } from '../../geometry/path/path-data.js';
import { rectangle } from '../../geometry/primitives.js';
import { composePanel } from '../../panel/compose.js';
import { PROCESS_LIMITS } from '../../process/limits.js';
import { DEFAULTS } from '../../scene/defaults.js';
import type { Extent } from '../../scene/parameter.js';
import { readScene } from '../../scene/read.js';
import { FAMILIES, familiesByName } from '../../scenery/catalogue.js';
import type { Family } from '../../scenery/family.js';
import { BUNDLED_FONTS } from '../../scenery/lettering/fonts.js';
import { lineOfText } from '../../scenery/lettering/line-of-text.js';
import { linesPath, n, PLACES, picture } from './markup.js';

/** Longer side of the samples, mm: a small thing far off, a usual one, a leading one. */
const SIZES_MM = [30, 55, 90] as const;
/** Samples of each form and size, so that kinship and variety show. */
const SEEDS = [0, 1, 2] as const;
/** Window that shares of a usual size refer to, mm. */
const USUAL_WINDOW = { width: 110, height: 90 } as const;
/** Air round a sample that does not fill its window, as a share of its size. */
const AIR = 1.25;
/** A book has no lower windows, mm. */
const LEAST_WINDOW_MM = 12;
/** Card shown round each window, and all of the frame for what lies on the frame, mm. */
const RIM_MM = 3;
const FRAME_MM = 16;
const GAP_MM = 6;
/** Room for the names at the left, and the height of their capitals, mm. */
const LABEL_MM = 34;
const CAPITALS_MM = 3.4;

const PAPER = '#f3efe6';
const CARD = '#1f2226';
const SCORE = '#c9b98f';
const RELIEF = '#4a4f57';

/** A name in outlines: pictures hold no fonts. */
function labelMarkup(text: string, x: number, y: number): string {
  const font = BUNDLED_FONTS.fontNamed('sans');
  if (font === undefined) return '';
  const { letters } = lineOfText(font, text, { capHeightMm: CAPITALS_MM, gapMm: 0.3 });
  const d = letters.map(({ shape }) => regionPathData(shape, PLACES)).join('');
  return `<path transform="translate(${n(x)} ${n(y)})" d="${d}" fill="${CARD}"/>`;
}

interface Sample {
  readonly width: number;
  readonly height: number;
  readonly markup: string;
}

/**
 * Scenery as silhouettes, each cut in a window of its own for the knife and drawn at true size with
 * its scores: every family once, or every form of a single family, a row each, at three sizes with
 * three seeds.
 */
export function contactSheetSvg(families: readonly Family[]): string {
  const drawn = families.filter(drawsByItself);
  const forms = drawn.length === 1 ? formsOf(drawn[0]) : drawn.map(plainForm);
  const rows = forms.map((form) => ({
    name: form.name,
    samples: SIZES_MM.flatMap((size) => samplesOf(form.family, form.form, size)),
  }));
  let y = GAP_MM;
  let widest = 0;
  const body: string[] = [];
  for (const { name, samples } of rows) {
    const height = Math.max(...samples.map((s) => s.height));
    body.push(labelMarkup(name, GAP_MM, y + height));
    let x = GAP_MM + LABEL_MM;
    for (const sample of samples) {
      body.push(
        `<g transform="translate(${n(x)} ${n(y + height - sample.height)})">${sample.markup}</g>`,
      );
      x += sample.width + GAP_MM;
    }
    widest = Math.max(widest, x);
    y += height + GAP_MM;
  }
  const frame = { minX: 0, minY: 0, maxX: widest, maxY: y };
  const ground = `<rect width="${n(widest)}" height="${n(y)}" fill="${PAPER}"/>`;
  return picture(frame, '', ground + body.join(''));
}

interface Form {
  readonly family: Family;
  /** Written beside its row. */
  readonly name: string;
  /** What the scene says of it beside its size, as YAML. */
  readonly form: string;
}

const plainForm = (family: Family): Form => ({ family, name: family.name, form: '' });

/** Not so what draws from a file that the scene names. */
const drawsByItself = ({ parameters }: Family): boolean =>
  !Object.values(parameters).some((p) => p.kind === 'file' && p.default === '');

/** Each option of the family's first choice, or, without one, the family as it is. */
function formsOf(family: Family): Form[] {
  const choice = Object.entries(family.parameters).find(([, p]) => p.kind === 'choice');
  if (choice?.[1].kind !== 'choice') return [plainForm(family)];
  return choice[1].options.map((option) => ({
    family,
    name: option,
    form: `, ${choice[0]}: ${option}`,
  }));
}

/** One size of a form, a sample for each seed. */
function samplesOf(family: Family, form: string, sizeMm: number): Sample[] {
  const usual = {
    width: mmOf(family.defaultSize.width, USUAL_WINDOW.width),
    height: mmOf(family.defaultSize.height, USUAL_WINDOW.height),
  };
  const onFrame = family.stance === 'frame';
  const scale = sizeMm / Math.max(usual.width, usual.height);
  const [width, height] = [usual.width * scale, usual.height * scale];
  const fills = 'share' in family.defaultSize.width && family.defaultSize.width.share === 1;
  const window = {
    width: fills || onFrame ? width : width * AIR,
    height: Math.max(LEAST_WINDOW_MM, onFrame ? height : height * AIR),
  };
  const side = 30;
  const text = [
    `panel: { width: ${window.width + 4 * side}, height: ${window.height + 2 * side} }`,
    `panels: ${SEEDS.length + 1}`,
    `window: { width: ${window.width}, height: ${window.height}, step: 0 }`,
    'scenery:',
    ...SEEDS.map(
      (seed) =>
        `  - { element: ${family.name}${form}, panels: ${seed + 1}, seed: ${seed}, width: ${width}, height: ${height} }`,
    ),
  ].join('\n');
  const { scene } = readScene(text, { file: 'samples', elements: FAMILIES });
  const book = planBook(scene);
  const limits = PROCESS_LIMITS[DEFAULTS.process];
  return SEEDS.map((seed) => {
    const plan = book.panels[seed];
    const panel = composePanel(scene, book, plan, familiesByName, limits);
    const rim = onFrame ? FRAME_MM : RIM_MM;
    const opening = plan.window ?? { x: 0, y: 0, width: 0, height: 0 };
    const [x, y] = [opening.x - rim, opening.y - rim];
    const [w, h] = [opening.width + 2 * rim, opening.height + 2 * rim];
    const view = rectangle(x, y, w, h);
    const scores = linesInside(
      panel.scores.map(({ line }) => line),
      view,
    );
    const reliefs = panel.reliefs.map(({ region }) =>
      regionPathData(intersect(region, view), PLACES),
    );
    const markup =
      `<g transform="translate(${n(-x)} ${n(-y)})">` +
      `<path d="${regionPathData(intersect(panel.card, view), PLACES)}" fill="${CARD}"/>` +
      `<path d="${reliefs.join('')}" fill="${RELIEF}"/>` +
      `<path d="${linesPath(scores)}" fill="none" stroke="${SCORE}" stroke-width="0.25"/></g>`;
    return { width: w, height: h, markup };
  });
}

const mmOf = (extent: Extent, wholeMm: number): number =>
  'mm' in extent ? extent.mm : extent.share * wholeMm;
