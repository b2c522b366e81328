import type { LineCounter } from 'yaml';
import type { Position, ScenePath } from './problem.js';

/** A value of the file and where it stands; offsets count characters from the file's start. */
export interface Placed {
  readonly value: unknown;
  /** Where a message about the value points to. */
  readonly at: number;
  /** Where its key stands, for the value of a key. */
  readonly keyAt?: number;
  readonly children?: ReadonlyMap<string | number, Placed>;
}

/** Finds the place of anything in the file by its path. */
export interface Positions {
  /** Of the value; of what holds it, when the file does not say it. */
  readonly value: (path: ScenePath) => Position;
  /** Of the key itself. */
  readonly key: (path: ScenePath) => Position;
  readonly offset: (offset: number) => Position;
}

export function positionsIn(root: Placed, lines: LineCounter): Positions {
  const offset = (at: number): Position => {
    const { line, col } = lines.linePos(at);
    return { line, column: col };
  };
  return {
    offset,
    value: (path) => offset(deepest(root, path).at),
    key: (path) => {
      const found = deepest(root, path);
      return offset(found.keyAt ?? found.at);
    },
  };
}

/** Follows the path as far as the file goes. */
function deepest(root: Placed, path: ScenePath): Placed {
  let placed = root;
  for (const step of path) {
    const child = placed.children?.get(step);
    if (child === undefined) break;
    placed = child;
  }
  return placed;
}
