import { BUNDLED_FONTS } from '../../../src/scenery/lettering/fonts.js';
import { type SetLetter, setOn, straight } from '../../../src/scenery/lettering/guide.js';
import { lineOfText } from '../../../src/scenery/lettering/line-of-text.js';

export const BUNDLED = ['roman', 'sans', 'script'] as const;

/** ISO 8859-1 without controls, spaces and the soft hyphen. */
export function printableLatin1(): string[] {
  const codes = Array.from({ length: 0x100 }, (_, k) => k);
  return codes
    .filter((k) => (k > 0x20 && k < 0x7f) || (k > 0xa0 && k !== 0xad))
    .map((k) => String.fromCharCode(k));
}

/** Text on a level line, baseline at y = 0. */
export function letters(
  name: (typeof BUNDLED)[number],
  text: string,
  capHeightMm: number,
  gapMm = 1.6,
): SetLetter[] {
  const line = lineOfText(BUNDLED_FONTS.fontNamed(name)!, text, { capHeightMm, gapMm });
  return setOn(line, straight(0, 0));
}
