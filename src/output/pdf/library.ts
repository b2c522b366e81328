type Library = typeof import('@cantoo/pdf-lib');
let library: Promise<Library> | undefined;

/** The PDF library. It is slow to load, so that it is fetched only when first asked for. */
export function pdfLibrary(): Promise<Library> {
  library ??= import('@cantoo/pdf-lib');
  return library;
}
