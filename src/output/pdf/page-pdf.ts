import type { Mark } from '../../process/layers.js';
import type { LayerColours } from '../../scene/layer-colours.js';
import type { Page, PageLayer } from '../page.js';
import { foldDashes } from '../picture/fold-marks.js';
import { addLayers, addPage, newPdf, pdfBytes } from './document.js';
import { chainPath, colour, dashes, inLayer, inMillimetres, lineWidth } from './operators.js';

const PEN_MM = 0.1;
/** Folds are dashed as lines of this width are, so that a reader can tell the kinds apart. */
const DASHED_AS_MM = 0.25;
/** SVG's own limit, which cuts the same points short. */
const MITRE_LIMIT = 4;

const SUBJECT =
  'At true size: print it at 100 %. A layer for each operation, in working order; guides are never ' +
  'cut. Folds are dashed as in a drawing, valley dashed and mountain dash-dot: for machines take ' +
  'the SVG file of the same name.';

/**
 * A page as PDF at true size: the curves of its SVG, in one layer (optional content group) for each
 * operation. Folds follow the open convention for drawings: valley dashed, mountain dash-dot.
 */
export async function pagePdf(
  { width, height, layers }: Page,
  colours: LayerColours,
  title: string,
): Promise<Uint8Array> {
  const drawn = layers
    .map((layer) => ({ layer, strokes: strokesOf(layer) }))
    .filter(({ strokes }) => strokes !== '');
  const pdf = await newPdf({ title, subject: SUBJECT });
  const groups = addLayers(
    pdf,
    drawn.map(({ layer }) => layer.operation),
  );
  const content = drawn.map(({ layer: { operation }, strokes }) =>
    inLayer(operation, colour(colours[operation], 'RG') + strokes),
  );
  const setUp = [inMillimetres(height), lineWidth(PEN_MM), `${MITRE_LIMIT} M\n`];
  addPage(pdf, width, height, [...setUp, ...content].join(''), { Properties: groups });
  return pdfBytes(pdf);
}

function strokesOf({ runs }: PageLayer): string {
  let pen = dashes([]);
  return runs
    .flatMap(({ marks }) => marks)
    .map((mark) => {
      const path = chainPath(mark.cubics, mark.closed);
      if (path === '') return '';
      const wanted = dashesOf(mark);
      const change = wanted === pen ? '' : wanted;
      pen = wanted;
      return `${change}${path}S\n`;
    })
    .join('');
}

const dashesOf = ({ kind }: Mark): string =>
  dashes(kind === 'mountain' || kind === 'valley' ? foldDashes(kind, DASHED_AS_MM) : []);
