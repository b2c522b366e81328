import type { SheetJob } from '../../sheet/job.js';
import { sheetPage } from '../pages.js';
import type { SheetStyle } from '../svg.js';
import { faceName } from '../svg-files.js';
import { pagePdf } from './page-pdf.js';

/** A file to write: its path below the output folder, with forward slashes, and its content. */
export interface BinaryFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** The one or two faces of a sheet as drawings, beside the SVG files of the same names. */
export const sheetPdfs = (
  { sheet, faces }: SheetJob,
  { process, colours }: SheetStyle,
  title: string,
): Promise<BinaryFile[]> =>
  Promise.all(
    faces.map(async (job) => {
      const name = faceName(sheet, job.face);
      const page = sheetPage(sheet, job, process);
      return {
        path: `sheets/${name}.pdf`,
        bytes: await pagePdf(page, colours, `${title}: ${sheet.name}, ${job.face}`),
      };
    }),
  );
