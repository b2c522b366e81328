import type { PDFDocument, PDFRef } from '@cantoo/pdf-lib';
import { pdfLibrary } from './library.js';
import { POINTS_PER_MM } from './operators.js';

type Library = Awaited<ReturnType<typeof pdfLibrary>>;

/** A document being written. It tells no date and has no id, so that the same book gives the same bytes. */
export interface Pdf {
  readonly library: Library;
  readonly document: PDFDocument;
}

export interface PdfAbout {
  readonly title: string;
  readonly subject: string;
}

export async function newPdf({ title, subject }: PdfAbout): Promise<Pdf> {
  const library = await pdfLibrary();
  const document = await library.PDFDocument.create({ updateMetadata: false });
  document.setTitle(title, { showInWindowTitleBar: true });
  document.setSubject(subject);
  document.setCreator('Raree');
  // A print dialog that fits pages to the paper would spoil the true size.
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(library.PrintScaling.None);
  return { library, document };
}

/** What a page's content calls by name: see ISO 32000-1, 7.8.3. */
export interface Resources {
  readonly Properties?: Readonly<Record<string, PDFRef>>;
  readonly Font?: Readonly<Record<string, PDFRef>>;
  readonly XObject?: Readonly<Record<string, PDFRef>>;
}

/** Adds a page of that size in mm. */
export function addPage(
  { library, document }: Pdf,
  widthMm: number,
  heightMm: number,
  content: string,
  resources: Resources,
): void {
  const { context } = document;
  const { node } = document.addPage([widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM]);
  const name = library.PDFName.of;
  node.set(name('Contents'), context.register(context.flateStream(content)));
  node.set(name('Resources'), context.obj({ ...resources }));
}

/** Optional content groups, all shown, listed in the order given (ISO 32000-1, 8.11). */
export function addLayers(
  { library, document }: Pdf,
  names: readonly string[],
): Record<string, PDFRef> {
  const { context, catalog } = document;
  const groups = names.map((name) =>
    context.register(context.obj({ Type: 'OCG', Name: library.PDFString.of(name) })),
  );
  catalog.set(
    library.PDFName.of('OCProperties'),
    context.obj({ OCGs: groups, D: { BaseState: 'ON', Order: groups } }),
  );
  return Object.fromEntries(names.map((name, i) => [name, groups[i]]));
}

/** Without object streams, which old readers do not know. */
export const pdfBytes = ({ document }: Pdf): Promise<Uint8Array> =>
  document.save({
    useObjectStreams: false,
    addDefaultPage: false,
    updateFieldAppearances: false,
  });
