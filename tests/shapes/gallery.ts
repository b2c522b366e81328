import { linePathData, plain, regionPathData } from '../../src/geometry/path/path-data.js';
import { longerMm, type Motif } from './library.js';

/** Pictures in the table are this high at most, pixels. */
const PICTURE_PX = 96;
/** Motifs a row, and the room each has on a contact sheet, mm. */
const COLUMNS = 6;
const CELL_MM = 46;
/** The longer side of a motif on a contact sheet, mm. */
const DRAWN_MM = 40;
/** Width of a contact sheet, pixels. */
export const SHEET_PX = 1200;

const PAPER = '#f3efe6';
const CARD = '#1f2226';
const SCORE = '#c9b98f';

const HEAD = `# Motifs

Drawn for this project, one motif a file, under its licence. Each is an SVG in millimetres: a single
black shape with its holes is what is cut; thin lines in the group \`detail\` are scored. The root is
written on the outermost element:

- \`data-root\`: the side that it grows from, \`sill\`, \`head\`, \`left\` or \`right\`, or \`none\` for what
  hangs, floats or is glued on loose. What stands on a sill also stands as a loose piece.
- \`data-smallest-mm\`: the smallest advised size of its longer side. From there on no web is narrower
  than 1.2 mm, no hole smaller than 1.5 mm and no score nearer than 1 mm to a cut; free tips may be
  finer. A process that asks for more needs a larger motif in proportion.

The tables and contact sheets are made from the files by \`npm run gallery\`.
`;

/** Motifs by theme, in the order in which they come. */
export const byTheme = (motifs: readonly Motif[]): Map<string, Motif[]> => {
  const themes = new Map<string, Motif[]>();
  for (const motif of motifs) themes.set(motif.theme, [...(themes.get(motif.theme) ?? []), motif]);
  return themes;
};

/** The gallery's page: a table for each theme. */
export const galleryPage = (motifs: readonly Motif[]): string =>
  [HEAD, ...[...byTheme(motifs)].map(([theme, own]) => tableOf(theme, own))].join('\n');

function tableOf(theme: string, motifs: readonly Motif[]): string {
  const rows = motifs.map(
    ({ name, title, root, smallestMm }) =>
      `| <img src="${theme}/${name}.svg" height="${PICTURE_PX}" alt=""> | ${title} | ` +
      `[${name}](${theme}/${name}.svg) | ${root} | ${smallestMm} mm |`,
  );
  const head = `## ${theme[0].toUpperCase()}${theme.slice(1).replaceAll('-', ' ')}\n`;
  const sheet = `[All in one picture](${theme}.png)\n`;
  const columns = '| | motif | file | root | smallest |\n| --- | --- | --- | --- | --- |';
  return `${head}\n${sheet}\n${columns}\n${rows.join('\n')}\n`;
}

/** A contact sheet of motifs in black, as large as each other, feet on one line. */
export function contactSheet(motifs: readonly Motif[]): string {
  const rows = Math.ceil(motifs.length / COLUMNS);
  const [width, height] = [COLUMNS * CELL_MM, rows * CELL_MM];
  const cells = motifs.map((motif, i) => {
    const scale = DRAWN_MM / longerMm(motif);
    const x = (i % COLUMNS) * CELL_MM + (CELL_MM - scale * motif.drawing.widthMm) / 2;
    const foot = (Math.floor(i / COLUMNS) + 1) * CELL_MM - (CELL_MM - DRAWN_MM) / 2;
    const y = foot - scale * motif.drawing.heightMm;
    const place = `translate(${plain(x, 2)} ${plain(y, 2)}) scale(${plain(scale, 4)})`;
    const scores = motif.details.map((line) => linePathData(line, 2)).join('');
    return (
      `<g transform="${place}"><path d="${regionPathData(motif.card, 2)}" fill="${CARD}"/>` +
      `<path d="${scores}" fill="none" stroke="${SCORE}" stroke-width="${plain(0.3 / scale, 2)}"/></g>`
    );
  });
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}">` +
    `<rect width="${width}" height="${height}" fill="${PAPER}"/>${cells.join('')}</svg>`
  );
}
