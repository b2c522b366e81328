import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { expect, it } from 'vitest';
import { seeded } from '../shapes.js';
import { compareWithResvg } from './agreement.js';

/**
 * The icons of two free sets (lucide-static, ISC; @tabler/icons, MIT), imported and compared with
 * resvg's rendering of them: strokes with round caps and joins, and fills. Icons in part clear are
 * made solid first, since ink is all that counts here. All of them take some minutes:
 * RAREE_ALL_ICONS=1 asks for that; otherwise a sample is drawn.
 */
const SAMPLE = 500;

const require = createRequire(import.meta.url);

/** All files of a folder of icons in a package, in order of their names. */
function icons(name: string, ...folder: string[]): string[] {
  const whole = path.join(path.dirname(require.resolve(`${name}/package.json`)), ...folder);
  return readdirSync(whole)
    .filter((file) => file.endsWith('.svg'))
    .sort()
    .map((file) => path.join(whole, file));
}

const ALL = [
  ...icons('lucide-static', 'icons'),
  ...icons('@tabler/icons', 'icons', 'outline'),
  ...icons('@tabler/icons', 'icons', 'filled'),
];

function sample(): string[] {
  const random = seeded(2176);
  const left = [...ALL];
  return Array.from(
    { length: SAMPLE },
    () => left.splice(Math.floor(random() * left.length), 1)[0],
  );
}

const solid = (svg: string): string =>
  svg.replaceAll('currentColor', '#000').replaceAll(/\sopacity="[^"]*"/g, '');

it('icons are imported as resvg draws them', { timeout: 3_600_000 }, async () => {
  expect(ALL.length).toBeGreaterThan(8000);
  const chosen = process.env.RAREE_ALL_ICONS === '1' ? ALL : sample();
  const disagreeing: string[] = [];
  for (const file of chosen) {
    const measured = await compareWithResvg(solid(readFileSync(file, 'utf8'))).catch(String);
    if (typeof measured === 'string' || !measured.agrees) {
      disagreeing.push(`${path.basename(file)}: ${JSON.stringify(measured)}`);
    }
  }
  expect(disagreeing).toEqual([]);
});
