import type { LineOfText } from './line-of-text.js';

/** Rounds in which letters are made smaller until they fit: gaps between them do not shrink along. */
const ROUNDS = 16;
/** Closer than this share of the room counts as filling it. */
const SLACK = 1e-3;

/** The line as large as asked, or as its room in length allows. */
export function fittedTo(
  roomMm: number,
  capHeightMm: number,
  set: (capHeightMm: number) => LineOfText,
): { readonly line: LineOfText; readonly capHeightMm: number } {
  let cap = capHeightMm;
  let line = set(cap);
  for (let round = 0; round < ROUNDS && line.widthMm > roomMm * (1 + SLACK); round++) {
    cap *= roomMm / line.widthMm;
    line = set(cap);
  }
  return { line, capHeightMm: cap };
}
