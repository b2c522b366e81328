import { subtract, union } from '../geometry/boolean/boolean.js';
import { outlineLines } from '../geometry/clip-lines.js';
import { EMPTY_REGION, type Region } from '../geometry/types.js';
import { nearestWord } from '../scene/nearest-word.js';
import type { ValuesOf } from '../scene/parameter.js';
import { bodyAndHoles } from './body-and-holes.js';
import { family, type Growth, type GrowthFault, type Plot } from './family.js';
import { tied } from './grass/tidy.js';
import { type Asked, LINES } from './lettering/asked.js';
import { LetteringError } from './lettering/fault.js';
import { BUNDLED_FONTS, type FontSource } from './lettering/fonts.js';
import type { SetLetter } from './lettering/guide.js';
import { inWindow } from './lettering/in-window.js';
import { leastOpenHeightMm, leastStencilHeightMm } from './lettering/legible.js';
import { onFrame } from './lettering/on-frame.js';
import type { LetterFont } from './lettering/read-font.js';
import { stencil } from './lettering/stencil.js';
import { inPlot, viewOf } from './lettering/view.js';
import { cutSafe } from './tree/finish.js';

const PRESS_DEPTH_MM = 0.3;
/** Letters that are only drawn keep so far apart, as a share of their height. */
const DRAWN_GAP = 0.03;
/** What is cut apart keeps a little more than the web between it, so that rounding costs nothing. */
const GAP_WEBS = 1.05;

const parameters = {
  line: {
    kind: 'choice',
    options: LINES,
    default: 'straight',
    says: "A straight line, an arc, or along the window's own edge.",
  },
  work: {
    kind: 'choice',
    options: ['stand', 'cut', 'score', 'emboss'],
    default: 'stand',
    says: 'Solid letters on a bar in the window, or letters on the frame: cut through it as a stencil, scored, or raised.',
  },
  text: {
    kind: 'text',
    default: 'Raree',
    maxCharacters: 60,
    says: 'The line of writing.',
  },
  font: {
    kind: 'file',
    of: 'font',
    default: 'roman',
    says: 'roman, sans or script, or a font file of your own (ttf, otf or woff) beside the scene.',
  },
  rise: {
    kind: 'length',
    default: 6,
    min: 0,
    max: 60,
    says: 'How far an arc rises over its ends.',
  },
} as const;

type Values = ValuesOf<typeof parameters>;

/**
 * Lettering in the fonts of a source. Its height is that of the capitals on the frame, and of bar
 * and letters together in the window; a line too long for its width is set smaller.
 */
export const letteringFamily = (fonts: FontSource) =>
  family({
    name: 'lettering',
    says: 'A line of writing: solid letters in the window, or letters cut, scored or raised on the frame.',
    sides: ['sill', 'head'],
    defaultSide: 'sill',
    defaultSize: { width: { share: 0.8 }, height: { mm: 26 } },
    made: {
      cut: 'solid letters, or letters as a stencil through the frame',
      scored: 'outlines of letters, where asked',
      embossed: 'letters raised on the frame, where asked',
    },
    parameters,
    stance: 'turned',
    grow: (plot, values) => grow(plot, values, fonts),
  });

export const lettering = letteringFamily(BUNDLED_FONTS);

const NOTHING: Growth = { body: EMPTY_REGION, holes: EMPTY_REGION, scores: [], reliefs: [] };

function grow(plot: Plot, values: Values, fonts: FontSource): Growth {
  try {
    const asked = askedOf(plot, values, fonts);
    if (values.work === 'stand') return stood(asked, plot);
    return inPlot(worked(asked, values.work), plot);
  } catch (error) {
    if (!(error instanceof LetteringError)) throw error;
    return { ...NOTHING, faults: [faultOf(error, plot)] };
  }
}

const faultOf = ({ message, cure }: LetteringError, plot: Plot): GrowthFault => ({
  severity: 'error',
  message,
  cure,
  measuredMm: 0,
  wantedMm: plot.height,
});

