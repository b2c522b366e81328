import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { pngOf } from '../src/output/raster.js';
import { byTheme, contactSheet, galleryPage, SHEET_PX } from './shapes/gallery.js';
import { LIBRARY, readLibrary } from './shapes/library.js';

const motifs = await readLibrary();
writeFileSync(path.join(LIBRARY, 'README.md'), galleryPage(motifs));
for (const [theme, own] of byTheme(motifs)) {
  writeFileSync(path.join(LIBRARY, `${theme}.png`), pngOf(contactSheet(own), SHEET_PX));
}
