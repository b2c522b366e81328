/** A place on the integer grid. */
interface Spot {
  readonly x: number;
  readonly y: number;
}

/**
 * A closed ring without its spikes, where it goes out along a line and straight back, and without
 * repeated points. Spikes enclose nothing, but Clipper2 can go astray or never end on them. Empty
 * where nothing else is left; the ring itself where it has none.
 */
export function withoutSpikes<P extends Spot>(ring: P[]): P[] {
  if (ring.length > 2 && !hasFold(ring)) return ring;
  const out: P[] = [];
  for (const p of ring) {
    out.push(p);
    trimEnd(out);
  }
  // The ring's end may fold back over its start; each round takes one point off.
  for (let start = 0; ; ) {
    const last = out.length - 1;
    if (last - start < 2) return [];
    if (isFold(out[last - 1], out[last], out[start])) out.pop();
    else if (isFold(out[last], out[start], out[start + 1])) start++;
    else return start > 0 ? out.slice(start) : out;
  }
}

function hasFold(ring: readonly Spot[]): boolean {
  let [before, at] = [ring[ring.length - 2], ring[ring.length - 1]];
  for (const after of ring) {
    if (isFold(before, at, after)) return true;
    before = at;
    at = after;
  }
  return false;
}

function trimEnd<P extends Spot>(out: P[]): void {
  for (let n = out.length; n >= 3 && isFold(out[n - 3], out[n - 2], out[n - 1]); n--) {
    out[n - 2] = out[n - 1];
    out.pop();
  }
}

/** Whether the way from a by b to c turns straight back at b, or does not move at all. */
function isFold(a: Spot, b: Spot, c: Spot): boolean {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
  return ux * vy - uy * vx === 0 && ux * vx + uy * vy <= 0;
}