function askedOf(plot: Plot, values: Values, fonts: FontSource): Asked {
  const { smallestWeb, smallestHole, smallestSlot = smallestHole } = plot;
  return {
    font: plot.font ?? fontOf(values.font, fonts),
    text: values.text,
    line: values.line,
    riseMm: values.rise,
    lengthMm: plot.width,
    heightMm: plot.height,
    limits: { smallestWeb, smallestHole, smallestSlot },
    view: viewOf(plot),
  };
}

function fontOf(name: string, fonts: FontSource): LetterFont {
  const font = fonts.fontNamed(name);
  if (font) return font;
  const near = nearestWord(name, fonts.names);
  throw new LetteringError(
    `There is no font called "${name}"${near ? `; did you mean "${near}"?` : '.'}`,
    `There is: ${fonts.names.join(', ')}.`,
  );
}

/** Letters on the frame. */
function worked(asked: Asked, work: Exclude<Values['work'], 'stand'>): Growth {
  const { smallestWeb } = asked.limits;
  if (work === 'cut') return stencilled(asked);
  const gapOf = (capMm: number): number => (work === 'emboss' ? smallestWeb : DRAWN_GAP * capMm);
  const shapes = union(onFrame(asked, gapOf).letters.map((l) => l.shape));
  if (work === 'score') return { ...NOTHING, scores: outlineLines(shapes) };
  return {
    ...NOTHING,
    reliefs: [{ region: shapes, side: 'raised', depthMm: PRESS_DEPTH_MM }],
  };
}

/** Cut through the frame or, too small for that, scored on it and complained of. */
function stencilled(asked: Asked): Growth {
  const { text, limits } = asked;
  const { letters, capHeightMm } = onFrame(asked, () => GAP_WEBS * limits.smallestWeb);
  const leastMm = leastStencilHeightMm(letters, capHeightMm, limits);
  if (leastMm <= capHeightMm) return { ...NOTHING, pierced: stencil(letters, limits).holes };
  const [is, wanted] = [capHeightMm, leastMm].map(ceiled);
  return {
    ...NOTHING,
    scores: outlineLines(union(letters.map((l) => l.shape))),
    faults: [
      {
        severity: 'error',
        message: `The letters of "${text}" are ${is} mm high, too small to cut out: this process needs them ${wanted} mm high. They are scored instead.`,
        cure: 'Give them more height and width, set the text in capitals or in sans, or have it scored or raised.',
        measuredMm: is,
        wantedMm: wanted,
      },
    ],
  };
}

function stood(asked: Asked, plot: Plot): Growth {
  const { body, scores, letters, capHeightMm } = inWindow(asked);
  const drawn = inPlot({ ...NOTHING, body, scores }, plot);
  return {
    ...drawn,
    ...fitToStand(drawn.body, plot),
    faults: clotted(asked, letters, capHeightMm),
  };
}

/** Where gaps in letters are narrower than the smallest hole, they come out as card. */
function clotted(
  { text, limits }: Asked,
  letters: readonly SetLetter[],
  capHeightMm: number,
): GrowthFault[] {
  const leastMm = leastOpenHeightMm(letters, capHeightMm, limits.smallestHole);
  if (leastMm <= capHeightMm) return [];
  const [is, wanted] = [capHeightMm, leastMm].map(ceiled);
  return [
    {
      severity: 'warning',
      message: `The letters of "${text}" are ${is} mm high: this process closes openings in them; at ${wanted} mm they stay open.`,
      cure: 'Give them more height and width, set the text in capitals or in sans, or have it scored on the frame.',
      measuredMm: is,
      wantedMm: wanted,
    },
  ];
}

const ceiled = (mm: number): number => Math.ceil(mm * 10) / 10;

/** The word fit to cut in its place, its corners kept as crisp as they may be. */
function fitToStand(drawn: Region, plot: Plot): { body: Region; holes: Region } {
  const { body, holes } = cutSafe(drawn, plot, { x: 0, y: plot.root });
  const { smallestWeb, smallestHole } = plot;
  const card = tied(subtract(body, [holes]), { smallestWeb, smallestHole, eyelet: smallestHole });
  return bodyAndHoles(card);
}
