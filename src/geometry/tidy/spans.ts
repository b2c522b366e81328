/** A stretch of a line, in mm along it from its start. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Spans in order, those run together that overlap or lie no further than `gapMm` apart. */
export function mergedSpans(spans: readonly Span[], gapMm: number): Span[] {
  const merged: { from: number; to: number }[] = [];
  for (const { from, to } of [...spans].sort((a, b) => a.from - b.from)) {
    const last = merged[merged.length - 1];
    if (last && from <= last.to + gapMm) last.to = Math.max(last.to, to);
    else merged.push({ from, to });
  }
  return merged;
}

/** Stretches shorter than this (mm) are rounding. */
export const NOTHING_MM = 1e-9;

/** What is left of a span without others, which must be in order and apart. */
export function spansWithout(whole: Span, taken: readonly Span[]): Span[] {
  const left: Span[] = [];
  let from = whole.from;
  for (const span of taken) {
    if (span.to <= from) continue;
    if (span.from >= whole.to) break;
    if (span.from > from + NOTHING_MM) left.push({ from, to: span.from });
    from = span.to;
  }
  if (whole.to > from + NOTHING_MM) left.push({ from, to: whole.to });
  return left;
}
